import { describe, expect, it } from 'vitest';
import fc from 'fast-check';
import { finding, type Degree } from '../../../src/engine/notation/finding.ts';
import { markedText } from '../../../src/editor/words/markedText.ts';

const at = (degree: Degree, from: number, to: number) => finding(degree, 'unread', { text: [from, to] });

describe('text with its findings', () => {
  it('is cut at the borders, the worst finding on top', () => {
    const stretches = markedText('sc in next 5 stz', [at('doubtful', 3, 16), at('wrong', 13, 16)]);
    expect(stretches.map(({ text, finding: found }) => [text, found?.degree ?? null])).toEqual([['sc ', null], ['in next 5 ', 'doubtful'], ['stz', 'wrong']]);
  });

  it('marks one character where a range is empty, and nothing beyond the text', () => {
    expect(markedText('abc', [at('wrong', 1, 1)]).map((each) => each.text)).toEqual(['a', 'b', 'c']);
    expect(markedText('abc', [at('wrong', 7, 9)])).toEqual([{ text: 'abc', finding: null, clause: null }]);
    expect(markedText('', [at('wrong', 0, 0)])).toEqual([]);
  });

  it('is cut at the borders of clauses too, each stretch of the innermost', () => {
    const clauses = [{ range: [0, 17] as const, stitches: [1, 2] }, { range: [1, 5] as const, stitches: [1] }];
    expect(markedText('*sc 2; rep from *', [at('wrong', 4, 5)], clauses).map(({ text, finding: found, clause }) => [text, found !== null, clause])).toEqual([['*', false, 0], ['sc ', false, 1], ['2', true, 1], ['; rep from *', false, 0]]);
  });

  it('always gives the whole text back', () => {
    fc.assert(
      fc.property(fc.string(), fc.array(fc.tuple(fc.nat(30), fc.nat(30))), (text, ranges) => {
        const stretches = markedText(text, ranges.map(([a, b]) => at('wrong', Math.min(a, b), Math.max(a, b))));
        expect(stretches.map((each) => each.text).join('')).toBe(text);
      }),
      { seed: 7 },
    );
  });
});
