import { describe, expect, it } from 'vitest';
import { layOut } from '../../../src/engine/5-layout/layOutSection.ts';
import { GAUGE, H, laid, slotHeads, W } from './geometry.ts';

const RING = 'Foundation: ch 20, join to form a ring.';
const EVEN = `${RING}
Rnd 1: ch 1, sc in each ch around, join with sl st in first st. (20 sc)
Rnds 2-5: ch 1, sc in each st around, join with sl st in first st. (20 sc)`;

describe('a tube', () => {
  const { fabric, layout } = laid(EVEN);
  const rounds = slotHeads(fabric, layout).slice(1);

  it('is unrolled with every round starting at the right', () => {
    expect(layout.kind).toBe('tube');
    layout.rows.slice(1).forEach((row) => expect(row.startsAt).toBe('right'));
  });

  it('keeps exact columns', () => {
    rounds.forEach(({ x, y }) => {
      expect(x).toEqual(rounds[0]!.x);
      x.slice(1).forEach((value, i) => expect(value - x[i]!).toBe(W));
      y.forEach((value) => expect(value).toBe(y[0]));
    });
    expect(rounds[0]!.y[0]! - rounds[1]!.y[0]!).toBeCloseTo(H, 4);
  });

  it('repeats four stitches in grey on either side, one round further on', () => {
    const around = 20 * W;
    const copies = layout.ghosts.filter(({ stitch }) => fabric.row[stitch] === 1);
    expect(copies).toHaveLength(8);
    const gutters = new Set(copies.map(({ stitch, headX }) => Math.round((Math.abs(headX - layout.headX[stitch - layout.first]!) - around) * 1000) / 1000));
    // All stand off by the same room for turning chains and joins.
    expect(gutters.size).toBe(1);
  });

  it('repeats as many as are asked for', () => {
    expect(layOut(fabric, 0, GAUGE, { tubeMargin: 0 }).ghosts).toHaveLength(0);
    expect(layOut(fabric, 0, GAUGE, { tubeMargin: 2 }).ghosts.filter(({ stitch }) => fabric.row[stitch] === 1)).toHaveLength(4);
  });

  it('marks the cut on both edges, with the turning chain and the join beside it', () => {
    const [left, right] = layout.guides.flatMap((guide) => (guide.kind === 'seam' ? [guide.points] : []));
    expect(layout.guides).toHaveLength(2);
    expect(Math.max(...right!.filter((_, i) => i % 2 === 0)) - Math.min(...left!.filter((_, i) => i % 2 === 0))).toBeCloseTo(20 * W, 3);
    const round = fabric.rows[2]!;
    expect(layout.headX[round.first - layout.first]!).toBeGreaterThan(rounds[1]!.x.at(-1)! + W / 2);
    expect(layout.headX[round.end - 1 - layout.first]!).toBeLessThan(rounds[1]!.x[0]! - W / 2);
  });

  it('leans by what each round is said to lean', () => {
    const leaning = slotHeads(fabric, layOut(fabric, 0, GAUGE, { leanStitches: 0.25 })).slice(1);
    leaning.slice(1).forEach(({ x }, r) => expect(x[0]! - leaning[r]!.x[0]!).toBeCloseTo(0.25 * W, 3));
  });
});

describe('a spiral', () => {
  const text = `${RING}\nRnd 1: sc in each ch around. (20 sc)\nRnds 2-5: sc in each st around. (20 sc)`;
  const { fabric, layout } = laid(text, 0, { spiral: true });
  const rounds = slotHeads(fabric, layout).slice(1);

  it('rises by one round on its way round, so that the end of a round is level with the start of the next', () => {
    rounds.forEach(({ x, y }, r) => {
      // Rounds run from right to left: the last stitch stands at the left, a step before the next round's level.
      expect(y.at(-1)! - y[0]!).toBeCloseTo((H * 19) / 20, 3);
      x.slice(1).forEach((value, i) => expect(value - x[i]!).toBeCloseTo(W, 3));
      const next = rounds[r + 1];
      if (next) expect(y[0]! - next.y.at(-1)!).toBeCloseTo(H / 20, 3);
    });
  });

  it('repeats stitches along the same line across the cut', () => {
    const slope = H / (20 * W);
    const round = rounds[2]!;
    layout.ghosts.filter(({ stitch }) => round.stitches.includes(stitch)).forEach(({ headX, headY }) => expect(headY).toBeCloseTo(round.y[0]! + (headX - round.x[0]!) * slope, 3));
  });

  it('marks the start of each round that is not joined, level or rising', () => {
    expect(layout.guides.filter(({ kind }) => kind === 'start')).toHaveLength(5);
    expect(laid(text).layout.guides.filter(({ kind }) => kind === 'start')).toHaveLength(5);
    expect(laid(EVEN).layout.guides.filter(({ kind }) => kind === 'start')).toHaveLength(0);
  });
});

describe('a toe', () => {
  const { fabric, layout } = laid(`${RING}
Rnd 1: ch 1, sc in each ch around, join with sl st in first st. (20 sc)
Rnd 2: ch 1, (sc2tog, sc in next 6 sts, sc2tog) 2 times, join with sl st in first st. (16 sts)
Rnd 3: ch 1, sc in each st around, join with sl st in first st. (16 sts)
Rnd 4: ch 1, (sc2tog, sc in next 4 sts, sc2tog) 2 times, join with sl st in first st. (12 sts)
Rnd 5: ch 1, (sc2tog, sc in next 2 sts, sc2tog) 2 times, join with sl st in first st. (8 sts)`);
  const rounds = slotHeads(fabric, layout).slice(1);

  it('lies as two halves of exact columns', () => {
    rounds.slice(1).forEach(({ x }) => {
      const half = x.length / 2;
      x.slice(1).forEach((value, i) => {
        if (i + 1 === half) expect(value - x[i]!).toBeGreaterThan(2 * W);
        else expect(value - x[i]!).toBeCloseTo(W, 3);
      });
      x.forEach((value) => expect(rounds[0]!.x.some((column) => Math.abs(column - value) < 1e-3)).toBe(true));
    });
  });

  it('narrows alike from both sides', () => {
    const middle = (rounds[0]!.x[0]! + rounds[0]!.x.at(-1)!) / 2;
    rounds.forEach(({ x }) => x.forEach((value, i) => expect(value - middle).toBeCloseTo(middle - x.at(-1 - i)!, 3)));
  });
});

describe('rounds that grow', () => {
  it('from a closed toe are spread evenly to the width they reach', () => {
    const { fabric, layout } = laid(`Rnd 1: magic ring, 6 sc in ring, join with sl st in first st. (6 sc)
Rnd 2: ch 1, 2 sc in each st around, join. (12 sc)
Rnd 3: ch 1, (sc in next st, 2 sc in next st) 6 times, join. (18 sc)
Rnds 4-12: ch 1, sc in each st around, join. (18 sc)`);
    const rounds = slotHeads(fabric, layout);
    expect(layout.kind).toBe('tube');
    expect(rounds.map(({ x }) => x.length)).toEqual([6, 12, 18, ...Array.from({ length: 9 }, () => 18)]);
    expect(rounds[0]!.x[1]! - rounds[0]!.x[0]!).toBeCloseTo(3 * W, 3);
    expect(rounds[1]!.x[1]! - rounds[1]!.x[0]!).toBeCloseTo(1.5 * W, 3);
    rounds.forEach(({ x }) => x.slice(1).forEach((value, i) => expect(value - x[i]!).toBeGreaterThanOrEqual(W - 1e-3)));
  });

  it('by many are squeezed as far as symbols can be told apart, then wider', () => {
    const { fabric, layout } = laid(`${RING}
Rnd 1: ch 1, sc in each ch around, join with sl st in first st. (20 sc)
Rnd 2: ch 1, (sc in next st, 2 sc in next st) 4 times, sc in next 12 sts, join. (24 sc)
Rnd 3: ch 1, (sc in next st, 2 sc in next st) 4 times, sc in next 16 sts, join. (28 sc)`);
    const steps = slotHeads(fabric, layout).map(({ x }) => Math.min(...x.slice(1).map((value, i) => value - x[i]!)));
    expect(steps[2]!).toBeCloseTo((W * 20) / 24, 2);
    steps.slice(1).forEach((step) => expect(step).toBeGreaterThanOrEqual(0.7 * W));
    const last = slotHeads(fabric, layout)[3]!.x;
    expect(last.at(-1)! - last[0]!).toBeLessThan(28 * W);
  });

  it('by a few stitches squeeze them into the way round', () => {
    const { fabric, layout } = laid(`${RING}
Rnd 1: ch 1, sc in each ch around, join with sl st in first st. (20 sc)
Rnd 2: ch 1, sc in next 9 sts, 2 sc in each of next 2 sts, sc in next 9 sts, join. (22 sc)`);
    const rounds = slotHeads(fabric, layout);
    expect(rounds[2]!.x.at(-1)! - rounds[2]!.x[0]!).toBeCloseTo((20 * W * 21) / 22, 2);
  });
});

describe('rounds on other sections', () => {
  const SOCK = `Sample

LEG
Foundation: ch 21.
Row 1 (RS): sc in 2nd ch from hook and in each ch across. (20 sc)
Rows 2-4: ch 1, turn, sc in each st across. (20 sc)
Seam the side edges.

FOOT
Rnd 1: sc in each st around. (20 sc)
Rnds 2-4: sc in each st around. (20 sc)`;

  it('start in their own order over grey stitches of the section before', () => {
    const { fabric, layout } = laid(SOCK, 1);
    expect(layout.kind).toBe('tube');
    const rounds = slotHeads(fabric, layout);
    expect(rounds[0]!.x).toHaveLength(20);
    const below = layout.ghosts.filter(({ stitch }) => fabric.row[stitch]! < fabric.sections[1]!.firstRow);
    expect(below.map(({ headX }) => headX).sort((a, b) => a - b)).toEqual(rounds[0]!.x);
    below.forEach(({ headY }) => expect(headY - rounds[0]!.y[0]!).toBeCloseTo(H, 3));
  });
});
