import { describe, expect, it } from 'vitest';
import { patternFromText } from '../../../src/engine/1-pattern/patternFromText.ts';
import type { Pattern } from '../../../src/engine/1-pattern/pattern.ts';
import { construct } from '../../../src/engine/2-construct/construct.ts';
import { FLAG } from '../../../src/engine/3-fabric/fabric.ts';
import { work } from '../../../src/engine/3-fabric/work.ts';
import { colourGrid } from '../../../src/engine/4-colour/colourGrid.ts';
import { fabricWithStitches, overriddenCall, overrideAt, setStitches } from '../../../src/engine/4-colour/setStitches.ts';
import { layOut } from '../../../src/engine/5-layout/layOutSection.ts';
import { draw } from '../../../src/engine/6-drawing/draw.ts';
import { STITCH_OVERRIDES, overrideOf } from '../../../src/engine/craft/stitchOverrides.ts';
import { stitchOfCode } from '../../../src/engine/craft/stitches.ts';
import { plainCall } from '../../../src/engine/notation/instruction.ts';
import { readRow } from '../../../src/engine/notation/readRow.ts';
import { writeRow } from '../../../src/engine/notation/writeRow.ts';
import { handPlacement } from './handFabric.ts';

const TEXT = `Swatch
Yarn A: slate #4b5a6b

SWATCH
Foundation: ch 9.
Row 1 (RS): sc in 2nd ch from hook and in each ch across. (8 sc)
Row 2: ch 1, turn, sc in each st across. (8 sc)
Row 3: ch 1, turn, sc2tog, sc in next 6 sts. (7 sc)
`;

function swatch(stitches: readonly string[], more: Parameters<typeof handPlacement>[0] = {}) {
  const read = patternFromText(TEXT).pattern!;
  const pattern: Pattern = {
    ...read,
    motifs: [{ id: 'm', name: 'Knots', cells: stitches.map((row) => '.'.repeat(row.length)), stitches }],
    placements: [handPlacement({ section: read.sections[0]!.id, row: { line: read.sections[0]!.lines[1]!.id, nth: 0 }, ...more })],
  };
  const fabric = work(construct(pattern, 0));
  const grid = colourGrid(fabric);
  const set = setStitches(pattern, grid, 0);
  const after = fabricWithStitches(fabric, set);
  const rows = fabric.rows.map((_, r) => Array.from(grid.columns.stitches.slice(grid.columns.start[r], grid.columns.start[r + 1]), (stitch) => stitchOfCode(after.kind[stitch]!).us).join(' '));
  return { fabric, after, grid, set, rows: rows.slice(1), stitchAt: (row: number, column: number) => grid.columns.stitches[grid.columns.start[row]! + column]! };
}

describe('stitches that a motif sets', () => {
  it('lie where its cells lie, as seen on the right side, on rows of either direction', () => {
    expect(swatch(['.b', 'o.'], { across: 2, gap: 1 }).rows).toEqual(['popcorn sc sc popcorn sc sc sc sc', 'sc bobble sc sc bobble sc sc sc', 'sc sc sc sc sc sc sc']);
  });

  it('have the usual legs, and change nothing else of the fabric', () => {
    const { fabric, after, stitchAt } = swatch(['b']);
    expect(after.legs[stitchAt(1, 0)]).toBe(5);
    expect({ ...after, kind: fabric.kind, legs: fabric.legs, flags: fabric.flags }).toEqual(fabric);
    const none = swatch(['..']);
    expect(none.after).toBe(none.fabric);
  });

  it('leave decreases alone and count them', () => {
    const { set, rows } = swatch(['bbbbbbb', '.......', '.......'], { align: 'left' });
    // Row 3 is worked from right to left: its decrease is the last column.
    expect(rows[2]).toBe('bobble bobble bobble bobble bobble bobble sc');
    expect([...set.leftOut]).toEqual([['one', 1]]);
  });

  it.each([
    // As the worker faces it, whatever the side.
    ['k', 'RS', 'back', 'none'],
    ['k', 'WS', 'back', 'none'],
    ['f', 'WS', 'front', 'none'],
    // As seen on the right side. Common practice: the loop left free on the right side makes the ridge.
    ['r', 'RS', 'back', 'none'],
    ['r', 'WS', 'front', 'none'],
    ['p', 'RS', 'both', 'front'],
    ['p', 'WS', 'both', 'back'],
  ] as const)('%s on the %s takes loop %s, post %s', (letter, side, loop, post) => {
    expect(overriddenCall(plainCall('sc'), overrideOf(letter)!, side)).toMatchObject({ kind: 'sc', loop, post });
  });

  it('set the flags of loops and posts by the side of the row', () => {
    const { after, set, stitchAt } = swatch(['rp', 'rp']);
    expect(after.flags[stitchAt(1, 0)]! & (FLAG.backLoop | FLAG.frontLoop)).toBe(FLAG.backLoop);
    expect(after.flags[stitchAt(2, 0)]! & (FLAG.backLoop | FLAG.frontLoop)).toBe(FLAG.frontLoop);
    expect(after.flags[stitchAt(1, 1)]! & (FLAG.frontPost | FLAG.backPost)).toBe(FLAG.frontPost);
    expect(after.flags[stitchAt(2, 1)]! & (FLAG.frontPost | FLAG.backPost)).toBe(FLAG.backPost);
    expect(overrideAt(set, stitchAt(2, 1))!.name).toBe('raised post stitch');
    expect(overrideAt(set, stitchAt(2, 2))).toBeNull();
  });

  it('can be drawn on the layout of the plain fabric', () => {
    const { fabric, after } = swatch(['.b.o']);
    const layout = layOut(fabric, 0, { stitches: 16, rows: 18, overCm: 10, stitch: 'sc' });
    const glyphs = (one: typeof fabric) => new Set(draw(one, layout, { symbols: 'all', numbers: true, grid: true }).stitches.glyph);
    expect(glyphs(after).size).toBe(glyphs(fabric).size + 2);
  });

  it.each(STITCH_OVERRIDES.map((one) => [one.name, one] as const))('a %s can be written in a row and read again', (_, override) => {
    for (const side of ['RS', 'WS'] as const) {
      const stitch = overriddenCall(plainCall('dc'), override, side);
      const text = writeRow([{ kind: 'work', stitch, each: 1, into: { at: 'next', count: 1, what: 'st' }, range: [0, 0] }], null, { terms: 'us' });
      expect(readRow(text, { terms: 'us', sizes: 1, letters: ['A'] }).body).toMatchObject([{ kind: 'work', stitch }]);
    }
  });
});
