import { describe, expect, it } from 'vitest';
import { layOut } from '../../../src/engine/5-layout/layOutSection.ts';
import type { Layout } from '../../../src/engine/5-layout/layout.ts';
import type { Fabric } from '../../../src/engine/3-fabric/fabric.ts';
import { FLAG } from '../../../src/engine/3-fabric/fabric.ts';
import { GAUGE, H, laid, slotHeads, W } from './geometry.ts';

const OVAL = `Foundation: ch 9.
Rnd 1: sc in 2nd ch from hook, sc in next 6 ch, 3 sc in last ch, working on the other side of the foundation chain, sc in next 6 ch, 2 sc in next ch, join with sl st in first st. (18 sc)
Rnd 2: ch 1, 2 sc in next st, sc in next 6 sts, 2 sc in each of next 3 sts, sc in next 6 sts, 2 sc in each of next 2 sts, join with sl st in first st. (24 sc)
Rnd 3: ch 1, sc in next st, 2 sc in next st, sc in next 6 sts, (sc in next st, 2 sc in next st) 3 times, sc in next 6 sts, (sc in next st, 2 sc in next st) 2 times, join with sl st in first st. (30 sc)`;

const SQUARE = `Rnd 1: ch 4, join to form a ring, ch 3, 2 dc in ring, ch 2, (3 dc in ring, ch 2) 3 times, join with sl st in top of ch-3. (12 dc)
Rnd 2: ch 3, dc in next 2 sts, *(2 dc, ch 2, 2 dc) in next ch-2 sp, dc in next 3 sts; rep from * 2 times more, (2 dc, ch 2, 2 dc) in next ch-2 sp, join with sl st in top of ch-3. (28 dc)`;

const TOE = `Foundation: ch 36, join to form a ring.
Rnd 1: ch 1, sc in each ch around, join with sl st in first st. (36 sc)
${[14, 12, 10, 8, 6].map((plain, r) => `Rnd ${r + 2}: ch 1, (sc2tog, sc in next ${plain} sts, sc2tog) 2 times, join with sl st in first st. (${2 * plain + 4} sts)`).join('\n')}`;

const radius = (x: number, y: number): number => Math.hypot(x, y);

/** Widest hole between neighbours round a round, as a part of a turn, anywhere but at its start. */
function widestHole(fabric: Fabric, layout: Layout, row: number): number {
  const { x, y } = slotHeads(fabric, layout)[row]!;
  const angles = x.map((value, i) => Math.atan2(value, y[i]!)).sort((a, b) => a - b);
  const steps = angles.map((angle, i) => (i + 1 < angles.length ? angles[i + 1]! : angles[0]! + 2 * Math.PI) - angle).sort((a, b) => b - a);
  return steps[1]! / (2 * Math.PI);
}

describe('a full circle', () => {
  const { fabric, layout } = laid(`Rnd 1: magic ring, 6 sc in ring, join with sl st in first st. (6 sc)
Rnd 2: ch 1, 2 sc in each st around, join with sl st in first st. (12 sc)
Rnd 3: ch 1, 2 sc in each st around, join with sl st in first st. (24 sc)`);

  it('has no hole but the start of the round, and that has room for a chain, a number and a join, no more', () => {
    slotHeads(fabric, layout).forEach(({ x, y }, r) => {
      const length = 2 * Math.PI * radius(x[0]!, y[0]!);
      expect(widestHole(fabric, layout, r) * length).toBeLessThan(1.6 * W);
      const angles = x.map((value, i) => Math.atan2(value, y[i]!)).sort((a, b) => a - b);
      const start = Math.max(...angles.map((angle, i) => (i + 1 < angles.length ? angles[i + 1]! : angles[0]! + 2 * Math.PI) - angle));
      expect((start / (2 * Math.PI)) * length).toBeLessThan(3.5 * W);
    });
  });

  it('keeps its numbers along one radius, straight down', () => {
    expect(layout.rows).toHaveLength(3);
    layout.rows.forEach(({ labelX, labelY, stands }, r) => {
      expect(stands).toBe('inside');
      expect(Math.abs(labelX)).toBeLessThan(0.05 * W);
      if (r > 0) expect(labelY).toBeGreaterThan(layout.rows[r - 1]!.labelY + 0.8 * H);
    });
  });

  it('is the same on both sides of the radius where rounds begin, as its rounds are worked alike both ways', () => {
    slotHeads(fabric, layout).forEach(({ x, y }) => {
      const left = x.map((value, i) => [value, y[i]!] as const).sort((a, b) => a[0] - b[0] || a[1] - b[1]);
      const right = x.map((value, i) => [-value, y[i]!] as const).sort((a, b) => a[0] - b[0] || a[1] - b[1]);
      left.forEach(([px, py], i) => {
        expect(px).toBeCloseTo(right[i]![0], 2);
        expect(py).toBeCloseTo(right[i]![1], 2);
      });
    });
  });

  it('gives each round a closed band', () => {
    layout.rows.forEach(({ band }) => {
      const far = band!.filter((_, i) => i % 2 === 0).map((x, i) => radius(x, band![2 * i + 1]!));
      expect(new Set(far.map((value) => value.toFixed(3))).size).toBe(2);
    });
  });
});

describe('a round on its way', () => {
  const begun = `Rnd 1: magic ring, 6 sc in ring, join with sl st in first st. (6 sc)
Rnd 2: ch 1, 2 sc in each st around, join with sl st in first st. (12 sc)
Rnd 3: ch 1, (sc in next st, 2 sc in next st) 6 times, join with sl st in first st. (18 sc)
Rnd 4: ch 1, sc in next 5 sts`;

  it('doesn\'t change the shape, and stands over its bases as far as it goes', () => {
    const { fabric, layout } = laid(begun);
    expect(layout.kind).toBe('disc');
    const last = fabric.rows.at(-1)!;
    for (let stitch = last.first + 1; stitch < last.end; stitch++) {
      const base = fabric.bases[fabric.baseStart[stitch]!]! - layout.first;
      const i = stitch - layout.first;
      expect(Math.hypot(layout.headX[i]! - layout.headX[base]!, layout.headY[i]! - layout.headY[base]!)).toBeLessThan(1.5 * H);
    }
  });
});

describe('a spiral about a ring', () => {
  it('marks where each round begins instead of a join', () => {
    const { layout } = laid('Rnd 1: magic ring, 6 sc in ring.\nRnd 2: 2 sc in each st around.\nRnd 3: (sc in next st, 2 sc in next st) 6 times.');
    expect(layout.guides.filter(({ kind }) => kind === 'start')).toHaveLength(3);
    const joined = laid('Rnd 1: magic ring, 6 sc in ring, join.\nRnd 2: ch 1, 2 sc in each st around, join.');
    expect(joined.layout.guides.filter(({ kind }) => kind === 'start')).toHaveLength(0);
  });
});

describe('an oval', () => {
  const { fabric, layout } = laid(OVAL);
  const rounds = slotHeads(fabric, layout);

  it('is worked about its foundation chain, which lies straight in its middle', () => {
    expect(layout.kind).toBe('oval');
    const chains = rounds[0]!;
    chains.y.forEach((y) => expect(y).toBeCloseTo(chains.y[0]!, 3));
    chains.x.slice(1).forEach((x, i) => expect(x - chains.x[i]!).toBeCloseTo(W, 3));
  });

  it('has the first side above the chain and the other side below it', () => {
    const row = fabric.rows[1]!;
    for (let stitch = row.first; stitch < row.end; stitch++) {
      if (fabric.flags[stitch]! & FLAG.join) continue;
      const base = fabric.bases[fabric.baseStart[stitch]!]!;
      // Chains at either end carry a round end.
      if (base === 0 || base === 7) continue;
      const below = (fabric.flags[stitch]! & FLAG.otherSide) !== 0;
      expect(layout.headY[stitch - layout.first]! > 0).toBe(below);
      expect(Math.abs(layout.headX[stitch - layout.first]! - layout.headX[base - layout.first]!)).toBeLessThan(0.75 * W);
    }
  });

  it('has its rounds at one distance from the chain', () => {
    const half = 3.5 * W;
    rounds.slice(1).forEach(({ x, y }) => {
      const away = x.map((value, i) => Math.hypot(Math.max(0, Math.abs(value) - half), y[i]!));
      away.forEach((value) => expect(value).toBeCloseTo(away[0]!, 2));
    });
  });
});

describe('a motif with corners', () => {
  const { fabric, layout } = laid(SQUARE);

  it('has straight sides: each stitch of a round lies on a square, its corner chains outermost', () => {
    expect(layout.kind).toBe('disc');
    const row = slotHeads(fabric, layout)[1]!;
    const side = (x: number, y: number): number => Math.max(Math.abs(x), Math.abs(y));
    const stitches = row.stitches.map((stitch, i) => ({ stitch, far: side(row.x[i]!, row.y[i]!), out: radius(row.x[i]!, row.y[i]!) }));
    const chains = stitches.filter(({ stitch }) => fabric.flags[stitch]! & FLAG.space);
    const others = stitches.filter(({ stitch }) => !(fabric.flags[stitch]! & FLAG.space));
    expect(chains).toHaveLength(8);
    others.forEach(({ far }) => expect(far).toBeCloseTo(others[0]!.far, 2));
    expect(Math.min(...chains.map(({ out }) => out))).toBeGreaterThan(Math.max(...others.map(({ out }) => out)));
  });

  it('is round where no corners are made', () => {
    const { fabric: flower, layout: seen } = laid(`Rnd 1: magic ring, (sc in ring, ch 3) 6 times, join with sl st in first st. (6 sc)
Rnd 2: (sc, hdc, dc, hdc, sc) in each ch-3 sp around, join with sl st in first st. (30 sts)`);
    expect(seen.kind).toBe('disc');
    const out = slotHeads(flower, seen)[1]!;
    const [low, high] = [Math.min(...out.x.map((x, i) => radius(x, out.y[i]!))), Math.max(...out.x.map((x, i) => radius(x, out.y[i]!)))];
    // A double crochet in each petal stands higher than its single crochets.
    expect(high - low).toBeGreaterThan(0.4 * H);
  });
});

describe('a toe seen from its tip', () => {
  const { fabric, layout } = laid(TOE, 0, { rounds: 'disc' });
  const rounds = slotHeads(fabric, layout);

  it('goes inwards, heads towards the middle', () => {
    expect(layout.kind).toBe('disc');
    const radii = rounds.map(({ x, y }) => radius(x[0]!, y[0]!));
    radii.slice(1).forEach((value, r) => expect(value).toBeLessThanOrEqual(radii[r]! - 0.4 * H + 1e-3));
    const row = fabric.rows[3]!;
    for (let stitch = row.first + 1; stitch < row.end - 1; stitch++) {
      const i = stitch - layout.first;
      expect(radius(layout.headX[i]!, layout.headY[i]!)).toBeLessThan(radius(layout.footX[i]!, layout.footY[i]!));
    }
  });

  it('runs clockwise for a right-handed maker: the other end of what begins anticlockwise', () => {
    const row = fabric.rows[1]!;
    const angle = (k: number): number => Math.atan2(layout.headX[row.first + 1 + k - layout.first]!, layout.headY[row.first + 1 + k - layout.first]!);
    expect(angle(5)).toBeLessThan(angle(0));
  });

  it('keeps paired decreases on straight lines', () => {
    const { x, y, stitches } = rounds[6]!;
    const drawn = stitches.flatMap((stitch, i) => (fabric.baseStart[stitch + 1]! - fabric.baseStart[stitch]! > 1 ? [[x[i]!, y[i]!] as const] : []));
    expect(drawn).toHaveLength(4);
    // Two on either side of the line through the starts, as far from it left and right.
    const sides = drawn.map(([px]) => Math.abs(px)).sort((a, b) => a - b);
    expect(sides[3]! - sides[0]!).toBeLessThan(0.8 * W);
  });

  it('is unrolled when nothing is said', () => {
    expect(layOut(fabric, 0, GAUGE).kind).toBe('tube');
    expect(layOut(fabric, 0, GAUGE, { rounds: 'tube' }).kind).toBe('tube');
  });
});
