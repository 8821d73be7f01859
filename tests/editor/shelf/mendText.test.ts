import { describe, expect, it } from 'vitest';
import fc from 'fast-check';
import { cleanText, withoutJoiners } from '../../../src/engine/notation/cleanText.ts';
import { mendText, placeOfMend } from '../../../src/editor/shelf/mendText.ts';
import { reading } from '../../../src/editor/shelf/reading.ts';

const HEAD = 'Mat\nTerms: US\n\nMAT\nFoundation: ch 9.\nRow 1: sc in 2nd ch from hook and in each ch across. (8 sc)\n';
const mendAll = (text: string) => {
  const { read, report } = reading({ text, terms: null });
  return mendText(text, read, report.mends);
};

describe('a mend in the text that was pasted', () => {
  it.each([
    ['a row on one line', 'Row 2: ch 1, turn, sc in each st across. (9 sc)', 'Row 2: ch 1, turn, sc in each st across. (8 sc)'],
    ['a row over two lines', 'Row 2: ch 1, turn,\nsc in each st across. (9 sc)', 'Row 2: ch 1, turn,\nsc in each st across. (8 sc)'],
    ['a row over lines of a word processor', 'Row 2: ch 1, turn,\r\n\tsc in each st across. (9 sc)', 'Row 2: ch 1, turn,\r\n\tsc in each st across. (8 sc)'],
    ['a word broken by a hyphen', 'Row 2: ch 1, turn, single cro-\nchet in each st across. (9 sc)', 'Row 2: ch 1, turn, single cro-\nchet in each st across. (8 sc)'],
    ['a soft hyphen and a mark of no width', 'Row 2: ch 1, tu\u00adrn, sc in each st ac\u200bross. (9 sc)', 'Row 2: ch 1, tu\u00adrn, sc in each st ac\u200bross. (8 sc)'],
    ['a row that goes on after the foot of a page', 'Row 2: ch 1, turn, sc in\n\n- 3 -\n\neach st across. (9 sc)', 'Row 2: ch 1, turn, sc in\n\n- 3 -\n\neach st across. (8 sc)'],
    ['a word of the other terms, broken by a hyphen', 'Row 2: ch 2, turn, half tre-\nble in each st across. (8 sts)', 'Row 2: ch 2, turn, hdc in each st across. (8 sts)'],
    ['the number of a label that slipped', 'Row 2: ch 1, turn, sc in each st across.\nRow 2 (RS): ch 1, turn, sc in each st across.\nRow 4: ch 1, turn, sc in each st across.', 'Row 2: ch 1, turn, sc in each st across.\nRow 3 (RS): ch 1, turn, sc in each st across.\nRow 4: ch 1, turn, sc in each st across.'],
  ])('goes to its very words: %s', (_, row, mended) => {
    expect(mendAll(`${HEAD}${row}\n`)).toBe(`${HEAD}${mended}\n`);
  });

  it('is made with all others at once, and one that would be in the place of another is left', () => {
    const text = `${HEAD}Row 2: ch 1, turn, sc in each st across. (9 sc)\nRow 3: ch 1, turn, sc in\neach st across. (7 sc)\n`;
    expect(mendAll(text)).toBe(`${HEAD}Row 2: ch 1, turn, sc in each st across. (8 sc)\nRow 3: ch 1, turn, sc in\neach st across. (8 sc)\n`);
    const lines = new Map([['l1', { lineNumber: 1, range: [0, 6] as const }]]);
    expect(mendText('abcdef', { lines }, [{ line: 'l1', range: [1, 3], text: 'X' }, { line: 'l1', range: [2, 4], text: 'Y' }, { line: 'l9', range: [0, 1], text: 'Z' }])).toBe('aXdef');
  });

  it('finds every character of a line where it was in the text', () => {
    fc.assert(
      fc.property(fc.string({ unit: fc.constantFrom(...'ab1 -\n\u00ad\u200b\ufeff') }), (text) => {
        const cleaned = cleanText(text);
        const line = withoutJoiners(cleaned);
        const lines = new Map([['l1', { lineNumber: 1, range: [0, text.length] as const }]]);
        return [...line].every((sign, at) => {
          const [from, to] = placeOfMend(cleaned, { lines }, { line: 'l1', range: [at, at + 1], text: '' })!;
          return to - from === 1 && cleaned.slice(from, to) === sign;
        });
      }),
      { seed: 11 },
    );
  });
});

describe('what is said of the terms', () => {
  it.each([
    ['US, as it says', 'Terms: US', 'sc in next 3 sts', null, 'The text says that its terms are US.'],
    ['UK, by a word', 'Mat', 'htr in next 3 sts', null, 'Its words are UK terms: htr.'],
    ['mixed', 'Mat', 'htr in next 3 sts, sc in next st', null, 'Words of both US and UK terms stand in it: sc; htr. Read as US; set what it is.'],
    ['unknown', 'Mat', 'dc in next 3 sts', null, 'Nothing in it tells its terms. Read as US.'],
    ['set by hand', 'Terms: US', 'dc in next 3 sts', 'uk', 'Read in UK terms, as set here.'],
  ] as const)('is where they are from: %s', (_, head, row, terms, says) => {
    expect(reading({ text: `Mat\n${head}\n\nMAT\nRow 1: ${row}.`, terms }).report.terms).toBe(says);
  });
});
