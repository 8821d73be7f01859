import { describe, expect, it } from 'vitest';
import { layOut, sectionShape } from '../../../src/engine/5-layout/layOutSection.ts';
import { cornersOf, GAUGE, H, laid, slotHeads, W } from './geometry.ts';

/** A flat disc of single crochet: six increases a round, one above the other. */
function discText(rounds: number): string {
  const lines = ['Rnd 1: magic ring, 6 sc in ring, join with sl st in first st. (6 sc)', 'Rnd 2: ch 1, 2 sc in each st around, join with sl st in first st. (12 sc)'];
  for (let r = 3; r <= rounds; r++) lines.push(`Rnd ${r}: ch 1, (2 sc in next st, sc in next ${r - 2} sts) 6 times, join with sl st in first st. (${6 * r} sc)`);
  return lines.join('\n');
}

describe('a disc', () => {
  const { fabric, layout } = laid(discText(7));
  const rounds = slotHeads(fabric, layout);
  const radius = (x: number, y: number): number => Math.hypot(x, y);
  /** Angle of a point, anticlockwise from the foot of the picture, 0 … 2π. */
  const angle = (x: number, y: number): number => (Math.atan2(x, y) + 2 * Math.PI) % (2 * Math.PI);

  it('is what grows from a ring and stays nearly flat', () => {
    expect(layout.kind).toBe('disc');
    expect(sectionShape(laid(`${discText(4)}\nRnds 5-20: ch 1, sc in each st around, join with sl st in first st.`).fabric, 0)).toBe('tube');
  });

  it('has its rounds on circles, each a stitch height further out at least', () => {
    const radii = rounds.map(({ x, y }) => x.map((value, i) => radius(value, y[i]!)));
    radii.forEach((round) => round.forEach((one) => expect(one).toBeCloseTo(round[0]!, 3)));
    radii.slice(1).forEach((round, r) => expect(round[0]! - radii[r]![0]!).toBeGreaterThanOrEqual(H - 1e-3));
  });

  it('runs anticlockwise for a right-handed maker, clockwise for a left-handed one (published crochet lessons)', () => {
    const turn = (seen: typeof layout): number => {
      const row = fabric.rows[6]!;
      const angles = Array.from({ length: 10 }, (_, k) => angle(seen.headX[row.first + 1 + k - seen.first]! - (seen === layout ? 0 : seen.bounds.x0 + seen.bounds.x1), seen.headY[row.first + 1 + k - seen.first]!));
      return Math.sign(angles[9]! - angles[0]!);
    };
    expect(turn(layout)).toBe(1);
    expect(turn(layOut(fabric, 0, GAUGE, { hand: 'left' }))).toBe(-1);
  });

  it('spaces stitches by at least four fifths of even, and none comes into the free strip at the start', () => {
    rounds.slice(1).forEach(({ x, y }) => {
      const angles = x.map((value, i) => angle(value, y[i]!)).sort((a, b) => a - b);
      const even = (angles.at(-1)! - angles[0]!) / (angles.length - 1);
      angles.slice(1).forEach((one, i) => expect(one - angles[i]!).toBeGreaterThanOrEqual(0.8 * even));
      const r = radius(x[0]!, y[0]!);
      expect(angles[0]! * r).toBeGreaterThan(0.9 * W);
      expect((2 * Math.PI - angles.at(-1)!) * r).toBeGreaterThan(0.9 * W);
    });
  });

  it('shares cell edges between neighbours', () => {
    const { stitches } = rounds[5]!;
    stitches.slice(1).forEach((stitch, i) => expect(cornersOf(layout, stitch)[3]).toEqual(cornersOf(layout, stitches[i]!)[2]));
  });

  it('stays legible where it ruffles: no round is squeezed under four fifths of its stitches', () => {
    const { fabric: ruffle, layout: seen } = laid(`Rnd 1: magic ring, 8 sc in ring, join with sl st in first st.
Rnds 2-5: ch 1, 2 sc in each st around, join with sl st in first st.`);
    expect(seen.kind).toBe('disc');
    slotHeads(ruffle, seen).forEach(({ x, y }) => expect(2 * Math.PI * radius(x[0]!, y[0]!)).toBeGreaterThanOrEqual(0.8 * W * x.length));
  });

  it('places a ring of chains round its middle and a counted turning chain in its slot', () => {
    const { fabric: round, layout: seen } = laid(`Rnd 1: ch 4, join to form a ring, ch 3, 11 dc in ring, join with sl st in top of ch-3. (12 dc)
Rnd 2: ch 3, dc in same st, 2 dc in each st around, join with sl st in top of ch-3. (24 dc)`);
    expect(seen.kind).toBe('disc');
    expect(slotHeads(round, seen).map(({ x }) => x.length)).toEqual([12, 24]);
    [0, 1, 2, 3].forEach((chain) => expect(radius(seen.headX[chain]!, seen.headY[chain]!)).toBeLessThan(2 * H));
    const inner = slotHeads(round, seen)[0]!;
    expect(radius(inner.x[0]!, inner.y[0]!)).toBeGreaterThan(2 * H);
  });
});
