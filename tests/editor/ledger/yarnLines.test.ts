import { describe, expect, it } from 'vitest';
import type { Pattern } from '../../../src/engine/1-pattern/pattern.ts';
import { carryOf } from '../../../src/engine/4-colour/carry.ts';
import { yarnsOfSection } from '../../../src/engine/readings/ledger/ledger.ts';
import { yarnLines } from '../../../src/editor/ledger/yarnLines.ts';
import { benchOf, LEG } from '../bench/benchOf.ts';

const WIDTH_MM = 5;
const third = { line: 'plain', nth: 1 };
const fourth = { line: 'plain', nth: 2 };
/** Row 3 goes from right to left, row 4 from left to right; letters from the left of the right side. */
const SPOTS: Pattern = {
  ...LEG,
  cells: [
    { section: 'leg', row: third, size: 0, from: 1, letters: 'B' },
    { section: 'leg', row: third, size: 0, from: 8, letters: 'B' },
    { section: 'leg', row: fourth, size: 0, from: 4, letters: 'BB' },
  ],
};

function linesOf(pattern: Pattern) {
  const bench = benchOf(pattern);
  const section = carryOf(pattern, bench.grids[0]!, bench.colours).sections[0]!;
  const lines = yarnLines(section, pattern.yarns, WIDTH_MM);
  return (number: number) => lines.get(bench.fabric.rows.findIndex((row) => row.number === number))!;
}

describe('the yarns of a row in the ledger', () => {
  it('are told as changes, the longest carry in stitches and cm, and ends', () => {
    // Row 3 by hand: A 1, B 1, A 6, B 1, A 1; B lies over 6 stitches of A, A over 1 of B.
    expect(linesOf(SPOTS)(3)).toEqual({ changes: 4, longest: { short: 'B 6 · 3.0 cm', says: 'B over 6, 3.0 cm', isOver: false }, fetched: null, bobbins: null, ends: 1 });
    expect(linesOf(SPOTS)(2)).toMatchObject({ changes: 0, longest: null, fetched: null, ends: 0 });
  });

  it('say which yarn has to travel back in a flat row', () => {
    // Row 3 leaves B hanging behind column 1; row 4 comes from the left and needs it first on column 4, which lies that way.
    expect(linesOf(SPOTS)(4).fetched).toBeNull();
    const back: Pattern = { ...SPOTS, cells: [SPOTS.cells[1]!, { ...SPOTS.cells[2]!, from: 2 }] };
    // Now it hangs left of column 8, and is needed on column 2: it was carried on in row 3 over 6 stitches.
    expect(linesOf(back)(4).fetched).toEqual({ short: 'B back 6', says: 'B over 6 stitches, against the row' });
  });

  it('say each yarn once, with its longest way and how often', () => {
    const row = { row: 0, yarns: [], changes: 0, changesAtStart: false, carries: [], longest: null, supplies: 0, ends: 0 };
    const travels = [[1, 2, false], [1, 5, false], [0, 3, true]].map(([yarn, stitches, isCut]) => ({ yarn: yarn as number, stitches: stitches as number, rows: 0, isAgainst: true, isCut: isCut as boolean }));
    const section = { technique: 'intarsia', isSaid: true, limits: { longestCarry: null, mostYarns: null, rowsUp: 1 }, rows: [{ ...row, travels }], changes: 0, longest: null, mostYarns: 0, joined: [], mostSupplies: 0, ends: 0 } as const;
    expect(yarnLines(section, LEG.yarns, WIDTH_MM).get(0)!.fetched!.short).toBe('B back 5 ×2, A anew');
  });

  it('mark a carry over more stitches than is allowed', () => {
    expect(linesOf({ ...SPOTS, colourLimits: { longestCarry: 5 } })(3).longest).toMatchObject({ isOver: true });
    expect(linesOf({ ...SPOTS, colourLimits: { longestCarry: 6 } })(3).longest).toMatchObject({ isOver: false });
  });

  it('tell bobbins where they are wound', () => {
    const intarsia: Pattern = { ...SPOTS, colourLimits: { longestCarry: 2 }, sections: [{ ...SPOTS.sections[0]!, colour: { technique: 'intarsia' } }] };
    // Three areas of A with a spot of B between them: A reaches over one stitch, the two spots lie 6 apart.
    expect(linesOf(intarsia)(3).bobbins).toBe(3);
  });
});

describe('the yarns of a section', () => {
  it('are those that its stitches are worked in, once each', () => {
    const bench = benchOf(SPOTS);
    expect(yarnsOfSection(bench.fabric, 0, bench.colours.yarn)).toEqual([0, 1]);
    const plain = benchOf(LEG);
    expect(yarnsOfSection(plain.fabric, 0, plain.colours.yarn)).toEqual([0]);
    expect(() => yarnsOfSection(plain.fabric, 3, plain.colours.yarn)).toThrow('section 3 asked of 1');
  });
});
