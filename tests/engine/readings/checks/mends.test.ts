import { describe, expect, it } from 'vitest';
import { patternFromText } from '../../../../src/engine/1-pattern/patternFromText.ts';
import type { Pattern } from '../../../../src/engine/1-pattern/pattern.ts';
import { construct } from '../../../../src/engine/2-construct/construct.ts';
import { work } from '../../../../src/engine/3-fabric/work.ts';
import { colour } from '../../../../src/engine/4-colour/colour.ts';
import type { Finding } from '../../../../src/engine/notation/finding.ts';
import { check } from '../../../../src/engine/readings/checks/check.ts';
import { mendedLine } from '../../../../src/engine/readings/checks/mendedLine.ts';
import { describeFinding } from '../../../../src/engine/readings/checks/prose.ts';

function checked(text: string): { pattern: Pattern; found: Finding[] } {
  const pattern = patternFromText(text).pattern!;
  const fabrics = pattern.sizes.map((_, size) => work(construct(pattern, size)));
  return { pattern, found: check(pattern, fabrics[0]!, colour(pattern, fabrics[0]!, 0), fabrics) };
}

/** The line of a finding with its mend put in. */
function mended(pattern: Pattern, { mend }: Finding): string | null {
  const line = pattern.sections.flatMap((section) => section.lines).find((one) => one.id === mend?.line);
  return mend && line ? line.text.slice(0, mend.range[0]) + mend.text + line.text.slice(mend.range[1]) : null;
}

const FOUNDATION = 'T\nTerms: US\n\nPIECE\nFoundation: ch 11.\nRow 1: sc in 2nd ch from hook and in each ch across. (10 sc)\n';

describe('findings with mends', () => {
  // Common practice of technical editing: what is asked, and the mend where only one is possible.
  it.each([
    ['a count that is wrong', 'Row 2: ch 1, turn, 2 sc in next st, sc in each st across. (12 sc)', 'statedCount', 'Says 12, makes 11.', 'ch 1, turn, 2 sc in next st, sc in each st across. (11 sc)'],
    ['the second of two counts', 'Row 2: ch 1, turn, (sc in next st, ch 1, sk 1 st) 5 times. (5 sc, 6 ch-1 sps)', 'statedCount', 'Says 6, makes 5.', 'ch 1, turn, (sc in next st, ch 1, sk 1 st) 5 times. (5 sc, 5 ch-1 sps)'],
    ['a number of stitches left that is wrong', 'Row 2: ch 1, turn, sc in next 6 sts. Leave 3 unworked. (6 sc)', 'leftCount', 'Says to leave 3 unworked, 4 are left.', 'ch 1, turn, sc in next 6 sts. Leave 4 unworked. (6 sc)'],
    ['stitches left over without being said', 'Row 2: ch 1, turn, sc in next 6 sts. (6 sc)', 'leftUnsaid', "4 stitches of the row below are left unworked, which the words don't say.", 'ch 1, turn, sc in next 6 sts. Leave the rest unworked. (6 sc)'],
    ['a stitch name of the other terms', 'Row 2: ch 2, turn, htr in each st across.', 'otherTerms', '“htr” is a word of the other terms; in these it is hdc.', 'ch 2, turn, hdc in each st across.'],
    ['a repeat that does not divide', 'Row 2: ch 1, turn, *sc in next 3 sts, 2 sc in next st; rep from * to end.', 'repeatUneven', "The repeat doesn't come out even: it takes 4 at a time and 2 stitches are left over. A row of 8 or 12 would divide.", null],
    ['a row that runs past the row below', 'Row 2: ch 1, turn, sc in next 12 sts.', 'notEnoughPlaces', 'The row below has 10 stitches here, 12 are asked for.', null],
    ['a counted repeat that runs past the row below', 'Row 2: ch 1, turn, (sc in next st, 2 sc in next st) 7 times.', 'notEnoughPlaces', 'The row below has 0 stitches here, 1 is asked for. The repeat fits 5 times in the place of 7.', null],
    ['a counted repeat that never comes out even', 'Row 2: ch 1, turn, (sc in next 3 sts, 2 sc in next st) 3 times.', 'notEnoughPlaces', 'The row below has 2 stitches here, 3 are asked for. The repeat fits 2 times in the place of 3, with 2 stitches over.', null],
    ['a counted repeat that leaves stitches over', 'Row 2: ch 1, turn, (sc in next st, 2 sc in next st) 3 times.', 'leftUnsaid', "4 stitches of the row below are left unworked, which the words don't say. 5 times in the place of 3 would use them all.", null],
    ['a row label out of order', 'Row 4: ch 1, turn, sc in each st across.', 'labelOrder', 'This is labelled 4, after the rows before it 2 was expected.', null],
    ['turning chains unlike the others', 'Row 2: ch 1, turn, sc in each st across.\nRow 3: ch 1, turn, sc in each st across.\nRow 4: turn, sc in next st, sc in each st across.\nRow 5: ch 3, turn, dc in each st across.\nRow 6: ch 3, turn, dc in each st across.\nRow 7: ch 2, turn, dc in each st across.', 'turningChains', 'Rises to dc with ch 2; 2 rows of this section do it with ch 3.', 'ch 3, turn, dc in each st across.'],
  ] as const)('%s', (_, rows, rule, says, after) => {
    const { pattern, found } = checked(FOUNDATION + rows);
    const one = found.find((each) => each.rule === rule);
    expect(one && describeFinding(one), JSON.stringify(found)).toBe(says);
    expect(mended(pattern, one!)).toBe(after);
  });

  it('mends a label that slipped, where the row after it goes on from the number that was meant', () => {
    const { pattern, found } = checked(`${FOUNDATION}Row 2: ch 1, turn, sc in each st across.\nRow 2: ch 1, turn, sc in each st across.\nRow 4: ch 1, turn, sc in each st across.`);
    const slips = found.filter(({ rule }) => rule === 'labelOrder');
    expect(slips.map((one) => [one.where.line, one.found, one.expected, one.mend?.label])).toEqual([['l4', 2, 3, '3']]);
    const lines = pattern.sections[0]!.lines.map((line) => (line.id === 'l4' ? mendedLine(line, slips[0]!.mend!) : line));
    const after = { ...pattern, sections: [{ ...pattern.sections[0]!, lines }] };
    const fabric = work(construct(after, 0));
    expect(fabric.rows.map(({ number }) => number)).toEqual([null, 1, 2, 3, 4]);
    expect(check(after, fabric, colour(after, fabric, 0)).filter(({ rule }) => rule === 'labelOrder')).toEqual([]);
  });

  it('gives no mend for a label where rows may be missing', () => {
    const { found } = checked(`${FOUNDATION}Row 2: ch 1, turn, sc in each st across.\nRow 4: ch 1, turn, sc in each st across.\nRow 5: ch 1, turn, sc in each st across.`);
    expect(found.filter(({ rule }) => rule === 'labelOrder').map((one) => [one.found, one.expected, one.mend])).toEqual([[4, 3, null]]);
  });

  it('mends a count that lacks a size, since every size says its own; not an instruction, whose number nobody can tell', () => {
    const { pattern, found } = checked('T\nTerms: US\nSizes: S (M, L)\n\nPIECE\nFoundation: ch 11 (13, 15).\nRow 1: sc in 2nd ch from hook and in each ch across. (10 (12) sc)\nRow 2: ch 1, turn, sc in next 10 (12) sts. Leave the rest unworked.\n');
    const missing = found.filter(({ rule }) => rule === 'sizesMismatch');
    expect(missing.map((one) => [one.where.line, one.found, one.expected])).toEqual([['l2', 2, 3], ['l3', 2, 3]]);
    expect(missing.map((one) => mended(pattern, one))).toEqual(['sc in 2nd ch from hook and in each ch across. (10 (12, 14) sc)', null]);
  });

  it('gives the mend in every size', () => {
    const { pattern, found } = checked('T\nTerms: US\nSizes: S (M, L)\n\nPIECE\nFoundation: ch 11 (13, 15).\nRow 1: sc in 2nd ch from hook and in each ch across. (10 (12, 15) sc)\n');
    const fabrics = pattern.sizes.map((_, size) => work(construct(pattern, size)));
    const last = check(pattern, fabrics[2]!, colour(pattern, fabrics[2]!, 2), fabrics).find(({ rule }) => rule === 'statedCount');
    expect(found.filter(({ rule }) => rule === 'statedCount')).toEqual([]);
    expect(mended(pattern, last!)).toBe('sc in 2nd ch from hook and in each ch across. (10 (12, 14) sc)');
  });

  it('finds an abbreviation that is used but not explained, once', () => {
    const { found } = checked('T\nTerms: US\nAbbreviations: ch = chain; sc = single crochet; st = stitch\n\nPIECE\nFoundation: ch 11.\nRow 1: sc in 2nd ch from hook and in each ch across.\nRow 2: ch 2, turn, hdc in each st across.\nRow 3: ch 2, turn, hdc in each st across.');
    expect(found.filter(({ rule }) => rule === 'abbreviationUnexplained').map((one) => [one.where.line, one.found, describeFinding(one)])).toEqual([['l3', 'hdc', "The pattern's abbreviations leave out hdc (half double crochet)."]]);
  });

  it('finds a size that is missing from a vector', () => {
    const { pattern, findings } = patternFromText('T\nTerms: US\nSizes: S (M, L)\n\nPIECE\nFoundation: ch 11 (13, 15).\nRow 1: sc in 2nd ch from hook, sc in next 9 (11) chs.');
    expect(findings.filter(({ degree }) => degree === 'wrong')).toEqual([]);
    const found = construct(pattern!, 0).findings;
    expect(found.map((one) => [one.rule, one.where.line, one.found, one.expected])).toEqual([['sizesMismatch', 'l2', 2, 3]]);
  });

  it('finds a heel that can not close', () => {
    const { found } = checked('T\nTerms: US\n\nHEEL\nFoundation: ch 21.\nRow 1: sc in 2nd ch from hook and in each ch across. (20 sc)\nRow 2: ch 1, turn, sc in next 14 sts. Leave 6 unworked. (14 sc)\nRow 3: ch 1, turn, sc in next 8 sts. Leave 6 unworked. (8 sc)\nRows 4-9: ch 1, turn, sc in each st across, sc in next unworked st.');
    expect(found.find(({ rule }) => rule === 'heelOpen')?.found).toBe(6);
  });

  it('mends put in leave nothing of what they mend', () => {
    const text = `${FOUNDATION}Row 2: ch 1, turn, sc in next 6 sts. (7 sc)\nRow 3: ch 1, turn, sc in each st across. (9 sc)\n`;
    let { pattern, found } = checked(text);
    for (let step = 0; step < 6; step++) {
      const one = found.find(({ mend }) => mend !== null);
      if (!one) break;
      const words = mended(pattern, one)!;
      pattern = { ...pattern, sections: pattern.sections.map((section) => ({ ...section, lines: section.lines.map((line) => (line.id === one.mend!.line ? { ...line, text: words } : line)) })) };
      const fabric = work(construct(pattern, 0));
      found = check(pattern, fabric, colour(pattern, fabric, 0), [fabric]);
    }
    // Stitches left on purpose are still open at the end: that stays a question.
    expect(found.map(({ rule }) => rule)).toEqual(['neverUsed']);
    expect(pattern.sections[0]!.lines.map(({ text: words }) => words).slice(2)).toEqual(['ch 1, turn, sc in next 6 sts. Leave the rest unworked. (6 sc)', 'ch 1, turn, sc in each st across. (6 sc)']);
  });
});
