import { describe, expect, it } from 'vitest';
import { sectionToText } from '../../../src/engine/readings/words/sectionText.ts';
import { mendText } from '../../../src/editor/shelf/mendText.ts';
import { sectionTried } from '../../../src/editor/words/sectionTried.ts';
import { benchOf, LEG } from '../bench/benchOf.ts';

const TEXT = sectionToText(LEG.sections[0]!);

describe('a section tried with another text', () => {
  it('has nothing to ask about as it stands', () => {
    expect(sectionTried(benchOf(LEG), 'leg', TEXT)).toMatchObject({ rows: 6, told: [], found: 0, marks: [] });
  });

  it('is marked at the very words, and mended there in every size', () => {
    const text = TEXT.replace('Rows 2-6: ch 1, turn, sc in each st across. (10 (12) sc)', 'Rows 2-6: ch 1, turn, sc in each\nst across. (11 (12) sc)');
    expect(text).not.toBe(TEXT);
    const tried = sectionTried(benchOf(LEG), 'leg', text);
    const { told, marks } = tried;
    expect(told.map(({ says }) => says)).toEqual(['Row 2: Says 11, makes 10.']);
    expect(marks.map(({ where }) => text.slice(...where.text!))).toEqual(['(11 (12) sc)']);
    expect(mendText(text, tried, [told[0]!.mend!])).toBe(text.replace('(11 (12) sc)', '(10 (12) sc)'));
  });

  it('tells of labels too, and of what it can\'t be', () => {
    const { told, marks } = sectionTried(benchOf(LEG), 'leg', TEXT.replace('Rows 2-6', 'Rows 4-8'));
    expect(told).toHaveLength(1);
    expect(marks).toHaveLength(1);
  });

  it('tells of a few things and how many there are, in a text of hundreds of rows', () => {
    const rows = Array.from({ length: 300 }, (_, i) => `Row ${i + 2}: ch 1, turn, sc in each st across. (${i === 0 ? 11 : 9} sc)`);
    const { told, found, marks } = sectionTried(benchOf(LEG), 'leg', [...TEXT.split('\n').slice(0, 2), ...rows].join('\n'));
    expect([told.length, found]).toEqual([8, 300]);
    expect(marks.length).toBeLessThanOrEqual(100);
  });
});
