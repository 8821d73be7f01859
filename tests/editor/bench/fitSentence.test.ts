import { describe, expect, it } from 'vitest';
import { fitSentence } from '../../../src/editor/bench/fitSentence.ts';
import { TICK } from './benchOf.ts';

const fit = { placement: 'p', width: 43, across: 5, up: 1, leftOver: { left: 1, right: 2 }, rowsCut: 0, cellsCut: 0, cutAtSeam: false, nearest: { down: 40, up: 48 } };

describe('how a motif comes out, in words', () => {
  it.each([
    [fit, 'Tick: 5 repeats in 43 stitches, 3 stitches left over (1 left, 2 right). Whole repeats fill 40 or 48.'],
    [{ ...fit, width: 40, leftOver: { left: 0, right: 0 }, nearest: { down: 40, up: 40 } }, 'Tick: 5 repeats in 40 stitches, nothing left over.'],
    [{ ...fit, across: 1, leftOver: { left: -2, right: 0 }, cutAtSeam: true }, 'Tick: 1 repeat in 43 stitches, 2 stitches over the edge. Whole repeats fill 40 or 48. It is cut at the seam.'],
    [{ ...fit, leftOver: { left: 0, right: 0 }, rowsCut: 2 }, 'Tick: 5 repeats in 43 stitches, nothing left over. 2 rows of it find no row to lie on.'],
  ])('%#', (given, words) => {
    expect(fitSentence(TICK, given)).toBe(words);
  });
});
