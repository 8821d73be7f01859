import { describe, expect, it } from 'vitest';
import { applyEdit } from '../../../src/engine/1-pattern/applyEdit.ts';
import type { Edit } from '../../../src/engine/1-pattern/edit.ts';
import { LIMITS } from '../../../src/engine/1-pattern/limits.ts';
import type { Pattern } from '../../../src/engine/1-pattern/pattern.ts';
import { rowLine, SMALL } from './smallPattern.ts';

/** Applies an edit that must be made, and checks that its inverse brings the same pattern back. */
function made(edit: Edit, pattern: Pattern = SMALL): Pattern {
  const applied = applyEdit(pattern, edit);
  if (!applied.ok) throw new Error(applied.reason);
  const back = applyEdit(applied.pattern, applied.inverse);
  expect(back.ok && back.pattern).toStrictEqual(pattern);
  return applied.pattern;
}

const [leg, foot] = SMALL.sections as [Pattern['sections'][0], Pattern['sections'][0]];
const [slate, chalk, orange] = SMALL.yarns as [Pattern['yarns'][0], Pattern['yarns'][0], Pattern['yarns'][0]];
const place = SMALL.placements[0]!;

describe('edits', () => {
  it('share everything that they do not touch', () => {
    const now = made({ kind: 'setLine', section: 'foot', line: rowLine('foot-1', 'sc in each st around.', 31, { word: 'round' }) });
    expect(now.sections[0]).toBe(leg);
    expect(now.sections[1]!.lines[1]).toBe(foot.lines[1]);
    expect(now.motifs).toBe(SMALL.motifs);
    expect(now.cells).toBe(SMALL.cells);
    expect(made({ kind: 'set', field: 'title', value: 'Quay' }).sections).toBe(SMALL.sections);
    expect(made({ kind: 'set', field: 'title', value: SMALL.title })).toBe(SMALL);
  });

  it('replace fields whole', () => {
    expect(made({ kind: 'set', field: 'gauge', value: { ...SMALL.gauge, rows: 19.5 } }).gauge.rows).toBe(19.5);
    expect(made({ kind: 'set', field: 'hookMm', value: null }).hookMm).toBe(null);
    expect(made({ kind: 'set', field: 'yarns', value: [orange, chalk, slate] }).yarns[0]).toBe(orange);
  });

  it('put sections and lines in and take them out', () => {
    expect(made({ kind: 'insertSection', at: 1, section: { id: 'heel', name: 'HEEL', remark: '', lines: [], recipe: null } }).sections.map((one) => one.id)).toEqual(['leg', 'heel', 'foot']);
    expect(made({ kind: 'removeSection', section: 'foot' }).sections).toEqual([leg]);
    expect(made({ kind: 'setSection', section: 'leg', name: 'CUFF', remark: '', recipe: null }).sections[0]).toEqual({ ...leg, name: 'CUFF', remark: '', recipe: null });
    expect(made({ kind: 'insertLines', section: 'foot', at: 1, lines: [rowLine('n1', 'sc'), rowLine('n2', 'sc')] }).sections[1]!.lines.map((line) => line.id)).toEqual(['foot-1', 'n1', 'n2', 'foot-2']);
    expect(made({ kind: 'removeLines', section: 'leg', lines: ['leg-0', 'leg-1'] }).sections[0]!.lines.map((line) => line.id)).toEqual(['leg-2', 'leg-3']);
  });

  it('change motifs and placements', () => {
    expect(made({ kind: 'setMotif', motif: { id: 'spot', name: 'Spot', cells: ['C'] } }).motifs[1]!.cells).toEqual(['C']);
    expect(made({ kind: 'removeMotif', motif: 'spot' }).motifs).toHaveLength(1);
    expect(made({ kind: 'insertPlacement', at: 0, placement: { ...place, id: 'two', motif: 'spot' } }).placements.map((one) => one.id)).toEqual(['two', 'flags']);
    expect(made({ kind: 'setPlacement', placement: { ...place, offset: -2 } }).placements[0]!.offset).toBe(-2);
    expect(made({ kind: 'removePlacement', placement: 'flags' }).placements).toEqual([]);
  });

  it('lay loose cells in one form: in order, joined, without empty ones', () => {
    const now = made({ kind: 'setCells', section: 'leg', row: { line: 'leg-2', nth: 2 }, size: 0, runs: [{ from: 6, letters: 'C.A' }, { from: 4, letters: 'BB' }, { from: 5, letters: 'A' }, { from: 20, letters: '...' }] });
    expect(now.cells.slice(0, 2)).toEqual([
      { section: 'leg', row: { line: 'leg-2', nth: 2 }, size: 0, from: 4, letters: 'BAC' },
      { section: 'leg', row: { line: 'leg-2', nth: 2 }, size: 0, from: 8, letters: 'A' },
    ]);
    expect(now.cells.slice(2)).toEqual(SMALL.cells.slice(1));
    expect(made({ kind: 'setCells', section: 'leg', row: { line: 'leg-2', nth: 8 }, size: 1, runs: [] }).cells).toEqual(SMALL.cells.slice(0, 1));
    expect(made({ kind: 'setCells', section: 'leg', row: { line: 'leg-2', nth: 2 }, size: 0, runs: [{ from: 4, letters: 'BB' }] })).toBe(SMALL);
  });

  it('put loose cells in order that came without', () => {
    const applied = applyEdit({ ...SMALL, cells: [...SMALL.cells].reverse() }, { kind: 'setCells', section: 'leg', row: { line: 'leg-2', nth: 2 }, size: 0, runs: [] });
    expect(applied.ok && applied.pattern.cells).toEqual(SMALL.cells.slice(1));
  });
});

describe('cutting a line', () => {
  const split = (at: number): Edit => ({ kind: 'splitLine', section: 'leg', line: 'leg-2', at, newId: 'new' });

  it('gives each part its rows, the second without number and side, and takes placements and cells along', () => {
    const now = made(split(3));
    expect(now.sections[0]!.lines.slice(2, 4)).toEqual([
      rowLine('leg-2', leg.lines[2]!.text, 3, { start: 2 }),
      rowLine('new', leg.lines[2]!.text, [7, 9]),
    ]);
    expect(now.placements[0]!.row).toEqual({ line: 'new', nth: 0 });
    expect(now.cells.map(({ row, size, from }) => [row.line, row.nth, size, from])).toEqual([
      ['leg-2', 2, 0, 4],
      ['new', 5, 1, 0],
      ['new', 5, 1, 9],
    ]);
  });

  it('leaves a size without rows in the second part where it has no more', () => {
    expect(made(split(11)).sections[0]!.lines.slice(2, 4)).toEqual([rowLine('leg-2', leg.lines[2]!.text, [10, 11], { start: 2 }), rowLine('new', leg.lines[2]!.text, [0, 1])]);
  });

  it('is undone by joining, row keys and all', () => {
    const now = made(split(3));
    expect(made({ kind: 'joinLines', section: 'leg', line: 'leg-2' }, now)).toStrictEqual(SMALL);
  });

  it('keeps a vector of equal numbers a vector, so that joining gives it back', () => {
    made({ kind: 'splitLine', section: 'foot', line: 'f', at: 2, newId: 'g' }, { ...SMALL, sections: [leg, { ...foot, lines: [rowLine('f', 'sc', [5, 5])] }] });
  });

  it('keeps loose cells in the order of their ids when the new id comes first', () => {
    const now = made({ kind: 'splitLine', section: 'leg', line: 'leg-2', at: 1, newId: 'a' });
    expect(now.cells.map(({ row }) => row.line)).toEqual(['a', 'a', 'a']);
  });
});

const other = (id: string) => ({ ...foot, id, lines: [] });

describe('edits are refused, saying why', () => {
  const long = { ...SMALL, sections: [leg, { ...foot, lines: [rowLine('f', 'sc', LIMITS.count), rowLine('g', 'sc', 1)] }] };
  const joined = (first: Parameters<typeof rowLine>, second: Parameters<typeof rowLine>): Pattern => ({ ...SMALL, sections: [leg, { ...foot, lines: [rowLine(...first), rowLine(...second)] }] });
  const join: Edit = { kind: 'joinLines', section: 'foot', line: 'f' };

  it.each<[string, Edit, string, Pattern?]>([
    ['a yarn that a motif is drawn with', { kind: 'set', field: 'yarns', value: [slate, chalk] }, 'Yarn C is in use: motif “Flag” is drawn with it.'],
    ['a yarn that cells are laid with', { kind: 'set', field: 'yarns', value: [slate] }, 'Yarn B is in use: loose cells are laid with it.', { ...SMALL, motifs: [], placements: [] }],
    ['the last yarn', { kind: 'set', field: 'yarns', value: [] }, 'The yarns: found a length of 0, expected a length of at least 1.'],
    ['a letter twice', { kind: 'set', field: 'yarns', value: [slate, chalk, orange, slate] }, 'The yarns: found a list of 4, expected a letter of its own for each yarn.'],
    ['a yarn without a proper colour', { kind: 'set', field: 'yarns', value: [{ ...slate, colour: 'slate' }, chalk, orange] }, 'The yarns, 0 colour: found "slate", expected a colour as #rrggbb.'],
    ['the last size', { kind: 'set', field: 'sizes', value: [] }, 'The sizes: found a length of 0, expected a length of at least 1.'],
    ['a size with loose cells', { kind: 'set', field: 'sizes', value: ['S'] }, 'Size M is in use: loose cells are laid in it.'],
    ['a gauge of nothing', { kind: 'set', field: 'gauge', value: { ...SMALL.gauge, rows: Number.NaN } }, 'The gauge, rows: found NaN, expected a number.'],
    ['a section id that is taken', { kind: 'insertSection', at: 0, section: other('foot') }, 'There is a section "foot" already.'],
    ['a line id that is taken', { kind: 'insertSection', at: 0, section: { ...foot, id: 'new' } }, 'There is a line "foot-1" already.'],
    ['a place outside the list', { kind: 'insertSection', at: 3, section: other('new') }, "A section can't be put in at place 3: there are 2."],
    ['a section with colour', { kind: 'removeSection', section: 'leg' }, 'LEG carries motif “Flag”; take that off first.'],
    ['a section that is not there', { kind: 'removeSection', section: 'cuff' }, 'There is no section "cuff".'],
    ['a setting that is none', { kind: 'setSection', section: 'leg', name: '', remark: '', recipe: { name: 'x', settings: { rows: Number.POSITIVE_INFINITY } } }, 'The recipe of the section, settings rows: found Infinity, expected a finite number.'],
    ['a line that is not there', { kind: 'setLine', section: 'foot', line: rowLine('leg-1', 'sc') }, 'There is no line "leg-1" in FOOT.'],
    ['a step instead of a row with colour', { kind: 'setLine', section: 'leg', line: { kind: 'step', id: 'leg-2', text: 'Turn' } }, '“ch 1, turn, sc in each st acro…” in LEG carries motif “Flag”, so it has to stay a row; take that off first.'],
    ['a row count that is none', { kind: 'setLine', section: 'foot', line: rowLine('foot-1', 'sc', -2) }, 'The line, label rows: found -2, expected a number of at least 0.'],
    ['no lines', { kind: 'insertLines', section: 'foot', at: 0, lines: [] }, 'There are no lines to put in.'],
    ['the same line twice', { kind: 'insertLines', section: 'foot', at: 0, lines: [rowLine('n', 'sc'), rowLine('n', 'sc')] }, 'There is a line "n" already.'],
    ['lines that stand apart', { kind: 'removeLines', section: 'leg', lines: ['leg-0', 'leg-2'] }, 'The lines to take out don\'t stand one after another: "leg-2" is out of place.'],
    ['lines in the wrong order', { kind: 'removeLines', section: 'leg', lines: ['leg-1', 'leg-0'] }, 'The lines to take out don\'t stand one after another: "leg-0" is out of place.'],
    ['a line with loose cells', { kind: 'removeLines', section: 'leg', lines: ['leg-2'] }, "“ch 1, turn, sc in each st acro…” in LEG can't be taken out: loose cells would lose its row.", { ...SMALL, placements: [] }],
    ['a cut at the end', { kind: 'splitLine', section: 'leg', line: 'leg-2', at: 12, newId: 'n' }, "“ch 1, turn, sc in each st acro…” in LEG has 12 rows and can't be cut before row 13 of them."],
    ['a cut at the start', { kind: 'splitLine', section: 'leg', line: 'leg-2', at: 0, newId: 'n' }, "“ch 1, turn, sc in each st acro…” in LEG has 12 rows and can't be cut before row 1 of them."],
    ['a cut of a step', { kind: 'splitLine', section: 'leg', line: 'leg-3', at: 1, newId: 'n' }, '“Seam the side edges.” in LEG is no row.'],
    ['a cut under an id that is taken', { kind: 'splitLine', section: 'leg', line: 'leg-2', at: 1, newId: 'foot-1' }, 'There is a line "foot-1" already.'],
    ['a join with nothing', { kind: 'joinLines', section: 'leg', line: 'leg-2' }, "“ch 1, turn, sc in each st acro…” in LEG and the line after it don't read the same, so they can't be joined."],
    ['a join beyond the last line', { kind: 'joinLines', section: 'foot', line: 'f' }, '“sc” in FOOT is the last line, so there is none to join it with.', { ...SMALL, sections: [leg, { ...foot, lines: [rowLine('f', 'sc')] }] }],
    ['a join with a line that says its number', join, "“sc” in FOOT and the line after it don't read the same, so they can't be joined.", joined(['f', 'sc'], ['g', 'sc', 1, { start: 4 }])],
    ['a join of rows that differ by size in both', join, "“sc” in FOOT and the line after it have no rows, or rows that differ by size in a way that can't be kept when they are joined.", joined(['f', 'sc', [2, 3]], ['g', 'sc', [1, 1]])],
    // Found by the property test (seed 20240511): the inverse could not have been made.
    ['a join with a line without rows', join, "“sc” in FOOT and the line after it have no rows, or rows that differ by size in a way that can't be kept when they are joined.", joined(['f', 'sc', [1, 1]], ['g', 'sc', [0, 0]])],
    ['a join where colour waits beyond the rows', join, '“sc” in FOOT has 2 rows, but colour waits on its row 6; take that off first.', { ...joined(['f', 'sc', 2], ['g', 'sc', 2]), placements: [{ ...place, section: 'foot', row: { line: 'f', nth: 5 } }], cells: [] }],
    ['a join to too many rows', join, `“sc” in FOOT would stand for more than ${LIMITS.count} rows.`, { ...long, placements: [] }],
    ['a motif with a yarn that is not there', { kind: 'insertMotif', at: 0, motif: { id: 'n', name: '', cells: ['Z'] } }, 'The motif is drawn with yarn Z, but the pattern has no such yarn.'],
    ['a motif of ragged rows', { kind: 'setMotif', motif: { id: 'flag', name: '', cells: ['A', 'AB'] } }, 'The motif, cells: found a list of 2, expected rows of one length.'],
    ['a motif that is placed', { kind: 'removeMotif', motif: 'flag' }, 'Motif “Flag” is placed once; take that off first.'],
    ['a motif id that is taken', { kind: 'insertMotif', at: 0, motif: { id: 'spot', name: '', cells: ['A'] } }, 'There is a motif "spot" already.'],
    ['a placement of no motif', { kind: 'setPlacement', placement: { ...place, motif: 'gone' } }, 'There is no motif "gone" to place.'],
    ['a placement on a step', { kind: 'setPlacement', placement: { ...place, row: { line: 'leg-3', nth: 0 } } }, 'There is no row "leg-3" in LEG to place a motif on.'],
    ['a placement half a stitch off', { kind: 'setPlacement', placement: { ...place, offset: 0.5 } }, 'The placement, offset: found 0.5, expected a whole number.'],
    ['a placement id that is taken', { kind: 'insertPlacement', at: 0, placement: place }, 'There is a placement "flags" already.'],
    ['cells on a note', { kind: 'setCells', section: 'foot', row: { line: 'foot-2', nth: 0 }, size: 0, runs: [] }, 'There is no row "foot-2" in FOOT to lay cells on.'],
    ['cells in a size that is not there', { kind: 'setCells', section: 'foot', row: { line: 'foot-1', nth: 0 }, size: 2, runs: [] }, 'There is no size 3: the pattern has 2.'],
    ['cells of an unknown yarn', { kind: 'setCells', section: 'foot', row: { line: 'foot-1', nth: 0 }, size: 0, runs: [{ from: 0, letters: 'AQ' }] }, 'The cells are of yarn Q, but the pattern has no such yarn.'],
    ['cells before the first column', { kind: 'setCells', section: 'foot', row: { line: 'foot-1', nth: 0 }, size: 0, runs: [{ from: -1, letters: 'A' }] }, 'The cells, 0 from: found -1, expected a number of at least 0.'],
  ])('%s', (_, edit, reason, pattern = SMALL) => {
    expect(applyEdit(pattern, edit)).toEqual({ ok: false, reason });
  });
});
