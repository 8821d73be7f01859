import { describe, expect, it } from 'vitest';
import { FLAG } from '../../../src/engine/3-fabric/fabric.ts';
import { check } from '../../../src/engine/readings/checks/check.ts';
import { copyRow } from '../../../src/editor/bench/commands/copyRow.ts';
import { editRowText } from '../../../src/editor/bench/commands/editRowText.ts';
import { freshIds } from '../../../src/editor/bench/commands/freshIds.ts';
import { insertRow } from '../../../src/editor/bench/commands/insertRow.ts';
import { layYarn } from '../../../src/editor/bench/commands/layYarn.ts';
import { mendLine } from '../../../src/editor/bench/commands/mendLine.ts';
import { movePlacement } from '../../../src/editor/bench/commands/movePlacement.ts';
import { placeMotif } from '../../../src/editor/bench/commands/placeMotif.ts';
import { removePlacement } from '../../../src/editor/bench/commands/removePlacement.ts';
import { removeRow } from '../../../src/editor/bench/commands/removeRow.ts';
import { renamePattern } from '../../../src/editor/bench/commands/renamePattern.ts';
import { after, benchOf, LEG, stitchesOfRow, TICK } from './benchOf.ts';

const texts = (pattern: typeof LEG) => pattern.sections[0]!.lines.map((line) => line.text);
const yarnsOf = (pattern: typeof LEG, number: number, size = 0) => {
  const state = benchOf(pattern, size);
  return stitchesOfRow(state, number).filter((stitch) => state.fabric.flags[stitch]! & FLAG.counts).map((stitch) => pattern.yarns[state.colours.yarn[stitch]!]!.letter).join('');
};

describe('renaming', () => {
  it('gives the title and names the step', () => {
    const step = renamePattern('  Puffin Quay ')(benchOf(LEG));
    expect(step?.label).toBe('Rename to Puffin Quay');
    expect(after(LEG, step).title).toBe('Puffin Quay');
  });

  it.each([['', 'empty'], ['   ', 'only spaces'], ['Small leg', 'the same']])('is no step for %j (%s)', (title) => {
    expect(renamePattern(title)(benchOf(LEG))).toBeNull();
  });
});

describe('laying a yarn', () => {
  const state = benchOf(LEG);
  const row2 = stitchesOfRow(state, 2);

  it('lays it on the stitches of the size shown only', () => {
    const step = layYarn(row2.slice(1, 4), 'B')(state);
    expect(step?.label).toBe('Lay B chalk on 3 stitches');
    const laid = after(LEG, step);
    expect(yarnsOf(laid, 2)).toBe('BBBAAAAAAA');
    expect(yarnsOf(laid, 2, 1)).toBe('AAAAAAAAAAAA');
  });

  it('lays it in every size from the centre when asked to', () => {
    const laid = after(LEG, layYarn(row2.slice(5, 7), 'B', true)(state));
    expect(yarnsOf(laid, 2)).toBe('AAAABBAAAA');
    expect(yarnsOf(laid, 2, 1)).toBe('AAAAABBAAAAA');
  });

  it('is no step where the yarn lies already, and none for stitches that have no column', () => {
    expect(layYarn(row2, 'A')(state)).toBeNull();
    expect(layYarn([row2[0]!], 'B')(state)).toBeNull();
    expect(layYarn([], 'B')(state)).toBeNull();
  });
});

describe('placing a motif', () => {
  const state = benchOf(LEG);
  const stitch = stitchesOfRow(state, 3)[4]!;

  it('takes the motif in and lays as many repeats as fit', () => {
    const placed = after(LEG, placeMotif(TICK, stitch, 'centre', false)(state));
    expect(placed.motifs).toEqual([TICK]);
    expect(benchOf(placed).colours.fits).toMatchObject([{ across: 5, up: 1, width: 10, leftOver: { left: 0, right: 0 } }]);
    expect(yarnsOf(placed, 3)).toBe('BBBBBBBBBB');
  });

  it('takes no second copy of a motif that is there', () => {
    const once = after(LEG, placeMotif(TICK, stitch, 'once', false)(state));
    expect(after(once, placeMotif(TICK, stitch, 'left', false)(benchOf(once))).motifs).toHaveLength(1);
  });

  it('keeps a single motif within the row', () => {
    const first = stitchesOfRow(state, 3)[1]!;
    const placed = after(LEG, placeMotif(TICK, first, 'once', false)(state));
    expect(placed.placements[0]).toMatchObject({ align: 'left', across: 1 });
    expect(benchOf(placed).colours.fits[0]!.cellsCut).toBe(0);
  });

  it.each([
    ['wider than the row', { ...TICK, cells: ['B'.repeat(11)] }, stitch],
    ['the foundation', TICK, 2],
  ])('is no step on %s', (_, motif, at) => {
    expect(placeMotif(motif, at, 'centre', false)(state)).toBeNull();
  });

  it('takes the nearest stitch that counts for a turning chain', () => {
    const [chain, next] = stitchesOfRow(state, 3);
    expect(placeMotif(TICK, chain!, 'once', false)(state)).toEqual(placeMotif(TICK, next!, 'once', false)(state));
  });

  it('moves up and down as far as there are rows, and comes off again', () => {
    const placed = after(LEG, placeMotif(TICK, stitch, 'once', false)(state));
    const id = placed.placements[0]!.id;
    const up = after(placed, movePlacement(id, 1, 0)(benchOf(placed)));
    expect(up.placements[0]!.row).toEqual({ line: 'plain', nth: 2 });
    expect(movePlacement(id, -3, 0)(benchOf(placed))).toBeNull();
    expect(movePlacement(id, 4, 0)(benchOf(placed))).toBeNull();
    expect(after(placed, movePlacement(id, 0, 2)(benchOf(placed))).placements[0]!.offset).toBe(placed.placements[0]!.offset + 2);
    expect(after(placed, removePlacement(id)(benchOf(placed))).placements).toEqual([]);
    expect(removePlacement('gone')(benchOf(placed))).toBeNull();
  });
});

describe('editing the words of a row', () => {
  const other = 'ch 1, turn, sc2tog, sc in each st across.';

  it('changes all rows of the line, or cuts the one row out', () => {
    const state = benchOf(LEG);
    expect(texts(after(LEG, editRowText({ line: 'plain', nth: 2 }, other, 'line', 'row 4')(state)))[2]).toBe(other);
    const cut = after(LEG, editRowText({ line: 'plain', nth: 2 }, other, 'row', 'row 4')(state));
    const plain = LEG.sections[0]!.lines[2]!.text;
    expect(texts(cut).slice(2, 5)).toEqual([plain, other, plain]);
    expect(benchOf(cut).fabric.rows.map((row) => row.made)).toEqual([11, 10, 10, 10, 9, 9, 9]);
  });

  it('keeps loose cells on their rows when a line is cut', () => {
    const state = benchOf(LEG);
    const laid = after(LEG, layYarn(stitchesOfRow(state, 6).slice(1, 3), 'B')(state));
    const cut = after(laid, editRowText({ line: 'plain', nth: 1 }, 'ch 1, turn, sc in each st across.', 'row', 'row 3')(benchOf(laid)));
    expect(yarnsOf(cut, 6)).toBe('BBAAAAAAAA');
  });

  it('is no step for the same words, and none for a row that is not there', () => {
    expect(editRowText({ line: 'plain', nth: 0 }, LEG.sections[0]!.lines[2]!.text, 'row', 'row 2')(benchOf(LEG))).toBeNull();
    expect(editRowText({ line: 'plain', nth: 5 }, other, 'row', 'row 7')(benchOf(LEG))).toBeNull();
  });
});

describe('rows put in and taken out', () => {
  it('inserts a plain row in the middle of a line', () => {
    const more = after(LEG, insertRow({ line: 'plain', nth: 1 }, 'row 3')(benchOf(LEG)));
    expect(benchOf(more).fabric.rows.map((row) => row.made)).toEqual([11, 10, 10, 10, 10, 10, 10, 10]);
    expect(texts(more)).toContain('ch 1, turn, sc in each st across.');
  });

  it('writes the new row in the terms of the pattern', () => {
    const uk = { ...LEG, terms: 'uk' as const, sections: [{ ...LEG.sections[0]!, lines: LEG.sections[0]!.lines.map((line) => ({ ...line, text: line.text.replaceAll('sc', 'dc') })) }] };
    const more = after(uk, insertRow({ line: 'plain', nth: 4 }, 'row 6')(benchOf(uk)));
    expect(texts(more)).toContain('ch 1, turn, dc in each st across.');
  });

  it('copies a row right after itself', () => {
    const more = after(LEG, copyRow({ line: 'plain', nth: 4 }, 'row 6')(benchOf(LEG)));
    expect(benchOf(more).fabric.rows).toHaveLength(8);
    expect(copyRow({ line: 'f', nth: 0 }, 'foundation')(benchOf(LEG))).toBeNull();
  });

  it('removes a row with its loose cells and moves a motif to the row after', () => {
    const state = benchOf(LEG);
    const row3 = stitchesOfRow(state, 3);
    const laid = after(LEG, layYarn(row3.slice(1, 3), 'B')(state));
    const placed = after(laid, placeMotif(TICK, row3[5]!, 'once', false)(benchOf(laid)));
    const less = after(placed, removeRow({ line: 'plain', nth: 1 }, 'row 3')(benchOf(placed)));
    expect(benchOf(less).fabric.rows).toHaveLength(6);
    expect(less.cells).toEqual([]);
    expect(less.placements).toHaveLength(1);
  });

  it('is no step on the last row while a motif begins there', () => {
    const state = benchOf(LEG);
    const placed = after(LEG, placeMotif(TICK, stitchesOfRow(state, 6)[4]!, 'once', false)(state));
    expect(removeRow({ line: 'plain', nth: 4 }, 'row 6')(benchOf(placed))).toBeNull();
  });
});

describe('mending', () => {
  it('puts what was made in every size where a count says otherwise', () => {
    const slip = after(LEG, editRowText({ line: 'first', nth: 0 }, 'sc in 2nd ch from hook and in each ch across. (11 (13) sc)', 'line', 'row 1')(benchOf(LEG)));
    const state = benchOf(slip);
    const found = check(slip, state.fabric, state.colours).find((each) => each.rule === 'statedCount');
    const mended = after(slip, mendLine(found!)(state));
    expect(texts(mended)[1]).toBe(LEG.sections[0]!.lines[1]!.text);
    expect(check(mended, benchOf(mended).fabric, benchOf(mended).colours).filter((each) => each.where.line === 'first')).toEqual([]);
  });
});

describe('what has no certain mend', () => {
  it('is a count that some rows of its line make and others do not', () => {
    const slip = after(LEG, editRowText({ line: 'plain', nth: 0 }, 'ch 1, turn, sc2tog, sc in each st across. (9 (11) sc)', 'line', 'row 2')(benchOf(LEG)));
    const state = benchOf(slip);
    const found = check(slip, state.fabric, state.colours).filter((each) => each.rule === 'statedCount');
    expect(found).toHaveLength(4);
    expect(mendLine(found[0]!)(state)).toBeNull();
  });
});

describe('fresh ids', () => {
  it('count on from the highest that is in use', () => {
    const used = { ...LEG, placements: [{ id: 'placement-7' }, { id: 'placement-x' }] } as unknown as typeof LEG;
    expect(freshIds(used, 'placement-', 2)).toEqual(['placement-8', 'placement-9']);
    expect(freshIds(LEG, 'line-', 1)).toEqual(['line-1']);
  });
});
