import { describe, expect, it } from 'vitest';
import { sectionToText } from '../../../src/engine/readings/words/sectionText.ts';
import { sectionTried } from '../../../src/editor/words/sectionTried.ts';
import { benchOf, LEG } from '../bench/benchOf.ts';

const TEXT = sectionToText(LEG.sections[0]!);

describe('a section tried with another text', () => {
  it('has nothing to ask about as it stands', () => {
    expect(sectionTried(benchOf(LEG), 'leg', TEXT)).toEqual({ rows: 6, told: [], marks: [] });
  });

  it('is marked at the very words, and mended there in every size', () => {
    const text = TEXT.replace('Rows 2-6: ch 1, turn, sc in each st across. (10 (12) sc)', 'Rows 2-6: ch 1, turn, sc in each\nst across. (11 (12) sc)');
    expect(text).not.toBe(TEXT);
    const { told, marks } = sectionTried(benchOf(LEG), 'leg', text);
    expect(told.map(({ says }) => says)).toEqual(['Row 2: Says 11, makes 10.']);
    expect(marks.map(({ where }) => text.slice(...where.text!))).toEqual(['(11 (12) sc)']);
    expect(told[0]!.mended).toBe(text.replace('(11 (12) sc)', '(10 (12) sc)'));
  });

  it('tells of labels too, and of what it can\'t be', () => {
    const { told, marks } = sectionTried(benchOf(LEG), 'leg', TEXT.replace('Rows 2-6', 'Rows 4-8'));
    expect(told).toHaveLength(1);
    expect(marks).toHaveLength(1);
  });
});
