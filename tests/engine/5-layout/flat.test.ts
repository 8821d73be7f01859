import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Gauge } from '../../../src/engine/1-pattern/pattern.ts';
import { gaugeAtScale } from '../../../src/engine/5-layout/gaugeAtScale.ts';
import { gaugeCell } from '../../../src/engine/5-layout/gaugeCell.ts';
import { layOut } from '../../../src/engine/5-layout/layOutSection.ts';
import { FLAG } from '../../../src/engine/3-fabric/fabric.ts';
import { workText } from '../workText.ts';
import { cornersOf, GAUGE, H, laid, slotHeads, W } from './geometry.ts';

const PLAIN = `Foundation: ch 13.
Row 1 (RS): sc in 2nd ch from hook and in each ch across. (12 sc)
Rows 2-5: ch 1, turn, sc in each st across. (12 sc)`;

describe('the cell', () => {
  it.each<[Gauge, number, number, string]>([
    [{ stitches: 16, rows: 18, overCm: 10, stitch: 'sc' }, 6.25, 100 / 18, 'by arithmetic'],
    [{ stitches: 20, rows: 10, overCm: 10, stitch: 'dc' }, 5, 5, 'by arithmetic; a dc is 2 sc high, common practice'],
    [{ stitches: 14, rows: 12, overCm: 10.16, stitch: 'hdc' }, 101.6 / 14, 101.6 / 12 / 1.5, 'by arithmetic; 4 in; an hdc is 1.5 sc high, common practice'],
  ])('of gauge %o is %f by %f mm (%s)', (gauge, width, height) => {
    expect(gaugeCell(gauge).widthMm).toBeCloseTo(width, 9);
    expect(gaugeCell(gauge).heightMm).toBeCloseTo(height, 9);
  });

  it('keeps its proportion at another scale', () => {
    const cell = gaugeCell(gaugeAtScale({ stitches: 16, rows: 18, overCm: 10, stitch: 'sc' }, 4));
    expect(cell.widthMm).toBeCloseTo(4, 9);
    expect(cell.heightMm / cell.widthMm).toBeCloseTo(16 / 18, 9);
  });

  it('refuses a gauge of nothing', () => {
    expect(() => gaugeCell({ stitches: 0, rows: 18, overCm: 10, stitch: 'sc' })).toThrow('gauge stitches is 0, expected more than 0');
  });
});

describe('straight rows', () => {
  const { fabric, layout } = laid(PLAIN);
  const rows = slotHeads(fabric, layout).slice(1);

  it('stand in exact columns and rows', () => {
    rows.forEach(({ x, y }) => {
      x.forEach((value, i) => expect(value).toBe(rows[0]!.x[i]));
      y.forEach((value) => expect(value).toBe(y[0]));
      x.slice(1).forEach((value, i) => expect(value - x[i]!).toBe(W));
    });
    rows.slice(1).forEach(({ y }, r) => expect(rows[r]!.y[0]! - y[0]!).toBeCloseTo(H, 4));
  });

  it('share the edges of their cells to the last bit', () => {
    rows.forEach(({ stitches }, r) => {
      stitches.forEach((stitch, i) => {
        const [bottomLeft, bottomRight, topRight] = cornersOf(layout, stitch);
        const right = stitches[i + 1];
        if (right !== undefined) {
          expect(cornersOf(layout, right)[0]).toEqual(bottomRight);
          expect(cornersOf(layout, right)[3]).toEqual(topRight);
        }
        const below = rows[r - 1]?.stitches[i];
        if (below !== undefined) {
          expect(cornersOf(layout, below)[3]).toEqual(bottomLeft);
          expect(cornersOf(layout, below)[2]).toEqual(bottomRight);
        }
      });
    });
  });

  it('have right-side rows run right to left and their numbers where they start', () => {
    const row1 = fabric.rows.findIndex((row) => row.number === 1);
    const own = fabric.rows[row1]!;
    const xs = [...layout.headX.slice(own.first - layout.first + 1, own.end - layout.first)];
    expect(xs[0]!).toBeGreaterThan(xs.at(-1)!);
    expect(layout.rows.find(({ row }) => row === row1)?.startsAt).toBe('right');
    expect(layout.rows.find(({ row }) => row === row1 + 1)?.startsAt).toBe('left');
    expect(layout.rows.find(({ row }) => row === row1)!.labelX).toBeGreaterThan(rows[0]!.x.at(-1)! + W / 2);
  });

  it('are mirrored for a left-handed maker, corners in the same order', () => {
    const left = layOut(fabric, 0, GAUGE, { hand: 'left' });
    const turn = layout.bounds.x0 + layout.bounds.x1;
    expect(left.bounds).toEqual(layout.bounds);
    left.headX.forEach((x, i) => expect(x).toBeCloseTo(turn - layout.headX[i]!, 3));
    rows.flatMap(({ stitches }) => stitches).forEach((stitch) => {
      const [bottomLeft, bottomRight, topRight, topLeft] = cornersOf(left, stitch);
      expect(bottomLeft![0]).toBeLessThan(bottomRight![0]);
      expect(topLeft![0]).toBeLessThan(topRight![0]);
      expect(topLeft![1]).toBeLessThan(bottomLeft![1]);
    });
    expect(left.rows.map(({ startsAt }) => startsAt)).toEqual(layout.rows.map(({ startsAt }) => (startsAt === 'left' ? 'right' : 'left')));
  });
});

describe('shaped rows', () => {
  it('lean the same on both sides when both sides are worked the same', () => {
    const { fabric, layout } = laid(`Foundation: ch 13.
Row 1 (RS): sc in 2nd ch from hook and in each ch across.
Row 2: ch 1, turn, 2 sc in next st, sc in next 10 sts, 2 sc in last st. (14 sc)
Row 3: ch 1, turn, sc2tog, sc in next 3 sts, 3 sc in next st, sc in next 2 sts, 3 sc in next st, sc in next 3 sts, sc2tog. (16 sts)
Row 4: ch 1, turn, sc in next 6 sts, sc2tog 2 times, sc in next 6 sts. (14 sts)`);
    const rows = slotHeads(fabric, layout);
    const middle = (rows[0]!.x[0]! + rows[0]!.x.at(-1)!) / 2;
    expect(rows.map(({ x }) => x.length)).toEqual([12, 12, 14, 16, 14]);
    rows.forEach(({ x, y }) => x.forEach((value, i) => {
      expect(value - middle).toBeCloseTo(middle - x.at(-1 - i)!, 3);
      expect(y[i]!).toBeCloseTo(y.at(-1 - i)!, 3);
    }));
  });

  it('never stand closer than a stitch is wide, whatever is increased and decreased', () => {
    const clause = fc.constantFrom('sc in next st', '2 sc in next st', 'sc2tog', '3 sc in next st', 'sc3tog', 'hdc in next st', 'dc in next st', 'dc2tog');
    fc.assert(
      fc.property(fc.array(fc.array(clause, { minLength: 3, maxLength: 12 }), { minLength: 1, maxLength: 6 }), (rows) => {
        const text = ['Foundation: ch 25.', 'Row 1 (RS): sc in 2nd ch from hook and in each ch across.', ...rows.map((clauses, r) => `Row ${r + 2}: ch 1, turn, ${clauses.join(', ')}, sc in each st across.`)].join('\n');
        const { fabric, layout } = laid(text);
        slotHeads(fabric, layout).forEach(({ x }) => x.slice(1).forEach((value, i) => expect(value - x[i]!).toBeGreaterThanOrEqual(W - 1e-3)));
        [layout.headX, layout.headY, layout.footX, layout.footY, layout.angle, layout.corners].forEach((values) => expect(values.every(Number.isFinite)).toBe(true));
      }),
      { seed: 23, numRuns: 60 },
    );
  });

  it('draw in at the edges where stitches are decreased', () => {
    const { fabric, layout } = laid(`Foundation: ch 13.
Row 1 (RS): sc in 2nd ch from hook and in each ch across.
Rows 2-4: ch 1, turn, sc2tog, sc in each st to last 2 sts, sc2tog.`);
    const widths = slotHeads(fabric, layout).slice(1).map(({ x }) => x.at(-1)! - x[0]!);
    widths.slice(1).forEach((width, r) => expect(width).toBeLessThan(widths[r]! - W));
  });
});

describe('columns of a shaped panel', () => {
  it.each([
    ['increased at both ends', '2 sc in next st, sc in each st to last st, 2 sc in last st', 0],
    ['decreased at both ends', 'sc2tog, sc in each st to last 2 sts, sc2tog', 2],
  ])('stay exact where they are %s, but for %s at the edges', (_, row, edge) => {
    const { fabric, layout } = laid(`Foundation: ch 25.\nRow 1 (RS): sc in 2nd ch from hook and in each ch across.\nRows 2-6: ch 1, turn, ${row}.`);
    slotHeads(fabric, layout).slice(2).forEach(({ stitches }) => stitches.slice(edge, stitches.length - edge).forEach((stitch) => {
      const [from, end] = [fabric.baseStart[stitch]!, fabric.baseStart[stitch + 1]!];
      if (end - from !== 1 || fabric.flags[stitch]! & FLAG.sameBase || (end < fabric.bases.length && fabric.flags[stitch + 1]! & FLAG.sameBase)) return;
      expect(layout.headX[stitch - layout.first]).toBeCloseTo(layout.headX[fabric.bases[from]! - layout.first]!, 4);
    }));
  });
});

describe('turning chains', () => {
  it('that count stand one on another in the first slot', () => {
    const { fabric, layout } = laid(`Foundation: ch 10.
Row 1 (RS): sc in 2nd ch from hook and in each ch across. (9 sc)
Row 2: ch 3, turn, dc in next st and in each st across. (9 dc)`);
    const row = fabric.rows[2]!;
    const [a, b, c] = [0, 1, 2].map((k) => row.first + k - layout.first);
    expect(layout.headX[a!]).toBe(layout.headX[c!]);
    expect(layout.headY[a!]! - layout.headY[b!]!).toBeCloseTo((2 * H) / 3, 3);
    expect(layout.headY[c!]).toBeCloseTo(layout.headY[row.end - 1 - layout.first]!, 3);
    expect(slotHeads(fabric, layout)[2]!.x).toHaveLength(9);
  });

  it('that do not count stand outside the edge where the row starts', () => {
    const { fabric, layout } = laid(PLAIN);
    const rows = slotHeads(fabric, layout);
    fabric.rows.slice(1).forEach((row, r) => {
      const x = layout.headX[row.first - layout.first]!;
      if (row.direction < 0) expect(x).toBeGreaterThan(rows[r + 1]!.x.at(-1)! + W / 2);
      else expect(x).toBeLessThan(rows[r + 1]!.x[0]! - W / 2);
    });
  });
});

describe('what has little or nothing', () => {
  it.each([
    ['only a chain', 'Foundation: ch 20.\nFasten off.', 20],
    ['one stitch', 'Foundation: ch 2.\nRow 1: sc in 2nd ch from hook.', 3],
    ['a row of slip stitches', 'Foundation: ch 9.\nRow 1: sl st in 2nd ch from hook and in each ch across.', 17],
  ])('%s is laid out', (_, text, stitches) => {
    const { layout } = laid(text);
    expect(layout.end - layout.first).toBe(stitches);
    expect(layout.bounds.x1).toBeGreaterThan(layout.bounds.x0);
    expect(layout.corners.every(Number.isFinite)).toBe(true);
  });

  it('a section that made no stitch gives an empty layout', () => {
    const { fabric } = workText(PLAIN);
    const end = fabric.rows.length;
    const layout = layOut({ ...fabric, sections: [...fabric.sections, { id: 'b', name: 'B', firstRow: end, endRow: end }] }, 1, GAUGE);
    expect(layout).toMatchObject({ kind: 'flat', rows: [], ghosts: [], bounds: { x0: 0, y0: 0, x1: 0, y1: 0 } });
    expect(layout.headX).toHaveLength(0);
  });

  it('a section that is not there is refused with both numbers', () => {
    const { fabric } = workText(PLAIN);
    expect(() => layOut(fabric, 3, GAUGE)).toThrow(new RangeError('section 3 asked of a fabric of 1 sections'));
  });
});

describe('lace', () => {
  it('lets chains hang between their neighbours and shells spread over what is skipped', () => {
    const { fabric, layout } = laid(`Foundation: ch 14.
Row 1 (RS): sc in 2nd ch from hook and in each ch across. (13 sc)
Row 2: ch 1, turn, sc in next st, (skip next 2 sts, 5 dc in next st, skip next 2 sts, sc in next st) 2 times. (13 sts)`);
    const { x } = slotHeads(fabric, layout)[2]!;
    expect(x).toHaveLength(13);
    // Both shells are centred over their base, which is stitch 4 (10) of 13.
    expect(x[3]!).toBeCloseTo(slotHeads(fabric, layout)[1]!.x[3]!, 3);
    expect(x[9]!).toBeCloseTo(slotHeads(fabric, layout)[1]!.x[9]!, 3);
  });

  it('puts a picot on the stitch it was worked on and gives it no slot', () => {
    const { fabric, layout } = laid(`Foundation: ch 6.
Row 1 (RS): sc in 2nd ch from hook and in each ch across. (5 sc)
Row 2: ch 1, turn, sc in next 2 sts, picot, sc in next 3 sts. (5 sc)`);
    expect(slotHeads(fabric, layout)[2]!.x).toHaveLength(5);
    const picot = fabric.rows[2]!.first + 3;
    expect(layout.headX[picot - layout.first]).toBe(layout.headX[picot - 1 - layout.first]);
    expect(layout.headY[picot - layout.first]!).toBeLessThan(layout.headY[picot - 1 - layout.first]!);
  });
});

describe('chain spaces', () => {
  const { fabric, layout } = laid(`Foundation: ch 14.
Row 1 (RS): sc in 2nd ch from hook and in each ch across. (13 sc)
Row 2: ch 1, turn, sc in next st, (ch 9, skip next 5 sts, sc in next st) 2 times. (3 sc)
Row 3: ch 1, turn, sc in next st, (5 dc in next ch-9 sp, sc in next st) 2 times. (13 sts)
Row 4: ch 5, turn, skip next 3 sts, sc in next st, ch 1, skip next 2 sts, sc in each of next 7 sts. (8 sts)`);
  const row = (number: number): number[] => {
    const own = fabric.rows.find((one) => one.number === number)!;
    return Array.from({ length: own.end - own.first }, (_, k) => own.first + k);
  };
  const x = (stitch: number): number => layout.headX[stitch - layout.first]!;
  const y = (stitch: number): number => layout.headY[stitch - layout.first]!;
  const chains = (number: number): number[] => row(number).filter((stitch) => fabric.flags[stitch]! & FLAG.space);
  const others = (number: number): number[] => row(number).filter((stitch) => !(fabric.flags[stitch]! & (FLAG.space | FLAG.turning)));

  it('keep the stitches on either side over their bases', () => {
    others(2).forEach((stitch) => expect(Math.abs(x(stitch) - x(fabric.bases[fabric.baseStart[stitch]!]!))).toBeLessThan(0.5 * W));
  });

  it('rise to an arch where chains are long for their way, highest in the middle', () => {
    const first = chains(2).slice(0, 9);
    const heights = first.map(y);
    expect(Math.min(...heights)).toBeLessThan(Math.min(...others(2).map(y)) - 0.3 * H);
    expect(heights[4]!).toBeLessThan(heights[0]! - 0.3 * H);
    expect(heights[5]!).toBeCloseTo(heights[3]!, 3);
    // The first half turns one way, the second the other.
    expect(layout.angle[first[0]! - layout.first]! * layout.angle[first[8]! - layout.first]!).toBeLessThan(0);
  });

  it('are worked round with feet apart, into one stitch with feet joined (JIS L 0201, as explained by a publisher)', () => {
    const shell = row(3).filter((stitch) => fabric.flags[stitch]! & FLAG.inSpace).slice(0, 5);
    const feet = shell.map((stitch) => layout.footX[stitch - layout.first]!);
    feet.slice(1).forEach((foot, i) => expect(Math.abs(foot - feet[i]!)).toBeGreaterThan(0.2 * W));
    const joined = laid(`Foundation: ch 8.
Row 1 (RS): sc in 2nd ch from hook and in each ch across. (7 sc)
Row 2: ch 1, turn, sc in next st, skip next 2 sts, 5 dc in next st, skip next 2 sts, sc in next st. (7 sts)`);
    const own = joined.fabric.rows[2]!;
    expect(new Set(Array.from({ length: 5 }, (_, k) => joined.layout.footX[own.first + 2 + k])).size).toBe(1);
  });

  it('at the start of a row lead from the edge of the row below to its first stitch', () => {
    const [first] = others(4);
    const leading = row(4).filter((stitch) => stitch < first!);
    expect(leading).toHaveLength(5);
    const edge = row(3).at(-1)!;
    // Row 4 starts at the left, over the last stitch of row 3.
    leading.forEach((chain) => {
      expect(x(chain)).toBeGreaterThan(x(edge) - W);
      expect(x(chain)).toBeLessThan(x(first!) + 0.1 * W);
    });
    expect(Math.hypot(x(leading[0]!) - x(edge), y(leading[0]!) - y(edge))).toBeLessThan(1.2 * W);
  });
});

describe('a foundation that turns up', () => {
  it('stands as a turning chain one stitch beside the last chain worked into', () => {
    const { fabric, layout } = laid('Foundation: ch 8.\nRow 1 (RS): dc in 4th ch from hook and in each ch across. (6 dc)');
    const { x } = slotHeads(fabric, layout)[1]!;
    expect(x).toHaveLength(6);
    x.slice(1).forEach((value, i) => expect(value - x[i]!).toBeCloseTo(W, 3));
    expect(x.slice(0, 5)).toEqual(slotHeads(fabric, layout)[0]!.x);
  });
});

describe('stitches round a post', () => {
  it('end level with the others of their row', () => {
    const { fabric, layout } = laid(`Foundation: ch 8.
Row 1 (RS): sc in 2nd ch from hook and in each ch across. (7 sc)
Row 2: ch 1, turn, sc in next 3 sts, FPtr around next st, sc in next 3 sts. (7 sts)`);
    slotHeads(fabric, layout)[2]!.y.forEach((y, _, all) => expect(y).toBeCloseTo(all[0]!, 3));
  });
});

describe('stitches that a flat row leaves', () => {
  it('lie in a band with their count and the row that left them', () => {
    const { fabric, layout } = laid(`Foundation: ch 17.
Row 1 (RS): sc in 2nd ch from hook and in each ch across. (16 sc)
Row 2: ch 1, turn, sc in next 12 sts. Leave 4 unworked. (12 sc)
Row 3: ch 1, turn, sc in next 9 sts. Leave 3 unworked. (9 sc)`);
    const open = layout.guides.flatMap((guide) => (guide.kind === 'open' ? [guide] : []));
    expect(open.map(({ count, row }) => [count, fabric.rows[row]!.number])).toEqual([[4, 2], [3, 3]]);
    // Row 2 runs to the right and leaves the right end of row 1; row 3 the left end of row 2.
    const middle = (layout.bounds.x0 + layout.bounds.x1) / 2;
    expect(open[0]!.textX).toBeGreaterThan(middle);
    expect(open[1]!.textX).toBeLessThan(middle);
  });

  it('are none where rows only skip', () => {
    const { layout } = laid(`Foundation: ch 9.
Row 1 (RS): sc in 2nd ch from hook and in each ch across. (8 sc)
Row 2: ch 1, turn, (sc in next st, skip next st) 4 times. (4 sc)
Row 3: ch 1, turn, sc in each st across. (4 sc)`);
    expect(layout.guides.filter(({ kind }) => kind === 'open')).toEqual([]);
  });
});
