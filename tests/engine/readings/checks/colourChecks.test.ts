import { describe, expect, it } from 'vitest';
import { patternFromText } from '../../../../src/engine/1-pattern/patternFromText.ts';
import type { Pattern, Placement, SectionColour, Yarn } from '../../../../src/engine/1-pattern/pattern.ts';
import { construct } from '../../../../src/engine/2-construct/construct.ts';
import { work } from '../../../../src/engine/3-fabric/work.ts';
import { colour } from '../../../../src/engine/4-colour/colour.ts';
import type { Finding } from '../../../../src/engine/notation/finding.ts';
import { check } from '../../../../src/engine/readings/checks/check.ts';
import { describeFinding } from '../../../../src/engine/readings/checks/prose.ts';
import { handPlacement } from '../../4-colour/handFabric.ts';

const HEADER = `Quay
Gauge: 20 sts and 20 rows = 10 cm in sc
Yarn A: slate #4b5a6b
Yarn B: chalk #f2efe6
Yarn C: lamp orange #e07b39
`;
const FLAT = `${HEADER}
LEG
Foundation: with A, ch 13.
Row 1 (RS): sc in 2nd ch from hook and in each ch across. (12 sc)
Rows 2-8: ch 1, turn, sc in each st across. (12 sc)
`;
const ROUND = `${HEADER}
LEG
Foundation: with A, ch 12, join to form a ring.
Rnds 1-8: sc in each ch around. (12 sc)
`.replace('Rnds 1-8: sc in each ch around. (12 sc)', 'Rnd 1: sc in each ch around. (12 sc)\nRnds 2-8: sc in each st around. (12 sc)');

interface Wanted {
  readonly text?: string;
  readonly cells?: readonly string[];
  readonly stitches?: readonly string[];
  readonly place?: Partial<Placement>;
  readonly colour?: SectionColour;
  readonly limits?: NonNullable<Pattern['colourLimits']>;
  readonly yarns?: readonly Partial<Yarn>[];
}

/** What is found of colour in a leg of 12 stitches and 8 rows with a motif on it. */
function found({ text = FLAT, cells, stitches, place, colour: how, limits, yarns = [] }: Wanted): readonly Finding[] {
  const read = patternFromText(text).pattern!;
  const [section] = read.sections;
  const line = section!.lines.find((one) => one.kind === 'row' && one.label.word !== 'foundation')!;
  const pattern: Pattern = {
    ...read,
    yarns: read.yarns.map((yarn, i) => ({ ...yarn, ...yarns[i] })),
    sections: [{ ...section!, ...(how ? { colour: how } : {}) }],
    motifs: cells ? [{ id: 'm', name: 'Bird', cells, ...(stitches ? { stitches } : {}) }] : [],
    placements: cells ? [handPlacement({ section: section!.id, row: { line: line.id, nth: 0 }, ...place })] : [],
    ...(limits ? { colourLimits: limits } : {}),
  };
  const fabric = work(construct(pattern, 0));
  expect(fabric.findings).toEqual([]);
  return check(pattern, fabric, colour(pattern, fabric, 0)).filter((one) => one.rule !== 'neverUsed');
}

const says = (wanted: Wanted) => found(wanted).map((one) => `${one.degree}: ${describeFinding(one)}`);

describe('checks of colour', () => {
  it('have nothing to say of a leg in one yarn', () => {
    expect(says({})).toEqual([]);
  });

  it.each<[string, Wanted, readonly string[]]>([
    [
      // 2.5 cm at 20 stitches in 10 cm: 5 stitches. Source: published lessons in stranded work, see craft/colourTechniques.ts.
      'a float over more than 2.5 cm, at the row where it is longest',
      { cells: ['BB......BB', 'BB.....BBB', '..........'], place: { offset: 1 }, colour: { technique: 'stranded' } },
      ['doubtful: B is carried over 6 stitches (3 cm), 5 are the most for a float that is not caught.'],
    ],
    ['the same carried inside, where nothing can catch', { cells: ['BB......BB', 'BB.....BBB', '..........'], place: { offset: 1 }, colour: { technique: 'carried' } }, []],
    [
      'a carry beyond what the pattern says, in several rows',
      { cells: ['BB....BB', 'BB.....B'], limits: { longestCarry: 3 } },
      ['doubtful: B is carried over 5 stitches (2.5 cm), 3 are the most; in 2 rows it is too long.'],
    ],
    ['more yarns than stranding takes (common practice: two)', { cells: ['BC', 'BC'], colour: { technique: 'stranded' } }, ['doubtful: 3 yarns in one row (A, C, B); stranded takes 2 at most; in 2 rows there are more.']],
    ['more yarns than the pattern says', { cells: ['BB', 'BB'], limits: { mostYarns: 1 } }, ['doubtful: 2 yarns in one row (A, B); carried inside takes 1 at most; in 2 rows there are more.']],
    ['lone stitches', { cells: ['B...B', '.BB..'], place: { offset: 2 } }, ['note: 1 stitch stands alone, with none of its yarn around; it is easily lost and costs two changes each.']],
    ['changes in what is to be stripes', { cells: ['BB', 'BB'], colour: { technique: 'stripes' } }, ['doubtful: This is to be worked in stripes, but 2 rows change yarn inside.']],
    [
      'one-row stripes worked flat, whose yarn hangs at the other end',
      { colour: { ground: { kind: 'stripes', stripes: [{ letter: 'A', rows: 1 }, { letter: 'B', rows: 1 }] } } },
      ['note: A hangs at the other end of the row when it is needed, 3 times, and has to be joined anew; stripes of an even number of rows avoid that.', 'note: B hangs at the other end of the row when it is needed, 3 times, and has to be joined anew; stripes of an even number of rows avoid that.'],
    ],
    ['two-row stripes worked flat', { colour: { ground: { kind: 'stripes', stripes: [{ letter: 'A', rows: 2 }, { letter: 'B', rows: 2 }] } } }, []],
    [
      'the step of stripes in a spiral',
      { text: ROUND, colour: { ground: { kind: 'stripes', stripes: [{ letter: 'A', rows: 4 }, { letter: 'B', rows: 4 }] } } },
      ['note: In 1 round the yarn changes where the round begins, and in a spiral that shows as a step.'],
    ],
    [
      'intarsia in rounds',
      { text: ROUND, cells: ['BBBB', 'BBBB'], place: { offset: 4 }, colour: { technique: 'intarsia' } },
      ['doubtful: Intarsia in rounds leaves each yarn at the far end of its area: in 1 round yarns have to travel back, up to 4 stitches. Work flat, or carry the yarns.'],
    ],
    ['a motif cut at the seam by repeats on to the edges', { text: ROUND, cells: ['BBB..', 'BBB..'], place: { across: 'fill', fill: 'edges' } }, ['doubtful: Bird is cut at the seam: 2 repeats leave 2 stitches; whole repeats fill 10 or 15.', 'note: In 1 round the yarn changes where the round begins, and in a spiral that shows as a step.']],
    [
      'bobbles on right side rows, which a row up or down puts right',
      { cells: ['..', '..'], stitches: ['..', 'b.'] },
      ['doubtful: 1 raised stitch of Bird (bobble) lies on right side rows, where it stands out on the wrong side; a row higher or lower puts them right.'],
    ],
    ['bobbles on wrong side rows', { cells: ['..', '..'], stitches: ['b.', '..'] }, []],
    ['popcorns, which are closed to either side', { cells: ['..', '..'], stitches: ['..', 'o.'] }, []],
    ['bobbles in rounds', { text: ROUND, cells: ['.'], stitches: ['b'], place: { across: 3, gap: 3 } }, ['doubtful: 3 raised stitches of Bird (bobble) lie on right side rounds, where they stand out on the wrong side: push them through, or set popcorns.']],
    ['two yarns alike', { cells: ['BB', 'BB'], yarns: [{}, { colour: '#55616f' }] }, ['doubtful: A slate and B chalk are hard to tell apart: they differ by 3 (CIEDE2000), 15 or more is wanted.', 'note: A slate and B chalk are nearly the same in black and white: a contrast of 1.1 to 1, 1.5 to 1 or more is wanted.']],
    [
      'two yarns alike for some eyes only',
      { cells: ['BB', 'BB'], yarns: [{ colour: '#7a6a20' }, { colour: '#c03020' }], limits: { leastContrast: 1 } },
      [
        'note: A slate and B chalk are hard to tell apart for eyes that lack red (protan): they differ by 9.1 then (CIEDE2000), 15 or more is wanted.',
        'note: A slate and B chalk are hard to tell apart for eyes that lack green (deutan): they differ by 3.1 then (CIEDE2000), 15 or more is wanted.',
      ],
    ],
    ['two print marks alike', { cells: ['BB', 'BB'], yarns: [{ mark: 'ring' }, { mark: 'dot' }] }, ["note: A slate and B chalk have print marks that can't be told apart (ring and dot)."]],
    ['two yarns that never meet', { yarns: [{}, { colour: '#4b5a6b', mark: 'none' }] }, []],
  ])('%s', (_, wanted, sentences) => {
    expect(says(wanted)).toEqual(sentences);
  });

  it('stand at the row and stitch that they speak of', () => {
    const [float] = found({ cells: ['BB......BB', 'BB.....BBB', '..........'], place: { offset: 1 }, colour: { technique: 'stranded' } });
    expect(float!.where).toMatchObject({ section: 's1', nth: 1 });
    const [bobble] = found({ cells: ['..', '..'], stitches: ['..', 'b.'] });
    expect(bobble!.where).toMatchObject({ nth: 0, stitch: 24 });
  });

  it('note stitches that fall on decreases', () => {
    const text = FLAT.replace('Rows 2-8: ch 1, turn, sc in each st across. (12 sc)', 'Row 2: ch 1, turn, sc2tog, sc in next 10 sts. (11 sc)');
    expect(says({ text, cells: ['.'.repeat(11)], stitches: ['k'.repeat(11)], place: { bySize: [{ rowsUp: 1 }] } })).toEqual(['note: 1 stitch that Bird sets falls on decreases, post stitches or chains and is left out.']);
  });
});
