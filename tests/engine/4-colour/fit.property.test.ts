import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Motif, Placement } from '../../../src/engine/1-pattern/pattern.ts';
import { colour } from '../../../src/engine/4-colour/colour.ts';
import { colourGrid } from '../../../src/engine/4-colour/colourGrid.ts';
import { fillWidth } from '../../../src/engine/4-colour/fillWidth.ts';
import { placementsAt } from '../../../src/engine/4-colour/placementsAt.ts';
import { flatRows, handFabric, handPattern, handPlacement } from './handFabric.ts';
import { picture } from './picture.ts';

const RUNS = { numRuns: 1_500, seed: 77_031 };

const motif = fc.tuple(fc.integer({ min: 1, max: 6 }), fc.integer({ min: 1, max: 4 })).chain(([width, height]) =>
  fc
    .array(fc.array(fc.constantFrom('A', 'B', 'C', '.'), { minLength: width, maxLength: width }), { minLength: height, maxLength: height })
    .map((rows): Motif => ({ id: 'm', name: '', cells: rows.map((row) => row.join('')) })),
);

const placement: fc.Arbitrary<Placement> = fc
  .record({
    align: fc.constantFrom('left' as const, 'centre' as const, 'right' as const),
    offset: fc.integer({ min: -6, max: 6 }),
    across: fc.oneof(fc.constant('fill' as const), fc.integer({ min: 1, max: 5 })),
    up: fc.integer({ min: 1, max: 3 }),
    gap: fc.integer({ min: 0, max: 3 }),
    mirror: fc.boolean(),
    nth: fc.integer({ min: 0, max: 3 }),
  })
  .map(({ nth, ...rest }) => handPlacement({ ...rest, row: { line: 'r', nth } }));

/** Left edges of the repeats, found by moving a block of `count` repeats about until it sits as the alignment asks. */
function leftEdges(width: number, motifWidth: number, { align, offset, gap }: Placement, count: number): readonly number[] {
  const total = count * motifWidth + (count - 1) * gap;
  let start = 0;
  if (align === 'left') while (start !== offset) start += Math.sign(offset - start);
  if (align === 'right') {
    start = -width - total - 20;
    while (start + total + offset < width) start++;
  }
  if (align === 'centre') {
    start = -width - total - 20;
    // Move right while the left margin is not yet within one of the right margin, the odd stitch staying at the right.
    while (width - (start + total) - start > 1) start++;
    start += offset;
  }
  return Array.from({ length: count }, (_, i) => start + i * (motifWidth + gap));
}

/** For `'fill'`: adds repeats while the block keeps within the far edge (both edges when centred). */
function repeatsByHand(width: number, motifWidth: number, one: Placement): readonly number[] {
  if (one.across !== 'fill') return leftEdges(width, motifWidth, one, one.across);
  let edges: readonly number[] = [];
  for (let count = 1; ; count++) {
    const next = leftEdges(width, motifWidth, one, count);
    const [left, right] = [next[0]!, next.at(-1)! + motifWidth];
    const isWithin = one.align === 'left' ? right <= width : one.align === 'right' ? left >= 0 : left >= 0 && right <= width;
    if (!isWithin) return edges;
    edges = next;
  }
}

describe('placing by arithmetic and placing by hand', () => {
  it('give the same picture and the same fit', () => {
    fc.assert(
      fc.property(motif, placement, fc.integer({ min: 0, max: 24 }), fc.integer({ min: 1, max: 8 }), (one, place, width, height) => {
        const counts = Array.from({ length: height }, () => width);
        const fabric = handFabric(flatRows(counts));
        const pattern = handPattern({ motifs: [one], placements: [place] });
        const colours = colour(pattern, fabric, 0);

        const motifWidth = one.cells[0]!.length;
        const motifHeight = one.cells.length;
        const edges = repeatsByHand(width, motifWidth, place);
        const grid = counts.map(() => Array.from({ length: width }, () => 'A'));
        let cut = 0;
        let rowsCut = 0;
        for (let y = 0; y < place.up * motifHeight; y++) {
          const row = grid[place.row.nth + y];
          if (!row) {
            rowsCut++;
            continue;
          }
          edges.forEach((edge, i) => {
            const cells = [...one.cells[motifHeight - 1 - (y % motifHeight)]!];
            if (place.mirror && i % 2 === 1) cells.reverse();
            cells.forEach((letter, x) => {
              if (letter === '.') return;
              if (edge + x < 0 || edge + x >= width) cut++;
              else row[edge + x] = letter;
            });
          });
        }
        expect(picture(pattern, fabric, colours)).toEqual(grid.map((row) => row.join('')).reverse());
        const isThere = place.row.nth < height;
        expect(colours.fits[0]).toMatchObject({ width: isThere ? width : 0, rowsCut, cellsCut: cut, up: isThere ? Math.floor(Math.min(place.up * motifHeight, height - place.row.nth) / motifHeight) : 0 });
        if (!isThere) return;
        expect(colours.fits[0]!.across).toBe(edges.filter((edge) => edge >= 0 && edge + motifWidth <= width).length);
        if (edges.length > 0) expect(colours.fits[0]!.leftOver).toEqual({ left: edges[0], right: width - edges.at(-1)! - motifWidth });
        else expect(colours.fits[0]!.leftOver.left + colours.fits[0]!.leftOver.right).toBe(width);
      }),
      RUNS,
    );
  });

  it('agree on what lies at every stitch', () => {
    fc.assert(
      fc.property(motif, motif, placement, placement, fc.array(fc.integer({ min: 0, max: 14 }), { minLength: 1, maxLength: 6 }), (one, other, first, second, counts) => {
        const fabric = handFabric(flatRows(counts));
        const pattern = handPattern({
          motifs: [one, { ...other, id: 'n' }],
          placements: [first, { ...second, id: 'two', motif: 'n' }],
          cells: [{ section: 's', row: { line: 'r', nth: 0 }, size: 0, from: 2, letters: 'CBC' }],
        });
        const colours = colour(pattern, fabric, 0);
        const grid = colourGrid(fabric);
        for (const stitch of grid.columns.stitches) {
          const top = placementsAt(pattern, grid, 0, stitch).find((layer) => layer.letter !== '.')!;
          expect(top.letter).toBe(pattern.yarns[colours.yarn[stitch]!]!.letter);
          const index = top.kind === 'placement' ? pattern.placements.findIndex((p) => p.id === top.placement) + 1 : 0;
          expect(colours.placement[stitch]).toBe(index);
        }
      }),
      { ...RUNS, numRuns: 400 },
    );
  });
});

describe('filling a width', () => {
  it('finds the repeats, what is left and the nearest counts that trying every count finds', () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 80 }), fc.integer({ min: 1, max: 20 }), fc.integer({ min: 0, max: 5 }), fc.boolean(), (width, motifWidth, gap, isRing) => {
        const used = (repeats: number) => (repeats === 0 ? 0 : repeats * motifWidth + (repeats - 1) * gap);
        let repeats = 0;
        while (used(repeats + 1) <= width) repeats++;
        const exact = Array.from({ length: 102 }, (_, k) => k).filter((k) => k > 0).map((k) => used(k) + (isRing ? gap : 0));
        expect(fillWidth(width, motifWidth, gap, isRing)).toEqual({
          repeats,
          leftOver: width - used(repeats),
          nearest: { down: Math.max(0, ...exact.filter((count) => count <= width)), up: Math.min(...exact.filter((count) => count >= width)) },
        });
      }),
      RUNS,
    );
  });

  it('says 5 repeats and 3 stitches left over of a motif of 8 in 43, nearest 40 or 48', () => {
    expect(fillWidth(43, 8, 0, false)).toEqual({ repeats: 5, leftOver: 3, nearest: { down: 40, up: 48 } });
  });

  it('refuses a motif without width', () => {
    expect(() => fillWidth(10, 0, 0, false)).toThrow(RangeError);
  });
});
