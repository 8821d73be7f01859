import fc from 'fast-check';
import * as v from 'valibot';
import { describe, expect, it } from 'vitest';
import type { Motif } from '../../../src/engine/1-pattern/pattern.ts';
import { motifSchema } from '../../../src/engine/1-pattern/schema.ts';
import { MOTIF_SHELF } from '../../../src/engine/4-colour/motifShelf.ts';
import { cropMotif, drawCells, flipMotif, halfDropMotif, invertMotif, mirrorMotif, replaceYarn, turnMotif, widenMotif } from '../../../src/engine/4-colour/motifs.ts';

const motif = (...cells: readonly string[]): Motif => ({ id: 'm', name: 'flag', cells });
const FLAG = motif('AB.', 'C..');

describe('motif operations', () => {
  it.each<[string, Motif, readonly string[]]>([
    ['mirror changes left and right', mirrorMotif(FLAG), ['.BA', '..C']],
    ['flip changes top and bottom', flipMotif(FLAG), ['C..', 'AB.']],
    ['turn goes a quarter clockwise', turnMotif(FLAG), ['CA', '.B', '..']],
    ['crop keeps a part', cropMotif(FLAG, 1, 0, 2, 1), ['B.']],
    ['widen adds empty columns and rows', widenMotif(FLAG, { left: 1, bottom: 1 }), ['.AB.', '.C..', '....']],
    ['widen can fill with a yarn', widenMotif(motif('A'), { top: 1, right: 2 }, 'B'), ['BBB', 'ABB']],
    ['invert changes two yarns over', invertMotif(FLAG, 'A', 'B'), ['BA.', 'C..']],
    ['invert draws the ground in', invertMotif(FLAG, 'A', '.'), ['.BA', 'CAA']],
    ['a yarn is drawn in another', replaceYarn(FLAG, 'C', 'A'), ['AB.', 'A..']],
    ['half-drop lowers the second copy by half', halfDropMotif(motif('A.', 'B.', 'C.', '..')), ['A.C.', 'B...', 'C.A.', '..B.']],
    ['cells are drawn, those outside passed over', drawCells(FLAG, [{ x: 2, y: 1 }, { x: 3, y: 0 }, { x: 0, y: -1 }], 'B'), ['AB.', 'C.B']],
    ['drawing mirrors left and right', drawCells(motif('....', '....'), [{ x: 0, y: 1 }], 'B', 'leftRight'), ['....', 'B..B']],
    ['drawing mirrors top and bottom', drawCells(motif('....', '....'), [{ x: 0, y: 1 }], 'B', 'topBottom'), ['B...', 'B...']],
    ['drawing mirrors four times', drawCells(motif('...', '...', '...'), [{ x: 0, y: 0 }], 'C', 'four'), ['C.C', '...', 'C.C']],
    ['drawing turns half round the middle', drawCells(motif('...', '...'), [{ x: 0, y: 0 }], 'C', 'turned'), ['C..', '..C']],
  ])('%s', (_, found, cells) => {
    expect(found).toEqual({ id: 'm', name: 'flag', cells });
  });

  it('come back to the start when they are done the other way', () => {
    const any = fc.tuple(fc.integer({ min: 1, max: 7 }), fc.integer({ min: 1, max: 7 })).chain(([width, height]) =>
      fc.array(fc.array(fc.constantFrom('A', 'B', '.'), { minLength: width, maxLength: width }).map((row) => row.join('')), { minLength: height, maxLength: height }),
    );
    fc.assert(
      fc.property(any, fc.integer({ min: 0, max: 4 }), fc.integer({ min: 0, max: 4 }), (cells, left, top) => {
        const one = motif(...cells);
        const [width, height] = [cells[0]!.length, cells.length];
        expect(mirrorMotif(mirrorMotif(one))).toEqual(one);
        expect(flipMotif(flipMotif(one))).toEqual(one);
        expect(turnMotif(turnMotif(one))).toEqual(flipMotif(mirrorMotif(one)));
        expect(turnMotif(turnMotif(turnMotif(turnMotif(one))))).toEqual(one);
        expect(invertMotif(invertMotif(one, 'A', '.'), 'A', '.')).toEqual(one);
        expect(cropMotif(widenMotif(one, { left, top, right: 2, bottom: 1 }), left, top, width, height)).toEqual(one);
        // The half-drop holds every cell of the motif twice.
        const count = (rows: readonly string[]) => [...rows.join('')].filter((letter) => letter === 'A').length;
        expect(count(halfDropMotif(one).cells)).toBe(2 * count(cells));
      }),
      { numRuns: 500, seed: 9_12 },
    );
  });

  it.each<[string, () => Motif, string]>([
    ['columns that are not there', () => cropMotif(FLAG, 2, 0, 2, 1), 'columns 2 to 4 asked of a motif of 3 columns'],
    ['rows that are not there', () => cropMotif(FLAG, 0, 0, 1, 0), 'rows 0 to 0 asked of a motif of 2 rows'],
    ['a motif that is too wide', () => widenMotif(FLAG, { right: 398 }), 'a motif of 401 × 2 asked for, 400 is the most'],
    ['a narrower motif', () => widenMotif(FLAG, { right: -1 }), 'not by -1'],
  ])('refuse %s', (_, act, message) => {
    expect(act).toThrow(message);
  });
});

describe('the motif shelf', () => {
  it('has the seven motifs, each with an id of its own', () => {
    expect(MOTIF_SHELF.map(({ id }) => id)).toEqual(['waves', 'puffin', 'sail', 'gull', 'rope', 'pebble', 'star']);
  });

  it.each(MOTIF_SHELF.map(({ use, ...one }) => [one.name, one, use] as const))('%s is a sound motif in yarns A, B and C', (_, one, use) => {
    expect(v.is(motifSchema, one)).toBe(true);
    expect(one.cells.join('')).toMatch(/^[ABC.]+$/);
    expect(use).not.toBe('');
  });

  it('has a puffin that keeps to 13 stitches and 14 rows and all three yarns', () => {
    const { cells } = MOTIF_SHELF.find(({ id }) => id === 'puffin')!;
    expect([cells[0]!.length, cells.length]).toEqual([13, 14]);
    expect(new Set(cells.join(''))).toEqual(new Set('ABC.'));
  });
});
