import { describe, expect, it } from 'vitest';
import { abbreviationsIn } from '../../../../src/engine/readings/words/abbreviations.ts';
import { writeRowWords } from '../../../../src/engine/readings/words/writeRowWords.ts';
import { writeWords } from '../../../../src/engine/readings/words/writeWords.ts';
import { patternOf, rowsIn, wordsOf, workedSize } from './workedSizes.ts';

const YARNS = 'Yarn A: slate #4b5a6b\nYarn B: chalk #f2efe6\n';
const flat = (rows: string, header = YARNS) => `Sample\nGauge: 16 sts and 18 rows = 10 cm in sc\n${header}\nPIECE\nFoundation: ch 11.\nRow 1 (RS): sc in 2nd ch from hook and in each ch across.\n${rows}\n`;

describe('rows in words', () => {
  it('writes one yarn in the words of the rows, with counts', () => {
    expect(rowsIn(wordsOf(patternOf(flat('Row 2: ch 1, turn, 2 sc in next st, sc 8, inc.\nRow 3: ch 1, turn, sc2tog, sc in each st across.'))))).toEqual([
      'Foundation: with A, ch 11.',
      'Row 1 (RS): sc in 2nd ch from hook and in each ch across. (10 sc)',
      'Row 2: ch 1, turn, 2 sc in next st, sc in next 8 sts, 2 sc in next st. (12 sc)',
      'Row 3: ch 1, turn, sc2tog, sc in each st across. (11 sc)',
    ]);
  });

  it('folds rows that say the same to a range, over several lines of the pattern', () => {
    const pattern = patternOf(flat('Row 2: ch 1, turn, sc in each st across.\nRows 3-5: ch 1, turn, sc in each st across.\nRow 6: ch 1, turn, sc in each st across\nRow 7 (RS): ch 1, turn, sc in each st across.'));
    expect(rowsIn(wordsOf(pattern)).slice(2)).toEqual(['Rows 2-6: ch 1, turn, sc in each st across. (10 sc)', 'Row 7 (RS): ch 1, turn, sc in each st across. (10 sc)']);
    const { sections } = writeWords({ pattern, sizes: [workedSize(pattern, 0)], terms: 'us' });
    expect(sections[0]!.lines.map(({ line, nthFrom, nthTo, also, label }) => [line, nthFrom, nthTo, also, label])).toEqual([
      ['l1', 0, 0, [], 'Foundation'], ['l2', 0, 0, [], 'Row 1 (RS)'], ['l3', 0, 3 + 1, ['l4', 'l5'], 'Rows 2-6'], ['l6', 0, 0, [], 'Row 7 (RS)'],
    ]);
  });

  it('says counts that move by a step once, and splits a range where they stop moving', () => {
    expect(rowsIn(wordsOf(patternOf(flat('Rows 2-5: ch 1, turn, 2 sc in next st, sc in each st across.\nRows 6-8: ch 1, turn, sc2tog, sc in each st across.')))).slice(2)).toEqual([
      'Rows 2-5: ch 1, turn, 2 sc in next st, sc in each st across. (1 st more in each row, ending with 14 sc)',
      'Rows 6-8: ch 1, turn, sc2tog, sc in each st across. (1 st fewer in each row, ending with 11 sc)',
    ]);
  });

  it('keeps "rep rows" as the pattern has it, and says its counts', () => {
    expect(rowsIn(wordsOf(patternOf(flat('Row 2: ch 1, turn, 2 sc in next st, sc in each st across.\nRow 3: ch 1, turn, sc2tog, sc in each st across.\nRows 4-7: rep rows 2 and 3.\nRows 8-9: rep row 2.')))).slice(4)).toEqual([
      'Rows 4-7: rep rows 2 and 3. (counts 11, 10, 11, 10 sc)',
      'Rows 8-9: rep row 2. (1 st more in each row, ending with 12 sc)',
    ]);
  });

  it('keeps steps, notes, names and what lies beside the rows', () => {
    const text = 'Sample\nTerms: US\nDesigner: A friend\nGauge: 16 sts and 18 rows = 10 cm in sc\nHook: 4.5 mm\nYarn A: slate #4b5a6b\nLevel: easy\n\nLEG (worked flat)\nFoundation: ch 9.\nRow 1: sc in 2nd ch from hook and in each ch across. (8 sc)\nBreathe out.\nSeam the side edges.\nFasten off.\n';
    expect(wordsOf(patternOf(text))).toBe(
      text.replace('Level: easy', 'Level: easy\nAbbreviations: ch = chain; sc = single crochet'),
    );
  });

  it('counts mixed stitches as sts, and turning chains that count', () => {
    expect(rowsIn(wordsOf(patternOf(flat('Row 2: ch 3, turn, dc in next 9 sts.\nRow 3: ch 1, turn, sc 5, dc 5.\nRow 4: ch 2, turn, hdc in next 9 sts.')))).slice(2)).toEqual([
      'Row 2: ch 3, turn, dc in next 9 sts. (10 dc)',
      'Row 3: ch 1, turn, sc in next 5 sts, dc in next 5 sts. (10 sts)',
      'Row 4: ch 2, turn, hdc in next 9 sts. (10 hdc)',
    ]);
  });
});

describe('yarn runs', () => {
  const row = 'Row 2: ch 1, turn, sc in each st across.';
  // Row 2 is worked from left to right as seen on the right side, so its first stitch is the leftmost cell.
  it.each([
    ['a few cells', 'AABBBAAAAB', 'Row 2: ch 1, turn, with A sc 2, B sc 3, A sc 4, B sc 1. (10 sc)'],
    ['a repeat', 'BABABABABA', 'Row 2: with B, ch 1, turn, *B sc 1, A sc 1; rep from * to end. (10 sc)'],
    ['a repeat with a rest', 'AABAABAABA', 'Row 2: ch 1, turn, *A sc 2, B sc 1; rep from * to last st, A sc 1. (10 sc)'],
    ['a repeat after an edge', 'BBBBABABAB', 'Row 2: with B, ch 1, turn, B sc 4, *A sc 1, B sc 1; rep from * to end. (10 sc)'],
    ['no repeat that is shorter', 'AABBBBBBAA', 'Row 2: ch 1, turn, with A sc 2, B sc 6, A sc 2. (10 sc)'],
    ['the whole row', 'BBBBBBBBBB', 'Row 2: with B, ch 1, turn, sc in each st across. (10 sc)'],
  ])('%s', (_, letters, expected) => {
    expect(rowsIn(wordsOf(patternOf(flat(row), [['l3', 0, 0, letters]])))[2]).toBe(expected);
  });

  it('start at the first stitch of the row, so that a right-side row runs the other way', () => {
    const pattern = patternOf(flat(`${row}\nRow 3: ch 1, turn, sc in each st across.`), [['l3', 0, 0, 'BBAAAAAAAA'], ['l4', 0, 0, 'BBAAAAAAAA']]);
    expect(rowsIn(wordsOf(pattern)).slice(2)).toEqual([
      'Row 2: with B, ch 1, turn, B sc 2, A sc 8. (10 sc)',
      'Row 3: ch 1, turn, with A sc 8, B sc 2. (10 sc)',
    ]);
  });

  it('name the yarn again where it is not in hand, and not where it is', () => {
    const pattern = patternOf(flat(`${row}\nRows 3-5: ch 1, turn, sc in each st across.`), [['l3', 0, 8, 'BB']]);
    expect(rowsIn(wordsOf(pattern)).slice(2)).toEqual([
      'Row 2: ch 1, turn, with A sc 8, B sc 2. (10 sc)',
      'Row 3: with A, ch 1, turn, sc in each st across. (10 sc)',
      'Rows 4-5: ch 1, turn, sc in each st across. (10 sc)',
    ]);
  });

  it('go into increases, decreases and groups', () => {
    const pattern = patternOf(flat('Row 2: ch 1, turn, 2 sc in next st, sc2tog, (sc, dc) in next st, sk 1, sc in each st across.'), [['l3', 0, 1, 'BBAB']]);
    expect(rowsIn(wordsOf(pattern))[2]).toBe('Row 2: ch 1, turn, with A sc 1, B sc in same st, sc2tog, with A, (sc, with B, dc) in next st, skip next st, A sc 5. (10 sts)');
  });

  it('are counted out where the row goes beyond the row below', () => {
    const short = 'Row 2: ch 1, turn, sc in next 4 sts. Leave the rest unworked.\nRow 3: ch 1, turn, sc in each st across.\nRow 4: ch 1, turn, sc in each st across, sc in next 2 unworked sts.';
    expect(rowsIn(wordsOf(patternOf(flat(short), [['l5', 0, 0, 'BABABA']])))[4]).toBe('Row 4: with B, ch 1, turn, *B sc 1, A sc 1; rep from * 1 more time, B sc in next unworked st, A sc in next unworked st. (6 sc)');
  });

  it('of a row that can not be worked as it is written stand beside its words', () => {
    const wrong = 'Row 2: ch 1, turn, sc in next 4 sts. Leave the rest unworked.\nRow 3: ch 1, turn, sc in each st across, sc in next 2 unworked sts.';
    expect(rowsIn(wordsOf(patternOf(flat(wrong), [['l4', 0, 0, 'AABB']])))[3]).toBe('Row 3: with B, ch 1, turn, sc in each st across, sc in next 2 unworked sts (in order of working: 3 in B, 2 in A). (4 sc)');
  });

  it('of rows worked as another row are written out', () => {
    const pattern = patternOf(flat('Row 2: ch 1, turn, sc in each st across.\nRows 3-4: rep row 2.'), [['l4', 1, 0, 'BA']]);
    expect(rowsIn(wordsOf(pattern)).slice(2)).toEqual([
      'Rows 2-3: ch 1, turn, sc in each st across. (10 sc)',
      'Row 4: with B, ch 1, turn, B sc 1, A sc 9. (10 sc)',
    ]);
  });
});

describe('several sizes', () => {
  const sized = `Sample\nGauge: 16 sts and 18 rows = 10 cm in sc\n${YARNS}Sizes: S (M, L)\n\nPIECE\nFoundation: ch 11 (13, 15).\nRow 1: sc in 2nd ch from hook and in each ch across.\nRow 2: ch 1, turn, sc2tog, sc in next 8 (10, 12) sts.\nRows 3-6 (8, 10): ch 1, turn, 2 sc in next st, sc in each st across.\n`;

  it('become vectors, in labels, rows and counts', () => {
    expect(rowsIn(wordsOf(patternOf(sized)))).toEqual([
      'Foundation: with A, ch 11 (13, 15).',
      'Row 1: sc in 2nd ch from hook and in each ch across. (10 (12, 14) sc)',
      'Row 2: ch 1, turn, sc2tog, sc in next 8 (10, 12) sts. (9 (11, 13) sc)',
      'Rows 3-6 (8, 10): ch 1, turn, 2 sc in next st, sc in each st across. (1 st more in each row, ending with 13 (17, 21) sc)',
    ]);
  });

  it('alone are written with their own numbers', () => {
    expect(rowsIn(wordsOf(patternOf(sized), 'us', [1]))).toEqual([
      'Foundation: with A, ch 13.',
      'Row 1: sc in 2nd ch from hook and in each ch across. (12 sc)',
      'Row 2: ch 1, turn, sc2tog, sc in next 10 sts. (11 sc)',
      'Rows 3-8: ch 1, turn, 2 sc in next st, sc in each st across. (1 st more in each row, ending with 17 sc)',
    ]);
    expect(wordsOf(patternOf(sized), 'us', [1])).toContain('\nSize: M\n');
  });

  it('as some of them are written with vectors of those', () => {
    expect(wordsOf(patternOf(sized), 'us', [0, 2])).toContain('\nSizes: S (L)\n');
    expect(rowsIn(wordsOf(patternOf(sized), 'us', [0, 2]))[2]).toBe('Row 2: ch 1, turn, sc2tog, sc in next 8 (12) sts. (9 (13) sc)');
  });

  it('merge yarn runs where only numbers differ, and tell wordings apart', () => {
    const pattern = patternOf(sized, [['l2', 0, 0, 'BBB', 0], ['l2', 0, 0, 'BBBB', 1], ['l2', 0, 0, 'BBBBB', 2], ['l3', 0, 0, 'BB', 0], ['l3', 0, 0, 'BB', 2], ['l3', 0, 4, 'BB', 1]]);
    expect(rowsIn(wordsOf(pattern)).slice(1, 3)).toEqual([
      'Row 1: with A sc in 2nd ch from hook and in next 6 (7, 8) chs, B sc in next 3 (4, 5) chs. (10 (12, 14) sc)',
      'Row 2: Sizes S and L: ch 1, turn, with B sc2tog, sc 1, A sc 7 (11). Size M: with A, ch 1, turn, A sc2tog, sc 3, B sc 2, A sc 5. (9 (11, 13) sc)',
    ]);
  });

  it('leave out a line that has no rows in any size written', () => {
    const pattern = patternOf('Sample\nSizes: S (M, L)\n\nPIECE\nFoundation: ch 11.\nRow 1: sc in 2nd ch from hook and in each ch across.\nRows 2-1 (3, 5): ch 1, turn, hdc in each st across.\nRow 2 (4, 6): ch 1, turn, sc in each st across.\n');
    expect(rowsIn(wordsOf(pattern, 'us', [0]))).toEqual(['Foundation: ch 11.', 'Row 1: sc in 2nd ch from hook and in each ch across. (10 sc)', 'Row 2: ch 1, turn, sc in each st across. (10 sc)']);
    expect(rowsIn(wordsOf(pattern, 'us', [2]))[2]).toBe('Rows 2-5: ch 1, turn, hdc in each st across. (10 hdc)');
    expect(rowsIn(wordsOf(pattern))).toHaveLength(4);
  });

  it('measure its parts as the schematic does, with swatches and folded edges', () => {
    const text = 'Sample\nGauge: 16 sts and 20 rows = 10 cm in sc\n\nPIECE\nFoundation: ch 21.\nRow 1: sc in 2nd ch from hook and in each ch across.\nRows 2-20: ch 1, turn, sc in each st across.\n';
    const pattern = patternOf(text);
    expect(wordsOf(pattern)).toContain('Finished measurements: Piece 12.5 cm wide, 10 cm long');
    const folded = { ...pattern, sections: [{ ...pattern.sections[0]!, recipe: { name: 'panel', settings: { edge: 'folded' } } }] };
    expect(wordsOf(folded)).toContain('Finished measurements: Piece 12.5 cm wide, 5 cm long');
  });

  it('refuses to write none', () => {
    expect(() => writeWords({ pattern: patternOf(sized), sizes: [], terms: 'us' })).toThrow(RangeError);
  });
});

describe('terms and abbreviations', () => {
  it('writes everything in the terms asked for', () => {
    const text = 'Sample\nTerms: US\nGauge: 16 sts and 18 rows = 10 cm in hdc\nYarn A: slate #4b5a6b\nTurning chains: ch 2 before hdc does not count as a st\nTip: sc through both layers\n\nLEG (in dc)\nFoundation: ch 9.\nRow 1: sc in 2nd ch from hook and in each ch across. (8 sc)\nThe dc of row 2 are loose.\nRow 2: ch 1, turn, skip next st, FPdc around next st, 5-dc bobble in next st, hdc in next 5 sts.\n';
    expect(wordsOf(patternOf(text), 'uk')).toBe(
      'Sample\nTerms: UK\nTension: 16 sts and 18 rows = 10 cm in htr\nYarn A: slate #4b5a6b\nTurning chains: ch 2 before htr does not count as a st\nTip: dc through both layers\nAbbreviations: ch = chain; dc = double crochet; FPtr = front post treble crochet; htr = half treble crochet; st(s) = stitch(es); tr = treble crochet\nSpecial stitches: 5-tr bobble: 5 tr worked together at their tops, all in one st\n\nLEG (in tr)\nFoundation: ch 9.\nRow 1: dc in 2nd ch from hook and in each ch across. (8 dc)\nThe tr of row 2 are loose.\nRow 2: ch 1, turn, miss next st, FPtr around next st, 5-tr bobble in next st, htr in next 5 sts. (7 sts)\n',
    );
  });

  it.each([
    ['sc in next st, ch 1', ['ch', 'sc', 'st(s)']],
    ['Rnd 3: dc2tog, FPdc around next st; rep', ['dc2tog', 'FPdc', 'rep', 'rnd(s)', 'st(s)']],
    ['Row 1 (RS): BLO sc; 5-dc bobble', ['BLO', 'dc', 'RS', 'sc']],
    ['sl st in next ch-2 sp', ['ch', 'sl st', 'sp(s)']],
    ['turn', []],
  ])('lists for "%s" only what it uses', (text, shorts) => {
    expect(abbreviationsIn(text, 'us').map(({ short }) => short)).toEqual(shorts);
  });
});

describe('the words of one row', () => {
  it('are those of the whole pattern, in one size', () => {
    const pattern = patternOf(flat('Rows 2-3: ch 1, turn, sc in each st across.\nFasten off.'), [['l3', 1, 0, 'BB']]);
    const worked = workedSize(pattern, 0);
    expect(worked.fabric.rows.map((_, row) => writeRowWords(worked, row, 'us'))).toEqual([
      'with A, ch 11.',
      'sc in 2nd ch from hook and in each ch across. (10 sc)',
      'ch 1, turn, sc in each st across. (10 sc)',
      'ch 1, turn, with A sc 8, B sc 2. (10 sc)',
      'Fasten off.',
    ]);
    expect(writeRowWords(worked, 2, 'uk')).toBe('ch 1, turn, dc in each st across. (10 dc)');
    expect(writeRowWords(worked, 1, 'us', { runs: 'short', count: 'dash' })).toBe('sc in 2nd ch from hook and in each ch across — 10 sc.');
    expect(() => writeRowWords(worked, 5, 'us')).toThrow(new RangeError('row 5 asked of 5'));
  });
});
