import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Pattern } from '../../../src/engine/1-pattern/pattern.ts';
import { colourGrid } from '../../../src/engine/4-colour/colourGrid.ts';
import { countsThatFit } from '../../../src/engine/4-colour/countsThatFit.ts';
import { fillWidth } from '../../../src/engine/4-colour/fillWidth.ts';
import { panelCounts } from '../../../src/engine/4-colour/panelCounts.ts';
import { flatRows, handFabric, handPattern, handPlacement } from './handFabric.ts';

describe('the counts that panels would need', () => {
  it('are those that laying repeat after repeat finds, for all motifs and sizes at once', () => {
    const motifs = fc.array(fc.record({ width: fc.integer({ min: 1, max: 9 }), gap: fc.integer({ min: 0, max: 3 }) }), { minLength: 1, maxLength: 3 });
    fc.assert(
      fc.property(fc.array(fc.integer({ min: 1, max: 80 }), { minLength: 1, maxLength: 4 }), motifs, fc.boolean(), fc.integer({ min: 0, max: 4 }), (widths, all, isRing, edge) => {
        // Every count up to 3,000 that some number of repeats of each motif takes up.
        const reached = all.map(({ width, gap }) => {
          const counts = new Set<number>();
          for (let used = edge + width; used < 3_000; used += width + gap) counts.add(used + (isRing ? gap : 0));
          return counts;
        });
        const good = Array.from({ length: 3_000 }, (_, count) => count).filter((count) => reached.every((counts) => counts.has(count)));
        expect(countsThatFit(widths, all, isRing, edge)).toEqual(widths.map((width) => ({ width, down: good.findLast((count) => count <= width) ?? null, up: good.find((count) => count >= width) ?? null })));
      }),
      { numRuns: 1_000, seed: 6_020 },
    );
  });

  it('agree with filling a width by one motif', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 90 }), fc.integer({ min: 1, max: 20 }), fc.integer({ min: 0, max: 4 }), fc.boolean(), (width, motifWidth, gap, isRing) => {
        const { nearest } = fillWidth(width, motifWidth, gap, isRing);
        expect(countsThatFit([width], [{ width: motifWidth, gap }], isRing)[0]).toEqual({ width, down: nearest.down || null, up: nearest.up });
      }),
      { numRuns: 500, seed: 6_021 },
    );
  });

  it('say so where there are none, and refuse a motif without width', () => {
    expect(countsThatFit([40], [{ width: 4, gap: 0 }, { width: 5, gap: 1 }], false)).toEqual([{ width: 40, down: null, up: null }]);
    expect(() => countsThatFit([40], [{ width: 0, gap: 0 }], false)).toThrow(RangeError);
  });

  it('are asked for a section of all sizes: motifs of 8 and 13 with a gap of 3 need a multiple of 8 and of 16', () => {
    const grids = [48, 56, 64].map((count) => colourGrid(handFabric(flatRows(Array.from({ length: 20 }, () => count)), 19)));
    const pattern: Pattern = handPattern({
      sizes: ['S', 'M', 'L'],
      motifs: [{ id: 'waves', name: '', cells: ['B'.repeat(8)] }, { id: 'puffin', name: '', cells: ['C'.repeat(13)] }],
      placements: [
        handPlacement({ id: 'w', motif: 'waves', across: 'fill', align: 'centre' }),
        handPlacement({ id: 'p', motif: 'puffin', across: 'fill', align: 'centre', gap: 3, row: { line: 'r', nth: 4 }, bySize: [null, { leftOut: true }, null] }),
      ],
    });
    expect(panelCounts(pattern, grids, 's')).toEqual([
      { size: 0, isRing: true, width: 48, down: 48, up: 48 },
      { size: 1, isRing: true, width: 56, down: 56, up: 56 },
      { size: 2, isRing: true, width: 64, down: 64, up: 64 },
    ]);
    expect(panelCounts({ ...pattern, placements: pattern.placements.map((one) => ({ ...one, bySize: [null, null, null] })) }, grids, 's')[1]).toMatchObject({ down: 48, up: 64 });
    expect(panelCounts(pattern, grids, 's', ['p'])).toHaveLength(2);
    expect(panelCounts(pattern, grids, 'elsewhere')).toEqual([]);
  });
});
