import { describe, expect, it } from 'vitest';
import { applyEdit } from '../../../src/engine/1-pattern/applyEdit.ts';
import { applyTransaction } from '../../../src/engine/1-pattern/applyTransaction.ts';
import type { Edit } from '../../../src/engine/1-pattern/edit.ts';
import { patternFault } from '../../../src/engine/1-pattern/file.ts';
import type { Pattern, Version } from '../../../src/engine/1-pattern/pattern.ts';
import { removal } from '../../../src/engine/1-pattern/removal.ts';
import { resize } from '../../../src/engine/1-pattern/resize.ts';
import { SMALL } from './smallPattern.ts';

const place = SMALL.placements[0]!;
const plain: Version = { id: 'plain', name: 'Plain', sections: [{ section: 'leg', placements: [], cells: false, ground: { kind: 'stripes', stripes: [{ letter: 'A', rows: 1 }] } }] };
const rich: Version = { id: 'rich', name: 'Rich', sections: [{ section: 'leg', placements: ['flags'] }, { section: 'foot', technique: 'stripes', ground: { kind: 'replace', yarns: [{ from: 'A', to: 'C' }] } }] };
const WITH_VERSIONS: Pattern = { ...SMALL, versions: [plain, rich] };
const LOCKED: Pattern = { ...SMALL, placements: [{ ...place, locked: true }] };
const LAYERS: Pattern = { ...SMALL, placements: ['a', 'b', 'c'].map((id) => ({ ...place, id })) };

function made(edit: Edit, pattern: Pattern): Pattern {
  const applied = applyEdit(pattern, edit);
  if (!applied.ok) throw new Error(applied.reason);
  const back = applyEdit(applied.pattern, applied.inverse);
  expect(back.ok && back.pattern).toStrictEqual(pattern);
  expect(patternFault(applied.pattern)).toBeNull();
  return applied.pattern;
}

describe('edits of colour', () => {
  it('say how a section is coloured, and say nothing again', () => {
    const colour = { technique: 'stranded', ground: { kind: 'stripes', stripes: [{ letter: 'B', rows: 2 }, { letter: 'A', rows: 1 }] } } as const;
    const now = made({ kind: 'setSectionColour', section: 'leg', colour }, SMALL);
    expect(now.sections[0]!.colour).toEqual(colour);
    expect(made({ kind: 'setSection', section: 'leg', name: 'CUFF', remark: '', recipe: null }, now).sections[0]!.colour).toEqual(colour);
    expect(made({ kind: 'setSectionColour', section: 'leg', colour: null }, now)).toStrictEqual(SMALL);
  });

  it('keep versions and limits, and leave no empty list behind', () => {
    expect(made({ kind: 'insertVersion', at: 0, version: plain }, SMALL).versions).toEqual([plain]);
    expect(made({ kind: 'setVersion', version: { ...plain, name: 'Easier' } }, WITH_VERSIONS).versions![0]!.name).toBe('Easier');
    expect(made({ kind: 'removeVersion', version: 'plain' }, { ...SMALL, versions: [plain] })).toStrictEqual(SMALL);
    expect(made({ kind: 'setColourLimits', limits: { longestCarry: null, mostYarns: 2 } }, SMALL).colourLimits).toEqual({ longestCarry: null, mostYarns: 2 });
  });

  it('move layers up and down', () => {
    const order = (to: number) => made({ kind: 'movePlacement', placement: 'b', to }, LAYERS).placements.map(({ id }) => id).join('');
    expect([order(0), order(1), order(2)]).toEqual(['bac', 'abc', 'acb']);
    expect(made({ kind: 'movePlacement', placement: 'b', to: 1 }, LAYERS)).toBe(LAYERS);
  });

  it('lock a placement, and unlock it', () => {
    expect(made({ kind: 'setPlacement', placement: { ...place, locked: true } }, SMALL)).toStrictEqual(LOCKED);
    expect(made({ kind: 'setPlacement', placement: place }, LOCKED)).toStrictEqual(SMALL);
    // Cutting its line leaves it on its row.
    expect(made({ kind: 'splitLine', section: 'leg', line: 'leg-2', at: 1, newId: 'n' }, LOCKED).placements[0]).toMatchObject({ row: { line: 'n', nth: 2 }, locked: true });
  });

  it.each<[string, Edit, string, Pattern]>([
    ['moving what is locked', { kind: 'setPlacement', placement: { ...place, locked: true, offset: 2 } }, '“Flag” is locked where it lies; unlock it first.', LOCKED],
    ['unlocking and moving at once', { kind: 'setPlacement', placement: { ...place, offset: 2 } }, '“Flag” is locked where it lies; unlock it first.', LOCKED],
    ['moving and locking at once', { kind: 'setPlacement', placement: { ...place, locked: true, offset: 2 } }, '“Flag” can\'t be changed and locked in one step; lock it when it is changed.', SMALL],
    ['taking off what is locked', { kind: 'removePlacement', placement: 'flags' }, '“Flag” is locked where it lies; unlock it first.', LOCKED],
    ['another layer for what is locked', { kind: 'movePlacement', placement: 'flags', to: 0 }, '“Flag” is locked where it lies; unlock it first.', LOCKED],
    ['putting in what is locked', { kind: 'insertPlacement', at: 0, placement: { ...place, id: 'n', locked: true } }, 'A placement is put in unlocked; lock it when it lies right.', SMALL],
    ['a layer outside the layers', { kind: 'movePlacement', placement: 'b', to: 3 }, "A placement can't be moved to place 3: there are 3.", LAYERS],
    ['a ground of a yarn that is not there', { kind: 'setSectionColour', section: 'leg', colour: { ground: { kind: 'stripes', stripes: [{ letter: 'Q', rows: 1 }] } } }, 'The ground is of yarn Q, but the pattern has no such yarn.', SMALL],
    ['a stripe of no rows', { kind: 'setSectionColour', section: 'leg', colour: { ground: { kind: 'stripes', stripes: [{ letter: 'A', rows: 0 }] } } }, 'The colours of the section, ground stripes 0 rows: found 0, expected a number of at least 1.', SMALL],
    ['a yarn replaced twice', { kind: 'setSectionColour', section: 'leg', colour: { ground: { kind: 'replace', yarns: [{ from: 'A', to: 'B' }, { from: 'A', to: 'C' }] } } }, 'The colours of the section, ground yarns: found a list of 2, expected each yarn to be replaced once.', SMALL],
    ['a technique that is none', { kind: 'setSectionColour', section: 'leg', colour: { technique: 'lace' } } as unknown as Edit, 'The colours of the section, technique: found "lace", expected "carried" or "stranded" or "intarsia" or "stripes".', SMALL],
    ['a version of a section that is not there', { kind: 'insertVersion', at: 0, version: { ...plain, sections: [{ section: 'cuff' }] } }, 'There is no section "cuff" for version “Plain”.', SMALL],
    ['a version of a placement that is not there', { kind: 'insertVersion', at: 0, version: { ...plain, sections: [{ section: 'foot', placements: ['flags'] }] } }, 'There is no placement "flags" in that section for version “Plain” to lay.', SMALL],
    ['a version with a section twice', { kind: 'insertVersion', at: 0, version: { ...plain, sections: [{ section: 'leg' }, { section: 'leg' }] } }, 'The version, sections: found a list of 2, expected each section once.', SMALL],
    ['a version id that is taken', { kind: 'insertVersion', at: 0, version: plain }, 'There is a version "plain" already.', WITH_VERSIONS],
    ['a version that is not there', { kind: 'removeVersion', version: 'plain' }, 'There is no version "plain".', SMALL],
    ['a placement that a version lays', { kind: 'removePlacement', placement: 'flags' }, 'Version “Rich” lays “Flag”; take it out there first.', WITH_VERSIONS],
    ['a section that a version speaks of', { kind: 'removeSection', section: 'foot' }, 'Version “Rich” says how FOOT is coloured; take that out first.', WITH_VERSIONS],
    ['a yarn that a version has', { kind: 'set', field: 'yarns', value: SMALL.yarns.slice(0, 2) }, 'Yarn C is in use: version “Rich” has a ground of it.', { ...WITH_VERSIONS, motifs: [SMALL.motifs[1]!], placements: [], versions: [{ ...rich, sections: [rich.sections[1]!] }] }],
    ['a contrast that can not be', { kind: 'setColourLimits', limits: { leastContrast: 0.5 } }, 'The limits of colour, leastContrast: found 0.5, expected a number of at least 1.', SMALL],
    ['stitches of another size than the cells', { kind: 'setMotif', motif: { ...SMALL.motifs[0]!, stitches: ['b..'] } }, 'The motif: found an object, expected as many stitches as cells.', SMALL],
    ['a stitch that is none', { kind: 'setMotif', motif: { ...SMALL.motifs[1]!, stitches: ['z'] } }, 'The motif, stitches 0: found "z", expected letters of stitches (bunokfrp) and ".".', SMALL],
  ])('refuse %s', (_, edit, reason, pattern) => {
    expect(applyEdit(pattern, edit)).toEqual({ ok: false, reason });
  });

  it('are refused together where what differs by size does not fit the sizes', () => {
    const edit: Edit = { kind: 'setPlacement', placement: { ...place, bySize: [null] } };
    expect(applyTransaction(SMALL, { label: '', at: 0, edits: [edit] })).toEqual({ ok: false, reason: 'A placement: what differs by size has 1 numbers, expected one number for each of the 2 sizes.', edit: 0 });
    expect(applyTransaction(SMALL, { label: '', at: 0, edits: [{ ...edit, placement: { ...place, bySize: [null, { up: 2 }] } }] }).ok).toBe(true);
  });
});

describe('taking things out', () => {
  const after = (pattern: Pattern, edits: readonly Edit[]): Pattern => {
    const applied = applyTransaction(pattern, { label: '', at: 0, edits });
    if (!applied.ok) throw new Error(applied.reason);
    expect(patternFault(applied.pattern)).toBeNull();
    const back = applyTransaction(applied.pattern, applied.inverse);
    expect(back.ok && back.pattern).toStrictEqual(pattern);
    return applied.pattern;
  };

  it('takes a placement, a motif and a section out of the versions too', () => {
    expect(after(WITH_VERSIONS, removal(WITH_VERSIONS, { kind: 'placement', placement: 'flags' })).versions![1]!.sections[0]!.placements).toEqual([]);
    expect(after(WITH_VERSIONS, removal(WITH_VERSIONS, { kind: 'motif', motif: 'flag' })).versions![1]!.sections[0]!.placements).toEqual([]);
    const now = after(WITH_VERSIONS, removal(WITH_VERSIONS, { kind: 'section', section: 'leg' }));
    expect(now.versions!.map((version) => version.sections.map(({ section }) => section))).toEqual([[], ['foot']]);
  });

  it('puts another yarn in the place of one that goes, in grounds and versions', () => {
    const pattern: Pattern = { ...WITH_VERSIONS, sections: SMALL.sections.map((section) => ({ ...section, colour: { ground: { kind: 'stripes', stripes: [{ letter: 'C', rows: 3 }] } } })) };
    const now = after(pattern, removal(pattern, { kind: 'yarn', letter: 'C', to: 'A' }));
    expect(now.sections[0]!.colour).toEqual({ ground: { kind: 'stripes', stripes: [{ letter: 'A', rows: 3 }] } });
    // A in place of A says nothing, so the rows say all.
    expect(now.versions![1]!.sections[1]).toEqual({ section: 'foot', technique: 'stripes', ground: { kind: 'rows' } });
  });

  it('leaves what is locked where it is, and says so', () => {
    expect(applyTransaction(LOCKED, { label: '', at: 0, edits: removal(LOCKED, { kind: 'motif', motif: 'flag' }) })).toMatchObject({ ok: false, reason: '“Flag” is locked where it lies; unlock it first.' });
  });

  it('gives other sizes to what placements do by size, locked ones too', () => {
    const pattern: Pattern = { ...SMALL, placements: [{ ...place, bySize: [{ up: 1 }, { up: 2 }], locked: true }] };
    const now = after(pattern, resize(pattern, [{ name: 'M', from: 1 }, { name: 'L', from: 1 }, { name: 'S', from: 0 }]));
    expect(now.placements[0]).toMatchObject({ bySize: [{ up: 2 }, { up: 2 }, { up: 1 }], locked: true });
    expect(after(pattern, resize(pattern, [{ name: 'M', from: 1 }])).placements[0]!.bySize).toEqual([{ up: 2 }]);
  });
});
