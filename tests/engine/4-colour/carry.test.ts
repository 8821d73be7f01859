import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Pattern } from '../../../src/engine/1-pattern/pattern.ts';
import type { Fabric } from '../../../src/engine/3-fabric/fabric.ts';
import { carryOf, type PieceCarry, type RowCarry } from '../../../src/engine/4-colour/carry.ts';
import { colourGrid } from '../../../src/engine/4-colour/colourGrid.ts';
import { jogsInRounds, loneStitches } from '../../../src/engine/4-colour/colourSpots.ts';
import type { Technique } from '../../../src/engine/craft/colourTechniques.ts';
import { handFabric, handPattern, type HandRow } from './handFabric.ts';

/** Rows as they look on the right side, top row first; the bottom row is worked from right to left, rounds all are. */
function drawn(rows: readonly string[], round = false): Fabric {
  const bottomUp = [...rows].reverse();
  return handFabric(
    bottomUp.map((letters, nth): HandRow => {
      const direction = round || nth % 2 === 0 ? -1 : 1;
      const seen = [...letters].map((letter) => 'ABC'.indexOf(letter));
      return { stitches: letters.length, line: 'r', nth, direction, yarns: direction === -1 ? seen.reverse() : seen, ...(round ? { word: 'round' as const, round } : {}) };
    }),
  );
}

function carried(fabric: Fabric, technique: Technique | null, limits: Pattern['colourLimits'] = {}): PieceCarry {
  const base = handPattern({});
  const pattern = handPattern({ colourLimits: limits, sections: base.sections.map((section) => (technique ? { ...section, colour: { technique } } : section)) });
  return carryOf(pattern, colourGrid(fabric), fabric);
}

const rowsOf = (fabric: Fabric, technique: Technique | null, limits: Pattern['colourLimits'] = {}) => carried(fabric, technique, limits).sections[0]!.rows;

describe('what the yarns of a row do', () => {
  it('is told in working order: yarns, changes, the longest carry', () => {
    const [row] = rowsOf(drawn(['ABBBAACAAA']), 'carried');
    // Worked from the right: AAA C AA BBB A.
    expect(row).toMatchObject({ yarns: [0, 2, 1], changes: 4, changesAtStart: false, longest: { yarn: 0, stitches: 3, kind: 'inRow' }, supplies: 3 });
    expect(row!.carries).toEqual([{ yarn: 0, stitches: 1, kind: 'inRow' }, { yarn: 0, stitches: 3, kind: 'inRow' }]);
  });

  it('goes on over the end of a round', () => {
    const [, second] = rowsOf(drawn(['AAAABAAA', 'AAABAAAA'], true), 'stranded');
    // From the right, B is stitch 5 of the first round and stitch 4 of the second: 3 stitches after it, 3 before it.
    expect(second!.carries).toContainEqual({ yarn: 1, stitches: 6, kind: 'overEnd' });
  });

  it('knows the yarn that has to be carried back for a flat row', () => {
    // The first row, from the right, leaves B after column 2; the second, from the left, needs it at column 0 already.
    const [, second] = rowsOf(drawn(['BBAAAA', 'AABBAA']), 'carried');
    expect(second!.travels.find((one) => one.yarn === 1)).toEqual({ yarn: 1, stitches: 2, rows: 0, isAgainst: true, isCut: false });
    // Here the second row comes by where it hangs on its way to column 4.
    const [, other] = rowsOf(drawn(['AAAABB', 'AABBAA']), 'carried');
    expect(other!.travels.find((one) => one.yarn === 1)).toEqual({ yarn: 1, stitches: 2, rows: 0, isAgainst: false, isCut: false });
  });

  it('finds nothing to carry where two-row stripes leave each yarn at the right edge', () => {
    const piece = carried(drawn(['BBBB', 'BBBB', 'AAAA', 'AAAA', 'BBBB', 'BBBB', 'AAAA', 'AAAA']), null);
    expect(piece.sections[0]).toMatchObject({ technique: 'stripes', isSaid: false, changes: 3, longest: null, mostYarns: 1, joined: [1, 1, 0], ends: 4 });
    expect(piece.sections[0]!.rows[4]!.travels).toEqual([{ yarn: 0, stitches: 0, rows: 2, isAgainst: false, isCut: false }]);
  });

  it('joins anew where one-row stripes leave a yarn at the other end', () => {
    const piece = carried(drawn(['BBBB', 'AAAA', 'BBBB', 'AAAA']), null);
    expect(piece.sections[0]).toMatchObject({ joined: [2, 2, 0], ends: 8 });
    expect(piece.sections[0]!.rows[2]!.travels).toEqual([{ yarn: 0, stitches: 4, rows: 1, isAgainst: false, isCut: true }]);
    // In rounds every yarn is where the round begins.
    expect(carried(drawn(['BBBB', 'AAAA', 'BBBB', 'AAAA'], true), null).sections[0]).toMatchObject({ joined: [1, 1, 0], ends: 4 });
  });

  it('cuts a yarn that rests for more rows than it may be carried up', () => {
    const rows = ['AA', ...Array.from({ length: 6 }, () => 'BB'), 'AA', 'AA'];
    expect(carried(drawn(rows), null).sections[0]).toMatchObject({ joined: [2, 1, 0], ends: 6 });
    expect(carried(drawn(rows), null, { rowsUp: 6 }).sections[0]).toMatchObject({ joined: [1, 1, 0], ends: 4 });
  });

  it('puts the ends in the rows where yarns are joined and cut, two to each length', () => {
    const rows = rowsOf(drawn(['AAAA', 'ABBA', 'ABBA', 'AAAA']), 'carried');
    expect(rows.map((row) => row.ends)).toEqual([1, 1, 1, 1]);
  });

  it('winds a bobbin for each area in intarsia', () => {
    const flag = ['AAAABBBB', 'AAAABBBB', 'AAAABBBB'];
    expect(carried(drawn(flag), 'intarsia').sections[0]).toMatchObject({ joined: [1, 1, 0], mostSupplies: 2, ends: 4, longest: null });
    // A spot of 5 is wider than a bobbin is taken across: the ground needs one on either side of it.
    const spot = ['AAAAAAAAA', 'AABBBBBAA', 'AABBBBBAA', 'AAAAAAAAA'];
    expect(carried(drawn(spot), 'intarsia').sections[0]).toMatchObject({ joined: [2, 1, 0], mostSupplies: 3, ends: 6 });
    // Across 2 it is carried.
    expect(carried(drawn(['AAAAAA', 'AABBAA', 'AABBAA', 'AAAAAA']), 'intarsia').sections[0]).toMatchObject({ joined: [1, 1, 0], mostSupplies: 2, longest: { stitches: 2 } });
    // A slanting edge is followed; a jump is not.
    expect(carried(drawn(['ABBBBBBB', 'AABBBBBB', 'AAABBBBB']), 'intarsia').sections[0]!.joined).toEqual([1, 1, 0]);
    expect(carried(drawn(['BAAAAAAAAAAAAA', 'AAAAAAAAAABAAA']), 'intarsia').sections[0]!.joined[1]).toBe(2);
  });

  it('sees intarsia travel back in rounds', () => {
    const [, second] = rowsOf(drawn(['AAAAABBBBBBAAAAA', 'AAAAABBBBBBAAAAA'], true), 'intarsia');
    expect(second!.travels).toContainEqual({ yarn: 1, stitches: 6, rows: 0, isAgainst: true, isCut: false });
  });

  it('cuts everything where the work is fastened off', () => {
    const fabric = drawn(['AAAA', 'AAAA']);
    const previous = fabric.previous.slice();
    previous[fabric.rows[1]!.first] = -1;
    expect(carried({ ...fabric, previous }, 'carried').sections[0]).toMatchObject({ joined: [2, 0, 0], ends: 4 });
  });

  it('counts a foundation in the yarn of its chains', () => {
    const rows: readonly HandRow[] = [{ stitches: 5, line: 'f', nth: 0, word: 'foundation', yarn: 1 }, { stitches: 4, line: 'r', nth: 0, direction: -1 }];
    const base = handPattern({});
    const fabric = handFabric(rows);
    expect(carryOf(base, colourGrid(fabric), fabric).sections[0]).toMatchObject({ joined: [1, 1, 0], changes: 1, ends: 4 });
  });

  it('gives no ends and no rows for a section without stitches', () => {
    const base = handPattern({});
    const fabric = handFabric([{ stitches: 0, line: 'r', nth: 0, word: 'step' }]);
    expect(carryOf(base, colourGrid(fabric), fabric)).toMatchObject({ ends: 0, sections: [{ rows: [], ends: 0, longest: null, mostSupplies: 0 }] });
  });
});

/** Where a stitch is: row, place in its row, and where its yarn comes in and hangs, in columns from the row's left edge. */
interface Spot {
  readonly row: number;
  readonly place: number;
  readonly worked: number;
  readonly comesIn: number;
  readonly hangs: number;
}

describe('carrying by arithmetic and by walking from stitch to stitch', () => {
  const letters = fc.integer({ min: 1, max: 9 }).chain((width) => fc.array(fc.string({ unit: fc.constantFrom('A', 'B', 'C'), minLength: width, maxLength: width }), { minLength: 1, maxLength: 8 }));

  it('agree on every carry, on cuts and on ends, flat and in rounds', () => {
    fc.assert(
      fc.property(letters, fc.boolean(), fc.constantFrom('carried' as const, 'stranded' as const), fc.integer({ min: 0, max: 5 }), fc.integer({ min: 0, max: 3 }), (rows, round, technique, longestCarry, rowsUp) => {
        const fabric = drawn(rows, round);
        const width = rows[0]!.length;
        const piece = carried(fabric, technique, { longestCarry, rowsUp });
        const spots: Spot[][] = [[], [], []];
        const colours: number[][] = [];
        let worked = 0;
        [...rows].reverse().forEach((text, row) => {
          const direction = round || row % 2 === 0 ? -1 : 1;
          const order = direction === -1 ? [...text].reverse() : [...text];
          colours.push(order.map((letter) => 'ABC'.indexOf(letter)));
          order.forEach((letter, place) => {
            const centre = (direction === -1 ? width - 1 - place : place) + 0.5;
            spots['ABC'.indexOf(letter)]!.push({ row, place, worked: worked++, comesIn: centre - direction / 2, hangs: centre + direction / 2 });
          });
        });
        const carries: RowCarry['carries'][number][][] = rows.map(() => []);
        const joined = [0, 0, 0];
        const ends = rows.map(() => 0);
        spots.forEach((own, yarn) => {
          own.forEach((spot, i) => {
            const before = own[i - 1];
            const between = before ? spot.row - before.row : 0;
            const apart = before ? Math.abs(spot.comesIn - before.hangs) : 0;
            const way = round ? Math.min(apart % width, width - (apart % width)) : apart;
            const goesOn = before && (between <= 1 || (between - 1 <= rowsUp && way <= longestCarry));
            if (!before || !goesOn) {
              joined[yarn]!++;
              ends[spot.row]!++;
              if (before) ends[before.row]!++;
            } else if (between === 0 || (between === 1 && round)) {
              const stitches = spot.worked - before.worked - 1;
              if (stitches > 0) carries[spot.row]!.push({ yarn, stitches, kind: between === 0 ? 'inRow' : 'overEnd' });
            } else if (between === 1 && way > 0) carries[spot.row]!.push({ yarn, stitches: way, kind: 'fromBelow' });
            if (i === own.length - 1) ends[spot.row]!++;
          });
        });
        const sort = (list: RowCarry['carries']) => list.map((one) => JSON.stringify(one)).sort();
        const section = piece.sections[0]!;
        section.rows.forEach((row, r) => {
          expect(sort(row.carries)).toEqual(sort(carries[r]!));
          expect(row.longest?.stitches ?? 0).toBe(Math.max(0, ...carries[r]!.map((one) => one.stitches)));
          expect(row.ends).toBe(ends[r]);
          expect(row.changes).toBe(colours[r]!.slice(1).filter((yarn, i) => yarn !== colours[r]![i]).length);
          expect(new Set(row.yarns)).toEqual(new Set(colours[r]));
        });
        expect(section.joined).toEqual(joined);
        expect(section.ends).toBe(2 * joined.reduce((sum, count) => sum + count, 0));
      }),
      { numRuns: 1_500, seed: 8_080 },
    );
  });

  it('keep the laws of bobbins: as many as runs at most, no way longer than allowed, two ends each', () => {
    fc.assert(
      fc.property(letters, fc.integer({ min: 0, max: 4 }), (rows, longestCarry) => {
        const section = carried(drawn(rows), 'intarsia', { longestCarry }).sections[0]!;
        for (const row of section.rows) {
          expect(row.supplies).toBeLessThanOrEqual(row.changes + 1);
          expect(row.supplies).toBeGreaterThanOrEqual(row.yarns.length);
          for (const carry of row.carries) expect(carry.stitches).toBeLessThanOrEqual(longestCarry);
        }
        expect(section.ends).toBe(2 * section.joined.reduce((sum, count) => sum + count, 0));
        expect(section.mostSupplies).toBeGreaterThanOrEqual(Math.max(...section.rows.map((row) => row.supplies)));
      }),
      { numRuns: 800, seed: 8_081 },
    );
  });
});

describe('spots of colour', () => {
  /** A fabric whose stitches are worked one into another, column over column. */
  function woven(rows: readonly string[], round: boolean): Fabric {
    const fabric = drawn(rows, round);
    const { columns } = colourGrid(fabric);
    const bases: number[] = [];
    const baseStart = [0];
    for (let stitch = 0; stitch < fabric.count; stitch++) {
      const row = fabric.row[stitch]!;
      if (columns.columnOf[stitch]! >= 0 && row > 0) bases.push(columns.stitches[columns.start[row - 1]! + columns.columnOf[stitch]!]!);
      baseStart.push(bases.length);
    }
    return { ...fabric, bases: Int32Array.from(bases), baseStart: Int32Array.from(baseStart) };
  }

  it('lone stitches are those whose eight neighbours all are of other yarns', () => {
    const grid = fc.integer({ min: 1, max: 6 }).chain((width) => fc.array(fc.string({ unit: fc.constantFrom('A', 'B', 'C'), minLength: width, maxLength: width }), { minLength: 1, maxLength: 5 }));
    fc.assert(
      fc.property(grid, fc.boolean(), (rows, round) => {
        const fabric = woven(rows, round);
        const { columns } = colourGrid(fabric);
        const [width, height] = [rows[0]!.length, rows.length];
        const at = (x: number, y: number) => (y < 0 || y >= height ? undefined : round ? rows[height - 1 - y]![((x % width) + width) % width] : rows[height - 1 - y]![x]);
        const alone: number[] = [];
        for (let y = 0; y < height; y++) {
          for (let x = 0; x < width; x++) {
            let like = 0;
            for (const dy of [-1, 0, 1]) for (const dx of [-1, 0, 1]) {
              // On a round of one or two stitches a neighbour may be the stitch itself.
              const isSelf = dy === 0 && (round ? (x + dx + width) % width === x : dx === 0);
              if (!isSelf && at(x + dx, y + dy) === at(x, y)) like++;
            }
            if (like === 0) alone.push(columns.stitches[columns.start[y]! + x]!);
          }
        }
        expect(loneStitches(colourGrid(fabric), fabric.yarn)).toEqual(alone.sort((a, b) => a - b));
      }),
      { numRuns: 800, seed: 8_082 },
    );
  });

  it('rounds jog where the last stitch of one and the first of the next differ', () => {
    const fabric = drawn(['BBBB', 'BAAA', 'AAAB', 'AAAA'], true);
    // Rounds end at the left and begin at the right: A|B, B... the second begins with B after A, the third with A after A.
    expect(jogsInRounds(colourGrid(fabric), fabric.yarn)).toEqual([{ row: 1, section: 0, isSpiral: false }]);
    expect(jogsInRounds(colourGrid(drawn(['BBBB', 'AAAA'])), drawn(['BBBB', 'AAAA']).yarn)).toEqual([]);
    const spiral = { ...fabric, flags: fabric.flags.map((flag) => flag & ~4) };
    expect(jogsInRounds(colourGrid(spiral), spiral.yarn)[0]).toMatchObject({ isSpiral: true });
  });
});
