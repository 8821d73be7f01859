import fc from 'fast-check';
import * as v from 'valibot';
import { describe, expect, it } from 'vitest';
import type { Motif } from '../../../src/engine/1-pattern/pattern.ts';
import { motifSchema } from '../../../src/engine/1-pattern/schema.ts';
import { MOTIF_SHELF } from '../../../src/engine/4-colour/motifShelf.ts';
import { drawCells, drawStitches, isSymmetryPossible } from '../../../src/engine/4-colour/drawMotif.ts';
import { changePart, layPart, movePart } from '../../../src/engine/4-colour/motifParts.ts';
import { areaPoints, linePoints, rectanglePoints } from '../../../src/engine/4-colour/motifPoints.ts';
import { allOverMotif, cropMotif, flipMotif, halfDropMotif, invertMotif, mirrorMotif, replaceYarn, turnMotif, widenMotif } from '../../../src/engine/4-colour/motifs.ts';

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
    ['drawing half-drops', drawCells(motif('....', '....'), [{ x: 3, y: 0 }], 'C', 'halfDrop'), ['...C', '.C..']],
    ['drawing follows a frieze: mirror line on column 1, glide by 3', drawCells(motif('......', '......', '......'), [{ x: 0, y: 0 }], 'B', { group: 'p2mg', axis: 2 }), ['B.B...', '......', '...B.B']],
    ['drawing without room for the symmetry draws the cell alone', drawCells(motif('.....', '.....'), [{ x: 0, y: 0 }], 'B', { group: 'p11g', axis: 0 }), ['B....', '.....']],
    ['all over: mirrored', allOverMotif(FLAG, 'mirror'), ['AB..BA', 'C....C']],
    ['all over: flipped', allOverMotif(FLAG, 'flip'), ['C..', 'AB.', 'AB.', 'C..']],
    ['all over: mirrored both ways', allOverMotif(FLAG, 'mirrorBoth'), ['C....C', 'AB..BA', 'AB..BA', 'C....C']],
    ['all over: turned', allOverMotif(FLAG, 'turn'), ['AB...C', 'C...BA']],
    ['all over: brick, the upper half a repeat to the right', allOverMotif(motif('ABC.'), 'brick'), ['C.AB', 'ABC.']],
    ['a part is mirrored where it is', changePart(FLAG, { x: 0, y: 0, width: 2, height: 1 }, mirrorMotif), ['BA.', 'C..']],
    ['a part is moved, and leaves its cells empty', movePart(FLAG, { x: 0, y: 0, width: 2, height: 1 }, 1, 1, false), ['...', 'CAB']],
    ['a part is copied, lets through where it is empty, and is cut at the edge', movePart(motif('A.B', 'CCC'), { x: 0, y: 0, width: 3, height: 1 }, 1, 1, true), ['A.B', 'CAC']],
    ['another motif is laid over, beyond the edges too', layPart(FLAG, motif('BB', 'BB'), -1, -1), ['BB.', 'C..']],
    ['a line is drawn', drawCells(motif('....', '....', '....'), linePoints({ x: 0, y: 0 }, { x: 3, y: 2 }), 'A'), ['A...', '.AA.', '...A']],
    ['a rectangle is drawn', drawCells(motif('....', '....', '....'), rectanglePoints({ x: 3, y: 2 }, { x: 1, y: 0 }, false), 'A'), ['.AAA', '.A.A', '.AAA']],
    ['an area is filled', drawCells(motif('.A..', '.A..', 'AA..'), areaPoints(['.A..', '.A..', 'AA..'], { x: 0, y: 0 }), 'B'), ['BA..', 'BA..', 'AA..']],
    ['an area of repeats is filled round the edge', drawCells(motif('.A..', '.A..', 'AA..'), areaPoints(['.A..', '.A..', 'AA..'], { x: 0, y: 0 }, true), 'B'), ['BABB', 'BABB', 'AABB']],
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
    ['a part that changes its size', () => changePart(FLAG, { x: 0, y: 0, width: 2, height: 1 }, turnMotif), 'a part of 2 × 1 came back as 1 × 2'],
    ['an all-over repeat that is too wide', () => allOverMotif(motif('A'.repeat(201)), 'mirror'), 'a motif of 402 × 1 asked for, 400 is the most'],
    ['columns that are not there', () => cropMotif(FLAG, 2, 0, 2, 1), 'columns 2 to 4 asked of a motif of 3 columns'],
    ['rows that are not there', () => cropMotif(FLAG, 0, 0, 1, 0), 'rows 0 to 0 asked of a motif of 2 rows'],
    ['a motif that is too wide', () => widenMotif(FLAG, { right: 398 }), 'a motif of 401 × 2 asked for, 400 is the most'],
    ['a narrower motif', () => widenMotif(FLAG, { right: -1 }), 'not by -1'],
  ])('refuse %s', (_, act, message) => {
    expect(act).toThrow(message);
  });
});

describe('the stitches of a motif', () => {
  const KNOTS: Motif = { ...FLAG, stitches: ['b..', '.ok'] };

  it.each<[string, Motif, readonly string[] | undefined]>([
    ['mirrored', mirrorMotif(KNOTS), ['..b', 'ko.']],
    ['flipped', flipMotif(KNOTS), ['.ok', 'b..']],
    ['turned', turnMotif(KNOTS), ['.b', 'o.', 'k.']],
    ['cropped', cropMotif(KNOTS, 1, 1, 2, 1), ['ok']],
    ['widened, without stitches where it is wider', widenMotif(KNOTS, { left: 1 }, 'A'), ['.b..', '..ok']],
    ['half-dropped', halfDropMotif(KNOTS), ['b...ok', '.okb..']],
    ['moved in part', movePart(KNOTS, { x: 0, y: 0, width: 1, height: 1 }, 2, 0, false), ['..b', '.ok']],
    ['kept when a yarn is replaced', replaceYarn(KNOTS, 'A', 'B'), ['b..', '.ok']],
    ['set with their images', drawStitches(FLAG, [{ x: 0, y: 0 }], 'b', 'leftRight'), ['b.b', '...']],
    ['taken off, and the grid with the last of them', drawStitches(drawStitches(FLAG, [{ x: 0, y: 0 }], 'b'), [{ x: 0, y: 0 }], '.'), undefined],
  ])('are %s', (_, found, stitches) => {
    expect(found.stitches).toEqual(stitches);
    expect(v.is(motifSchema, found)).toBe(true);
  });
});

describe('points of a motif', () => {
  const point = fc.record({ x: fc.integer({ min: -20, max: 20 }), y: fc.integer({ min: -20, max: 20 }) });

  it('make lines that go from end to end, a cell at a time, never further from the true line than half a cell', () => {
    fc.assert(
      fc.property(point, point, (from, to) => {
        const line = linePoints(from, to);
        expect([line[0], line.at(-1)]).toEqual([from, to]);
        const [across, down] = [to.x - from.x, to.y - from.y];
        expect(line).toHaveLength(Math.max(Math.abs(across), Math.abs(down)) + 1);
        line.slice(1).forEach((one, i) => expect(Math.max(Math.abs(one.x - line[i]!.x), Math.abs(one.y - line[i]!.y))).toBe(1));
        for (const one of line) {
          const off = Math.abs(across) >= Math.abs(down) ? one.y - from.y - (across === 0 ? 0 : ((one.x - from.x) * down) / across) : one.x - from.x - ((one.y - from.y) * across) / down;
          expect(Math.abs(off)).toBeLessThanOrEqual(0.5);
        }
      }),
      { numRuns: 500, seed: 9_13 },
    );
  });

  it('make areas that spreading from cell to cell until nothing changes finds', () => {
    const grid = fc.integer({ min: 1, max: 7 }).chain((width) => fc.array(fc.string({ unit: fc.constantFrom('A', '.'), minLength: width, maxLength: width }), { minLength: 1, maxLength: 6 }));
    fc.assert(
      fc.property(grid, fc.nat(20), fc.nat(20), fc.boolean(), (rows, atX, atY, isRepeating) => {
        const [width, height] = [rows[0]!.length, rows.length];
        const from = { x: atX % width, y: atY % height };
        const hit = rows.map((row) => [...row].map(() => false));
        hit[from.y]![from.x] = true;
        for (let changed = true; changed; ) {
          changed = false;
          for (let y = 0; y < height; y++) {
            for (let x = 0; x < width; x++) {
              if (hit[y]![x] || rows[y]![x] !== rows[from.y]![from.x]) continue;
              const beside = [x - 1, x + 1].map((one) => (isRepeating ? (one + width) % width : one));
              if (beside.some((one) => hit[y]![one]) || hit[y - 1]?.[x] || hit[y + 1]?.[x]) changed = hit[y]![x] = true;
            }
          }
        }
        const found = rows.map((row) => [...row].map(() => false));
        for (const { x, y } of areaPoints(rows, from, isRepeating)) found[y]![x] = true;
        expect(found).toEqual(hit);
      }),
      { numRuns: 500, seed: 9_14 },
    );
  });

  it('know which symmetries a motif has room for', () => {
    expect([isSymmetryPossible(motif('...'), 'halfDrop'), isSymmetryPossible(motif('..', '..'), 'halfDrop'), isSymmetryPossible(motif('...'), { group: 'p2mg', axis: 0 }), isSymmetryPossible(motif('...'), { group: 'p2mm', axis: 1 })]).toEqual([false, true, false, true]);
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
