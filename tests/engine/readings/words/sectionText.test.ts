import { describe, expect, it } from 'vitest';
import { cleanText, withoutJoiners } from '../../../../src/engine/notation/cleanText.ts';
import { linesFromText } from '../../../../src/engine/readings/words/sectionText.ts';

const read = (text: string) => linesFromText(text, { terms: 'us', sizes: [''] });

describe('lines read from the text of a section', () => {
  it('are each found at their own characters', () => {
    const text = 'Foundation: ch 9.\nRow 1: sc in 2nd ch from hook\nand in each ch across. (8 sc)\r\nRow 2: ch 1, turn, single cro-\nchet in each st across.\nRest the hands.\nFasten off.';
    const { lines, places } = read(text);
    expect(lines.map(({ kind }) => kind)).toEqual(['row', 'row', 'row', 'note', 'step']);
    const own = places.map(([from, to]) => withoutJoiners(cleanText(text).slice(from, to).replace(/[\r\n\t]/g, ' ')));
    expect(own).toEqual(lines.map((line) => line.text));
    expect(lines[2]!.text).toBe('ch 1, turn, single crochet in each st across.');
  });

  it('keep a line that would name another section whole, as a note', () => {
    const text = 'Row 1: sc in next 6 sts.\nGUSSET (both sides)\nRow 2: ch 1, turn, sc in each st across.';
    const { lines, places } = read(text);
    expect(lines.map(({ kind, text: own }) => [kind, own])).toEqual([['row', 'sc in next 6 sts.'], ['note', 'GUSSET (both sides)'], ['row', 'ch 1, turn, sc in each st across.']]);
    expect(text.slice(...places[1]!)).toBe('GUSSET (both sides)');
  });
});
