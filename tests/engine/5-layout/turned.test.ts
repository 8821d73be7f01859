import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { FLAG } from '../../../src/engine/3-fabric/fabric.ts';
import type { Fabric } from '../../../src/engine/3-fabric/fabric.ts';
import type { Layout } from '../../../src/engine/5-layout/layout.ts';
import { H, laid, slotHeads, W } from './geometry.ts';

/** A seamed leg of twice the heel's width and a heel that leaves `left` after row 2 and `right` after row 3. */
function heelText(width: number, left: number, right: number): string {
  const before = Math.floor(width / 2);
  const rest = width - before;
  return `Sample

LEG
Foundation: ch ${width * 2 + 1}.
Row 1 (RS): sc in 2nd ch from hook and in each ch across.
Rows 2-4: ch 1, turn, sc in each st across.
Seam the side edges.

HEEL
Join A with a sl st in the ${before}th st before the seam.
Row 1 (RS): ch 1, sc in same st, ${before > 1 ? `sc in next ${before - 1} sts, ` : ''}skip the seam, sc in next ${rest} sts. Leave the rest unworked. (${width} sc)
Row 2: ch 1, turn, sc in next ${width - left} sts. Leave ${left} unworked. (${width - left} sc)
Row 3: ch 1, turn, sc in next ${width - left - right} sts. Leave ${right} unworked. (${width - left - right} sc)
Rows 4-${3 + left + right}: ch 1, turn, sc in each st across, sc in next unworked st.`;
}

function attaching(fabric: Fabric, layout: Layout): number[] {
  return Array.from({ length: layout.end - layout.first }, (_, i) => layout.first + i).filter((stitch) => fabric.flags[stitch]! & FLAG.attaching);
}

const heel = fc.record({ core: fc.integer({ min: 2, max: 20 }), right: fc.integer({ min: 1, max: 14 }), more: fc.integer({ min: 0, max: 1 }) });

describe('the heel of turned short rows', () => {
  it('for any width and any number left open: rows stay straight, attaching stitches short, no two stitches in one place', () => {
    fc.assert(
      fc.property(heel, ({ core, right, more }) => {
        const left = right + more;
        const { fabric, layout } = laid(heelText(core + left + right, left, right), 1);
        expect(layout.kind).toBe('turned');
        const rows = slotHeads(fabric, layout);
        rows.slice(2).forEach(({ x, y, stitches }) => {
          const straight = x.flatMap((value, i) => (Math.abs(layout.angle[stitches[i]! - layout.first]!) < 1e-6 ? [{ x: value, y: y[i]! }] : []));
          straight.forEach((stitch) => expect(stitch.y).toBeCloseTo(straight[0]!.y, 3));
        });
        const attached = attaching(fabric, layout);
        expect(attached).toHaveLength(left + right);
        attached.forEach((stitch) => {
          const i = stitch - layout.first;
          expect(Math.hypot(layout.headX[i]! - layout.footX[i]!, layout.headY[i]! - layout.footY[i]!)).toBeLessThan(1.5 * H);
        });
        const heads = rows.flatMap(({ x, y }) => x.map((value, i) => [value, y[i]!] as const));
        let nearest = Infinity;
        for (let a = 0; a < heads.length; a++) {
          for (let b = a + 1; b < heads.length; b++) nearest = Math.min(nearest, Math.hypot(heads[a]![0] - heads[b]![0], heads[a]![1] - heads[b]![1]));
        }
        expect(nearest).toBeGreaterThan(0.6 * H);
      }),
      { seed: 24, numRuns: 25 },
    );
  });

  it('puts each open stitch beside the row that is attached to it, one higher than the last', () => {
    const { fabric, layout } = laid(heelText(22, 8, 8), 1);
    const attached = attaching(fabric, layout);
    for (const outward of [-1, 1]) {
      const bases = attached.filter((stitch) => (layout.footX[stitch - layout.first]! - layout.headX[stitch - layout.first]!) * outward > 0).map((stitch) => fabric.bases[fabric.baseStart[stitch]!]! - layout.first);
      expect(bases).toHaveLength(8);
      bases.slice(1).forEach((base, t) => {
        expect((layout.headX[base]! - layout.headX[bases[t]!]!) * outward).toBeCloseTo(W, 3);
        expect(layout.headY[bases[t]!]! - layout.headY[base]!).toBeCloseTo(2 * H, 3);
      });
    }
  });

  it('says what each side has left open and by which row', () => {
    const { fabric, layout } = laid(heelText(21, 8, 7), 1);
    const bands = layout.guides.flatMap((guide) => (guide.kind === 'open' ? [{ count: guide.count, row: fabric.rows[guide.row]!.number, at: Math.sign(guide.textX - (layout.bounds.x0 + layout.bounds.x1) / 2) }] : []));
    expect(bands).toEqual([{ count: 7, row: 3, at: -1 }, { count: 8, row: 2, at: 1 }]);
  });

  it('shows the leg in grey under the middle and under both flanks, two rows deep', () => {
    const { fabric, layout } = laid(heelText(22, 8, 8), 1);
    const upright = layout.ghosts.filter(({ angle }) => angle === 0);
    expect(upright).toHaveLength(2 * 6);
    expect(layout.ghosts).toHaveLength(2 * 22);
    layout.ghosts.forEach(({ stitch }) => expect(fabric.row[stitch]!).toBeLessThan(fabric.sections[1]!.firstRow));
  });

  it('draws the seam of the leg where row 1 goes over it', () => {
    const { fabric, layout } = laid(heelText(22, 8, 8), 1);
    const [seam] = layout.guides.flatMap((guide) => (guide.kind === 'seam' ? [guide] : []));
    const row1 = slotHeads(fabric, layout)[0]!.x.filter((_, i) => i >= 8 && i < 14);
    expect(seam!.points[0]).toBeCloseTo((row1[2]! + row1[3]!) / 2, 3);
  });

  it('numbers every row at the side where it starts, no two numbers touching', () => {
    const { fabric, layout } = laid(heelText(22, 8, 8), 1);
    for (const side of ['left', 'right'] as const) {
      const here = layout.rows.filter(({ startsAt }) => startsAt === side);
      here.forEach(({ row }) => expect(fabric.rows[row]!.direction).toBe(side === 'right' ? -1 : 1));
      const ys = here.map(({ labelY }) => labelY).sort((a, b) => a - b);
      ys.slice(1).forEach((y, i) => expect(y - ys[i]!).toBeGreaterThanOrEqual(0.95 * H - 1e-3));
    }
  });

  it('takes the rows from the graph: a row may take two open stitches at once', () => {
    const { fabric, layout } = laid(heelText(20, 6, 6).replace(/Rows 4-15: .*/, 'Rows 4-9: ch 1, turn, sc in each st across, sc in next 2 unworked sts.'), 1);
    expect(layout.kind).toBe('turned');
    const attached = attaching(fabric, layout);
    expect(attached).toHaveLength(12);
    const bases = attached.map((stitch) => fabric.bases[fabric.baseStart[stitch]!]! - layout.first);
    const right = bases.filter((base) => layout.headX[base]! > (layout.bounds.x0 + layout.bounds.x1) / 2);
    // The first two share the one row's rise from the hinge; after that two stitches rise two rows.
    expect(layout.headY[right[0]!]! - layout.headY[right[1]!]!).toBeCloseTo(H / 2, 3);
    right.slice(2).forEach((base, t) => expect(layout.headY[right[t + 1]!]! - layout.headY[base]!).toBeCloseTo(H, 3));
  });

  it('keeps columns where many rows left one stitch each', () => {
    const rows = Array.from({ length: 8 }, (_, r) => `Row ${r + 2}: ch 1, turn, sc in next ${15 - r} sts. Leave 1 unworked.`).join('\n');
    const text = heelText(16, 4, 4).replace(/Row 2:[\s\S]*/, `${rows}\nRows 10-17: ch 1, turn, sc in each st across, sc in next unworked st.`);
    const { fabric, layout } = laid(text, 1);
    expect(layout.kind).toBe('turned');
    slotHeads(fabric, layout).forEach(({ y }) => y.forEach((value) => expect(value).toBeCloseTo(y[0]!, 3)));
    const open = layout.guides.flatMap((guide) => (guide.kind === 'open' ? [guide] : []));
    expect(open.filter(({ points }) => points.length > 0)).toHaveLength(8);
    expect(open.filter(({ count }) => count > 0).map(({ count, row, lastRow }) => [count, fabric.rows[row]!.number, fabric.rows[lastRow]!.number])).toEqual([[4, 3, 9], [4, 2, 8]]);
    attaching(fabric, layout).forEach((stitch) => expect(layout.footX[stitch - layout.first]).toBeCloseTo(layout.headX[stitch - layout.first]!, 3));
  });
});

describe('the three views of turned short rows', () => {
  const text = heelText(22, 8, 8);
  const rowsOf = (view: 'wedge' | 'grid' | 'fan'): ReturnType<typeof slotHeads> => {
    const { fabric, layout } = laid(text, 1, { view });
    return slotHeads(fabric, layout);
  };

  it('in columns keep every stitch over its base, attaching stitches too: colourwork stays in line', () => {
    const { fabric, layout } = laid(text, 1, { view: 'grid' });
    slotHeads(fabric, layout).forEach(({ x, y, stitches }, r) => {
      expect(new Set(y.map((value) => value.toFixed(3))).size).toBe(1);
      expect(y[0]).toBeCloseTo(-(r + 1) * H, 3);
      stitches.forEach((stitch) => {
        const base = fabric.bases[fabric.baseStart[stitch]!]!;
        if (base >= layout.first) expect(layout.headX[stitch - layout.first]).toBeCloseTo(layout.headX[base - layout.first]!, 3);
      });
      x.slice(1).forEach((value, i) => expect(value - x[i]!).toBeCloseTo(W, 3));
    });
  });

  it('as a fan keep stitches nearly a stitch apart along the rows (measured 0.98 to 1.11 when the picture was chosen)', () => {
    rowsOf('fan').slice(3).forEach(({ x, y }) => x.slice(1).forEach((value, i) => {
      const apart = Math.hypot(value - x[i]!, y[i + 1]! - y[i]!) / W;
      expect(apart).toBeGreaterThan(0.97);
      expect(apart).toBeLessThan(1.12);
    }));
  });

  it('as a fan rise less at their ends than in their middle, and lean out by about a radian from level', () => {
    const rows = rowsOf('fan');
    rows.slice(4).forEach(({ y }) => expect(y[y.length >> 1]!).toBeLessThan(Math.min(y[0]!, y.at(-1)!)));
    const [hinge, top] = [rows[2]!, rows.at(-1)!];
    const lean = Math.atan2(hinge.y[0]! - top.y[0]!, hinge.x[0]! - top.x[0]!);
    expect(lean).toBeGreaterThan(0.9);
    expect(lean).toBeLessThan(1.2);
  });

  it('as a fan are the same on both sides, but for the stitch by which the sides differ', () => {
    const rows = rowsOf('fan');
    const middle = (rows[2]!.x[0]! + rows[2]!.x.at(-1)!) / 2;
    rows.slice(3).filter((_, r) => r % 2 === 1).forEach(({ x, y }) => x.forEach((value, i) => {
      expect(value - middle).toBeCloseTo(middle - x.at(-1 - i)!, 2);
      expect(y[i]!).toBeCloseTo(y.at(-1 - i)!, 2);
    }));
  });

  it.each(['wedge', 'fan'] as const)('as a %s have short attaching stitches', (view) => {
    const { fabric, layout } = laid(text, 1, { view });
    attaching(fabric, layout).forEach((stitch) => {
      const i = stitch - layout.first;
      expect(Math.hypot(layout.headX[i]! - layout.footX[i]!, layout.headY[i]! - layout.footY[i]!)).toBeLessThan(1.5 * H);
    });
  });

  it('are mirrored for the left hand', () => {
    for (const view of ['wedge', 'grid', 'fan'] as const) {
      const [right, left] = [laid(text, 1, { view }).layout, laid(text, 1, { view, hand: 'left' }).layout];
      const turn = right.bounds.x0 + right.bounds.x1;
      left.headX.forEach((x, i) => expect(x).toBeCloseTo(turn - right.headX[i]!, 2));
      expect(left.headY).toEqual(right.headY);
    }
  });
});

describe('an hourglass heel', () => {
  const down = Array.from({ length: 8 }, (_, r) => `Row ${r + 2}: ch 1, turn, sc in next ${15 - r} sts. Leave 1 unworked.`).join('\n');
  const { fabric, layout } = laid(heelText(16, 4, 4).replace(/Row 2:[\s\S]*/, `${down}\nRows 10-17: ch 1, turn, sc in each st across, sc in next unworked st.`), 1);
  const rows = slotHeads(fabric, layout);

  it('is two wedges tip to tip, each the mirror of the other, with attaching stitches across the gap', () => {
    const widths = rows.map(({ x }) => x.length);
    expect(widths).toEqual([16, 15, 14, 13, 12, 11, 10, 9, 8, 9, 10, 11, 12, 13, 14, 15, 16]);
    // Row 9 + k lies over the same columns as row 9 - k.
    for (let k = 1; k <= 8; k++) expect(rows[8 + k]!.x.length).toBe(rows[8 - k]!.x.length);
    attaching(fabric, layout).forEach((stitch) => expect(layout.footY[stitch - layout.first]!).toBeGreaterThan(layout.headY[stitch - layout.first]! + H));
  });

  it('crosses no stitch with an attaching one', () => {
    attaching(fabric, layout).forEach((stitch) => {
      const i = stitch - layout.first;
      const [x, top, foot] = [layout.headX[i]!, layout.headY[i]!, layout.footY[i]!];
      rows.forEach(({ x: xs, y: ys }) => xs.forEach((other, k) => {
        if (ys[k]! > top + 1e-3 && ys[k]! < foot - 1e-3) expect(Math.abs(other - x)).toBeGreaterThan(0.9 * W);
      }));
    });
  });
});
