import { describe, expect, it } from 'vitest';
import { NO_HISTORY } from '../../../src/engine/1-pattern/history.ts';
import { carryOf } from '../../../src/engine/4-colour/carry.ts';
import type { Pattern } from '../../../src/engine/1-pattern/pattern.ts';
import { addVersion, removeVersion, renameVersion, setSectionVersion } from '../../../src/editor/bench/commands/changeVersion.ts';
import { setColourLimits } from '../../../src/editor/bench/commands/setColourLimits.ts';
import { setSectionColour } from '../../../src/editor/bench/commands/setSectionColour.ts';
import { removePlacement } from '../../../src/editor/bench/commands/removePlacement.ts';
import { Session } from '../../../src/editor/bench/session.svelte.ts';
import { carryWords, cmOf, sectionCarryWords, travelWords } from '../../../src/editor/yarns/carryWords.ts';
import { readStripes, stripesText } from '../../../src/editor/yarns/groundWords.ts';
import { after, benchOf, LEG } from '../bench/benchOf.ts';

const LAID: Pattern = {
  ...LEG,
  motifs: [{ id: 'dots', name: 'Dots', cells: ['B....'] }],
  placements: [{ id: 'p1', section: 'leg', motif: 'dots', row: { line: 'plain', nth: 1 }, align: 'left', offset: 0, across: 'fill', up: 1, gap: 0, mirror: false }],
};
const carryOfLaid = () => {
  const { pattern, grids, colours } = benchOf(LAID);
  return carryOf(pattern, grids[0]!, colours).sections[0]!;
};

describe('what the yarns do, in words', () => {
  it('of a section', () => {
    expect(sectionCarryWords(carryOfLaid(), LAID.yarns, 6.25)).toMatch(/^Yarns A and B, at most 2 in a row; \d+ changes; \d+ ends to weave in\. The longest carry is B over 4 stitches, 2\.5 cm\.$/);
  });

  it('of a section in one yarn', () => {
    const { pattern, grids, colours } = benchOf(LEG);
    expect(sectionCarryWords(carryOf(pattern, grids[0]!, colours).sections[0]!, LEG.yarns, 6.25)).toBe('Yarn A, at most 1 in a row; 0 changes; 2 ends to weave in. Nothing is carried.');
  });

  it('of a row', () => {
    expect(carryWords({ yarn: 1, stitches: 7, kind: 'inRow' }, LEG.yarns, 5.5556)).toBe('B over 7, 3.9 cm');
    expect(carryWords({ yarn: 0, stitches: 2, kind: 'overEnd' }, LEG.yarns, 5)).toBe('A over 2, 1.0 cm, over the end of the round');
    expect(carryWords(null, LEG.yarns, 5)).toBe('');
    expect(cmOf(1, 6.25)).toBe('0.6');
  });

  it('of yarns that come from elsewhere', () => {
    const travels = [{ yarn: 1, stitches: 0, rows: 3, isAgainst: false, isCut: false }, { yarn: 0, stitches: 12, rows: 1, isAgainst: false, isCut: true }, { yarn: 0, stitches: 1, rows: 0, isAgainst: true, isCut: false }];
    expect(travelWords({ travels }, LEG.yarns)).toBe('B up 3 rows; A up 1 row and over 12 stitches, cut and joined anew; A over 1 stitch, against the row');
  });
});

describe('what is said of a section’s colours', () => {
  it('is one step, taken back when nothing is said', () => {
    const told = after(LEG, setSectionColour('leg', { technique: 'stranded' })(benchOf(LEG)));
    expect(told.sections[0]!.colour).toEqual({ technique: 'stranded' });
    expect(setSectionColour('leg', { technique: 'stranded' })(benchOf(told))).toBeNull();
    expect(after(told, setSectionColour('leg', { technique: undefined })(benchOf(told))).sections[0]!.colour).toBeUndefined();
    expect(setSectionColour('gone', {})(benchOf(LEG))).toBeNull();
  });

  it('holds limits for the checks', () => {
    const told = after(LEG, setColourLimits({ longestCarry: 3 })(benchOf(LEG)));
    expect(told.colourLimits).toEqual({ longestCarry: 3 });
    expect(after(told, setColourLimits({ longestCarry: undefined })(benchOf(told))).colourLimits).toBeUndefined();
    expect(setColourLimits({})(benchOf(LEG))).toBeNull();
  });
});

describe('stripes as they are typed', () => {
  it.each([
    ['A 2, B 1', [{ letter: 'A', rows: 2 }, { letter: 'B', rows: 1 }]],
    ['b', [{ letter: 'B', rows: 1 }]],
    ['A2;B3', [{ letter: 'A', rows: 2 }, { letter: 'B', rows: 3 }]],
  ])('reads %j', (text, stripes) => {
    expect(readStripes(text, ['A', 'B'])).toEqual({ kind: 'stripes', stripes });
  });

  it.each(['', 'C 2', 'A 2, B', 'A 0', 'two A'])('reads %j as none', (text) => {
    expect(readStripes(text, ['A', 'B'])).toBeNull();
  });

  it('writes what it reads', () => {
    for (const text of ['A', 'A 2, B 1']) expect(stripesText(readStripes(text, ['A', 'B'])!)).toBe(text);
    expect(stripesText(undefined)).toBe('');
  });
});

describe('versions', () => {
  it('are put in, named, changed in a section and taken out, one step each', () => {
    const made = after(LAID, addVersion('easier')(benchOf(LAID)));
    const id = made.versions![0]!.id;
    const named = after(made, renameVersion(id, 'plain')(benchOf(made)));
    expect(named.versions![0]!.name).toBe('plain');
    expect(renameVersion(id, '')(benchOf(made))).toBeNull();
    const told = after(named, setSectionVersion(id, 'leg', { placements: [] })(benchOf(named)));
    expect(told.versions![0]!.sections).toEqual([{ section: 'leg', placements: [] }]);
    expect(after(told, setSectionVersion(id, 'leg', null)(benchOf(told))).versions![0]!.sections).toEqual([]);
    expect(after(told, removeVersion(id)(benchOf(told))).versions ?? []).toEqual([]);
    const two = after(told, addVersion('other')(benchOf(told)));
    expect(new Set(two.versions!.map((each) => each.id)).size).toBe(2);
  });

  it('let a motif go that they lay', () => {
    const made = after(LAID, addVersion('other', [{ section: 'leg', placements: ['p1'] }])(benchOf(LAID)));
    const gone = after(made, removePlacement('p1')(benchOf(made)));
    expect(gone.placements).toEqual([]);
    expect(gone.versions![0]!.sections[0]!.placements).toEqual([]);
  });

  it('show on the chart what they lay, and the pattern stays', () => {
    const plain = after(LAID, addVersion('plain', [{ section: 'leg', placements: [], ground: { kind: 'stripes', stripes: [{ letter: 'B', rows: 1 }] } }])(benchOf(LAID)));
    const session = new Session({ pattern: plain, history: NO_HISTORY, keep: () => undefined, now: () => 1 });
    expect(new Set(session.colours.yarn)).toEqual(new Set([0, 1]));
    const { fabric } = session;
    session.version = plain.versions![0]!.id;
    expect(new Set(session.colours.yarn)).toEqual(new Set([1]));
    expect(session.colours.fits).toEqual([]);
    expect(session.fabric.count).toBe(fabric.count);
    session.version = null;
    expect(session.colours.fits).toHaveLength(1);
  });

  it('are looked at in other colours without changing them', () => {
    const session = new Session({ pattern: LAID, history: NO_HISTORY, keep: () => undefined, now: () => 1 });
    expect(session.yarnsSeen).toBe(LAID.yarns);
    session.seen = 'blackAndWhite';
    for (const { colour } of session.yarnsSeen) expect(colour.slice(1, 3)).toBe(colour.slice(3, 5));
    expect(session.pattern.yarns).toBe(LAID.yarns);
  });
});
