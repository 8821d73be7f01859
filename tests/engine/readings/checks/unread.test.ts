import { describe, expect, it } from 'vitest';
import { patternFromText } from '../../../../src/engine/1-pattern/patternFromText.ts';
import { construct } from '../../../../src/engine/2-construct/construct.ts';
import { work } from '../../../../src/engine/3-fabric/work.ts';
import { describeFinding } from '../../../../src/engine/readings/checks/prose.ts';
import { heelChecks } from '../../../../src/engine/readings/checks/heelChecks.ts';
import { workText } from '../../workText.ts';

const HEAD = 'T\nTerms: US\n\nPIECE\nFoundation: ch 21.\nRow 1: sc in 2nd ch from hook and in each ch across. (20 sc)\n';
/** What is found in rows, as degree, rule and row, without the words that were not read themselves. */
function foundIn(rows: string): readonly string[] {
  const { fabric } = workText(HEAD + rows);
  const number = new Map(fabric.rows.map((row) => [row.key.line, row.number]));
  return fabric.findings.filter(({ rule }) => rule !== 'unread').map(({ degree, rule, where }) => `${degree} ${rule} ${number.get(where.line!)}`);
}

describe('rows after a row that could not be read', () => {
  it.each([
    ['ask about counts and places that follow from it, and call none wrong', 'Row 2: ch 1, turn, zigzag over the whole row.\nRow 3: ch 1, turn, sc in next 30 sts. (30 sc)\nRow 4: ch 1, turn, *sc in next 6 sts, sc2tog; rep from * to end. (28 sc)', ['doubtful notEnoughPlaces 3', 'doubtful statedCount 3', 'doubtful repeatUneven 4', 'doubtful leftUnsaid 4', 'doubtful statedCount 4']],
    ['ask about the row itself too', 'Row 2: ch 1, turn, sc in next 5 sts, fold the rest over. (12 sc)', ['doubtful leftUnsaid 2', 'doubtful statedCount 2']],
    ['are judged again once a count agrees', 'Row 2: ch 1, turn, zigzag.\nRow 3: ch 1, turn, sc in each st across. (20 sc)\nRow 4: ch 1, turn, sc in next 22 sts. (20 sc)', ['wrong notEnoughPlaces 4']],
    ['are judged where the count of the row says that the words change nothing', 'Row 2: ch 1, turn, sc in each st across, zigzag. (20 sc)\nRow 3: ch 1, turn, sc in next 22 sts.', ['wrong notEnoughPlaces 3']],
    ['are not touched by words that were read', 'Row 2: ch 1, turn, sc in next 22 sts.', ['wrong notEnoughPlaces 2']],
  ])('%s', (_, rows, found) => {
    expect(foundIn(rows)).toEqual(found);
  });

  it('begin anew with a foundation', () => {
    const { fabric } = workText(`${HEAD}Row 2: ch 1, turn, zigzag.\n\nOTHER\nFoundation: ch 11.\nRow 1: sc in 2nd ch from hook and in each ch across. (12 sc)\n`);
    expect(fabric.findings.filter(({ rule }) => rule === 'statedCount').map(({ degree }) => degree)).toEqual(['wrong']);
  });

  it('say so in the sentence', () => {
    const { fabric } = workText(`${HEAD}Row 2: ch 1, turn, zigzag.\nRow 3: ch 1, turn, sc in next 30 sts.`);
    expect(fabric.findings.filter(({ rule }) => rule === 'notEnoughPlaces').map(describeFinding)).toEqual(['The row below has 20 stitches here, 30 are asked for. It stands on a row that is not certain, so it may be right.']);
  });

  it('are asked about the same when only the last of them changes', () => {
    const { pattern } = patternFromText(`${HEAD}Row 2: ch 1, turn, zigzag.\nRow 3: ch 1, turn, sc in each st across.\nRow 4: ch 1, turn, sc in next 30 sts.`);
    const before = work(construct(pattern!, 0));
    const lines = pattern!.sections[0]!.lines.map((line) => (line.id === 'l5' ? { ...line, text: 'ch 1, turn, sc in next 40 sts.' } : line));
    const changed = construct({ ...pattern!, sections: [{ ...pattern!.sections[0]!, lines }] }, 0);
    expect(work(changed, before).findings).toEqual(work(changed).findings);
  });

  it('leave a heel that does not close a question', () => {
    const { fabric } = workText('T\nTerms: US\n\nHEEL\nFoundation: ch 21.\nRow 1: sc in 2nd ch from hook and in each ch across.\nRow 2: ch 1, turn, sc in next 14 sts. Leave 6 unworked.\nRow 3: ch 1, turn, sc in next 8 sts. Leave 6 unworked.\nRows 4-9: ch 1, turn, sc in each st across, sc in next unworked st.\nRow 10: zigzag over both sides.');
    expect(heelChecks(fabric).map(({ degree, rule }) => `${degree} ${rule}`)).toEqual(['doubtful heelOpen']);
  });
});
