import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { applyTransaction } from '../../../src/engine/1-pattern/applyTransaction.ts';
import type { Edit } from '../../../src/engine/1-pattern/edit.ts';
import type { Pattern } from '../../../src/engine/1-pattern/pattern.ts';
import { colour } from '../../../src/engine/4-colour/colour.ts';
import { colourGrid } from '../../../src/engine/4-colour/colourGrid.ts';
import { layCells } from '../../../src/engine/4-colour/layCells.ts';
import { flatRows, handFabric, handPattern, handPlacement } from './handFabric.ts';
import { picture } from './picture.ts';

const row = (nth: number, columns: readonly number[]) => ({ section: 's', row: { line: 'r', nth }, columns });

function after(pattern: Pattern, edits: readonly Edit[]): Pattern {
  const applied = applyTransaction(pattern, { label: 'lay', at: 0, edits });
  if (!applied.ok) throw new Error(applied.reason);
  return applied.pattern;
}

describe('laying loose cells', () => {
  const grid = colourGrid(handFabric(flatRows([6, 6])));

  it('makes one edit a row, its runs joined', () => {
    expect(layCells(handPattern({}), [grid], 0, [row(0, [4, 2, 3]), row(1, [0])], 'B')).toEqual([
      { kind: 'setCells', section: 's', row: { line: 'r', nth: 0 }, size: 0, runs: [{ from: 2, letters: 'BBB' }] },
      { kind: 'setCells', section: 's', row: { line: 'r', nth: 1 }, size: 0, runs: [{ from: 0, letters: 'B' }] },
    ]);
  });

  it('joins what it lays with what is laid, and a row that is named twice is still one edit', () => {
    const pattern = after(handPattern({}), layCells(handPattern({}), [grid], 0, [row(0, [0, 4])], 'C'));
    expect(layCells(pattern, [grid], 0, [row(0, [1]), row(0, [3])], 'B')).toMatchObject([{ runs: [{ from: 0, letters: 'CB' }, { from: 3, letters: 'BC' }] }]);
  });

  it('says nothing where nothing changes, beyond the row and on rows that are not there', () => {
    const pattern = after(handPattern({}), layCells(handPattern({}), [grid], 0, [row(0, [1])], 'B'));
    expect(layCells(pattern, [grid], 0, [row(0, [1, 6, -1]), row(9, [0])], 'B')).toEqual([]);
    expect(layCells(pattern, [grid], 0, [row(0, [0, 2])], null)).toEqual([]);
  });

  it('takes a loose cell off where the yarn lies below it anyway', () => {
    const pattern = after(handPattern({}), layCells(handPattern({}), [grid], 0, [row(0, [1, 2])], 'B'));
    expect(layCells(pattern, [grid], 0, [row(0, [1, 2, 3])], 'A')).toMatchObject([{ runs: [] }]);
  });

  it('lays the yarn of the row over a motif', () => {
    const pattern = handPattern({ motifs: [{ id: 'm', name: '', cells: ['BB'] }], placements: [handPlacement({})] });
    const laid = after(pattern, layCells(pattern, [grid], 0, [row(0, [0, 5])], 'A'));
    expect(laid.cells).toMatchObject([{ from: 0, letters: 'A' }]);
    expect(picture(laid, grid.fabric, colour(laid, grid.fabric, 0))).toEqual(['AAAAAA', 'ABAAAA']);
  });

  it('counts from the centre of the row in every other size', () => {
    const grids = [6, 9, 4].map((count) => colourGrid(handFabric(flatRows([count]))));
    const pattern = handPattern({ sizes: ['M', 'L', 'S'] });
    const laid = after(pattern, layCells(pattern, grids, 0, [row(0, [0, 3])], 'B', true));
    expect(grids.map((one, size) => picture(laid, one.fabric, colour(laid, one.fabric, size))[0])).toEqual(['BAABAA', 'AABAABAAA', 'AABA']);
  });

  it('leaves the other sizes alone unless asked', () => {
    const pattern = handPattern({ sizes: ['M', 'L'] });
    expect(layCells(pattern, [grid, grid], 1, [row(0, [0])], 'B')).toMatchObject([{ size: 1 }]);
  });

  it('shows the yarn on exactly the columns it was laid on, whatever lay there', () => {
    const columns = fc.array(fc.integer({ min: 0, max: 11 }), { maxLength: 12 });
    const letter = fc.constantFrom('A', 'B', 'C', null);
    fc.assert(
      fc.property(fc.array(fc.tuple(columns, letter), { minLength: 1, maxLength: 6 }), fc.constantFrom('BC.', 'A.C', 'CCC'), (strokes, cells) => {
        const pattern = handPattern({ motifs: [{ id: 'm', name: '', cells: [cells] }], placements: [handPlacement({ across: 2, offset: 2 })] });
        const one = colourGrid(handFabric(flatRows([12])));
        const below = [...picture(pattern, one.fabric, colour(pattern, one.fabric, 0))[0]!];
        const wanted = [...below];
        let now: Pattern = pattern;
        for (const [at, what] of strokes) {
          const edits = layCells(now, [one], 0, [row(0, at)], what);
          for (const column of at) wanted[column] = what ?? below[column]!;
          now = after(now, edits);
          expect(layCells(now, [one], 0, [row(0, at)], what)).toEqual([]);
        }
        expect(picture(now, one.fabric, colour(now, one.fabric, 0))[0]).toBe(wanted.join(''));
        // No cell is kept that shows what lies below it.
        for (const run of now.cells) [...run.letters].forEach((one_, i) => expect(one_).not.toBe(below[run.from + i]));
      }),
      { numRuns: 1_000, seed: 4_1 },
    );
  });
});
