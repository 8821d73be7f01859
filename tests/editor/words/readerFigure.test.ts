import { describe, expect, it } from 'vitest';
import { readerFigure } from '../../../src/editor/words/readerFigure.ts';

describe('a figure for its reader', () => {
  /** The decimal mark of whoever runs the tests (ECMA-402, Intl.NumberFormat). */
  const mark = new Intl.NumberFormat().formatToParts(1.5).find(({ type }) => type === 'decimal')!.value;

  it.each([
    [26.66, 1, 1, `26${mark}7`],
    [26, 1, 1, `26${mark}0`],
    [26, 1, 0, '26'],
    [12345.25, 2, 0, `12345${mark}25`],
    [0.4, 0, 0, '0'],
  ])('%d with %i places, %i at least', (value, places, least, figure) => {
    expect(readerFigure(value, places, least)).toBe(figure);
  });
});
