import { describe, expect, it } from 'vitest';
import { reading } from '../../../src/editor/shelf/reading.ts';

const HEAD = 'Mat\nTerms: US\n\nMAT\nFoundation: ch 9.\nRow 1: sc in 2nd ch from hook and in each ch across. (8 sc)\n';
const EVEN = 'ch 1, turn, sc in each st across. (8 sc)';

/** Every finding that the report shows, line by line and elsewhere, by its rule's own words. */
function shown(text: string): readonly string[] {
  const { report } = reading({ text, terms: null });
  return [...report.elsewhere.map(({ line, says }) => `${line}: ${says}`), ...report.sections.flatMap(({ lines }) => lines.flatMap(({ lineNumber, findings }) => findings.map(({ rule }) => `${lineNumber} in its line: ${rule}`)))];
}

describe('the report of what was read', () => {
  it.each([
    ['a number twice', `Row 2: ${EVEN}\nRow 2: ${EVEN}\nRow 4: ${EVEN}\n`, ['8 in its line: labelOrder']],
    ['a number left out', `Row 2: ${EVEN}\nRow 4: ${EVEN}\nRow 5: ${EVEN}\n`, ['8 in its line: labelOrder']],
    ['two slips', `Row 2: ${EVEN}\nRow 2: ${EVEN}\nRow 4: ${EVEN}\nRow 7: ${EVEN}\n`, ['8 in its line: labelOrder', '10 in its line: labelOrder']],
    ['none', `Row 2: ${EVEN}\nRow 3: ${EVEN}\n`, []],
  ])('tells of a label out of order once: %s', (_, rows, found) => {
    expect(shown(HEAD + rows)).toEqual(found);
    const asked = /(\d+) things? to look at/.exec(reading({ text: HEAD + rows, terms: null }).report.summary);
    expect(Number(asked?.[1] ?? 0)).toBe(found.length);
  });
});
