import { describe, expect, it } from 'vitest';
import { patternFault } from '../../../src/engine/1-pattern/file.ts';
import type { Pattern } from '../../../src/engine/1-pattern/pattern.ts';
import { patternInVersion } from '../../../src/engine/1-pattern/patternInVersion.ts';
import { construct } from '../../../src/engine/2-construct/construct.ts';
import { work } from '../../../src/engine/3-fabric/work.ts';
import { colour } from '../../../src/engine/4-colour/colour.ts';
import { picture } from '../4-colour/picture.ts';
import { patternFromText } from '../../../src/engine/1-pattern/patternFromText.ts';

const TEXT = `Quay
Yarn A: slate #4b5a6b
Yarn B: chalk #f2efe6
Yarn C: lamp orange #e07b39

LEG
Foundation: with A, ch 7.
Row 1 (RS): sc in 2nd ch from hook and in each ch across. (6 sc)
Rows 2-4: with B, ch 1, turn, sc in each st across. (6 sc)

FOOT
Rows 1-2: ch 1, turn, sc in each st across. (6 sc)
`;

const READ = patternFromText(TEXT).pattern!;
const [LEG, FOOT] = READ.sections as [Pattern['sections'][0], Pattern['sections'][0]];
const placement = { section: LEG.id, motif: 'm', row: { line: LEG.lines[2]!.id, nth: 0 }, align: 'left', offset: 1, across: 1, up: 1, gap: 0, mirror: false } as const;
const PATTERN: Pattern = {
  ...READ,
  motifs: [{ id: 'm', name: 'Bird', cells: ['C.C', '.CC'] }, { id: 'n', name: 'Dot', cells: ['C'] }],
  placements: [{ ...placement, id: 'bird' }, { ...placement, id: 'dot', motif: 'n', hidden: true }],
  cells: [{ section: LEG.id, row: { line: LEG.lines[2]!.id, nth: 2 }, size: 0, from: 0, letters: 'C' }, { section: FOOT.id, row: { line: FOOT.lines[0]!.id, nth: 0 }, size: 0, from: 5, letters: 'C' }],
  versions: [
    { id: 'plain', name: 'Plain', sections: [{ section: LEG.id, placements: [], cells: false, ground: { kind: 'stripes', stripes: [{ letter: 'A', rows: 1 }] } }] },
    { id: 'stripes', name: 'Stripes', sections: [{ section: LEG.id, placements: ['dot'], cells: false, technique: 'stripes', ground: { kind: 'stripes', stripes: [{ letter: 'A', rows: 2 }, { letter: 'C', rows: 1 }] } }] },
    { id: 'swapped', name: 'Swapped', sections: [{ section: LEG.id, ground: { kind: 'replace', yarns: [{ from: 'A', to: 'B' }, { from: 'B', to: 'A' }] } }] },
    { id: 'same', name: 'Same', sections: [] },
  ],
};

const shown = (pattern: Pattern) => {
  const fabric = work(construct(pattern, 0));
  return picture(pattern, fabric, colour(pattern, fabric, 0)).filter((row) => row !== '');
};

describe('a version of a pattern', () => {
  it('is the pattern as it stands, if nothing differs', () => {
    expect(shown(PATTERN)).toEqual(['BBBBBB', 'BBBBBC', 'CBBBBB', 'BCBCBB', 'BBCCBB', 'AAAAAA']);
    const { versions: _, ...rest } = PATTERN;
    expect(patternInVersion(PATTERN, 'same')).toStrictEqual(rest);
  });

  it.each([
    ['plain', ['BBBBBB', 'BBBBBC', 'AAAAAA', 'AAAAAA', 'AAAAAA', 'AAAAAA']],
    ['stripes', ['BBBBBB', 'BBBBBC', 'AAAAAA', 'CCCCCC', 'ACAAAA', 'AAAAAA']],
    ['swapped', ['BBBBBB', 'BBBBBC', 'CAAAAA', 'ACACAA', 'AACCAA', 'BBBBBB']],
  ])('%s: has its own leg and shares the foot', (version, rows) => {
    const pattern = patternInVersion(PATTERN, version);
    expect(shown(pattern)).toEqual(rows);
    expect(patternFault(pattern)).toBeNull();
    expect(pattern.sections[1]).toBe(PATTERN.sections[1]);
  });

  it('needs no other fabric', () => {
    const fabric = work(construct(PATTERN, 0));
    expect(work(construct(patternInVersion(PATTERN, 'stripes'), 0), fabric).rows.every((row, r) => row === fabric.rows[r])).toBe(true);
  });

  it('keeps what is not laid, hidden', () => {
    expect(patternInVersion(PATTERN, 'stripes').placements.map(({ id, hidden }) => [id, hidden])).toEqual([['bird', true], ['dot', undefined]]);
  });

  it('has to be there', () => {
    expect(() => patternInVersion(PATTERN, 'rich')).toThrow('version "rich" asked of a pattern of 4 versions');
  });
});
