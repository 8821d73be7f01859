import { describe, expect, it } from 'vitest';
import { cmOf, differenceFigure, lengthTyped, lengthWords, yarnWords } from '../../../src/editor/sizes/lengths.ts';

describe('lengths in centimetres and inches', () => {
  it.each([
    { cm: 24.5, unit: 'cm', words: '24.5 cm', source: 'as it is' },
    { cm: 24.5, unit: 'in', words: '9.65 in', source: '24.5 ÷ 2.54, by hand' },
    { cm: 2.54, unit: 'in', words: '1.00 in', source: 'the inch is 2.54 cm by definition' },
  ] as const)('says $cm cm as $words', ({ cm, unit, words }) => {
    expect(lengthWords(cm, unit)).toBe(words);
  });

  it('gives inches back as they were typed', () => {
    for (const inches of [0.25, 9.75, 12.5, 100]) expect(lengthTyped(cmOf(inches, 'in'), 'in')).toBe(String(inches));
  });

  it('signs a difference, and says 0 where nothing is to be seen', () => {
    expect([differenceFigure(0.44, 'cm'), differenceFigure(-1.25, 'cm'), differenceFigure(0.04, 'cm'), differenceFigure(-2.54, 'in')]).toEqual(['+0.4', '−1.3', '0', '−1.00']);
  });

  it('says yarn in metres, or in yards of 0.9144 m', () => {
    expect([yarnWords(91.44, 'in'), yarnWords(91.44, 'cm'), yarnWords(4.26, 'cm')]).toEqual(['100 yd', '91 m', '4.3 m']);
  });
});
