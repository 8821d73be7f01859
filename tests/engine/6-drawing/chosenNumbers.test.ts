import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { chosenNumbers, type StandingNumber } from '../../../src/engine/6-drawing/chosenNumbers.ts';

/** Rows back and forth, `apart` from one to the next: odd ones on the right, even ones on the left. */
function turnedRows(count: number, apart: number): StandingNumber[] {
  return Array.from({ length: count }, (_, i) => ({ number: i + 1, side: i % 2 === 0 ? 'right' : 'left', y: -i * apart }));
}
const shown = (numbers: readonly StandingNumber[], gap: number) => chosenNumbers(numbers, gap).chosen.map((i) => numbers[i]!.number);

describe('row numbers are thinned out', () => {
  it.each([
    ['not at all where there is room', 12, 6, [1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12]],
    ['to every second of either side', 12, 3, [1, 2, 5, 6, 9, 12]],
    ['to fives', 23, 2, [1, 10, 15, 20, 23]],
    ['to tens where the fives of a side are too near', 45, 0.9, [1, 20, 40, 45]],
    ['to twenties', 45, 0.5, [1, 20, 40, 45]],
  ])('%s, with the first and the last', (_, count, apart, expected) => {
    expect(shown(turnedRows(count, apart), 10).filter((number) => expected.includes(number!))).toEqual(expected);
    expect(shown(turnedRows(count, apart), 10)).toHaveLength(expected.length);
  });

  it('alike on both sides of a heel whose first row stands beside a later one', () => {
    // As in a wedge: row 1 at the tip of the flank, just above row 15; the rows of a side two heights apart.
    const heel: StandingNumber[] = [...turnedRows(16, 12).slice(2), { number: 1, side: 'right', y: -14 * 12 - 11.4 }, { number: 17, side: 'right', y: -14 * 12 - 22.8 }, { number: 2, side: 'left', y: -16 * 12 }];
    const numbers = shown(heel, 12.65);
    expect(numbers).toContain(1);
    expect(numbers).toContain(17);
    expect([1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12, 13, 14, 15, 16, 17].filter((number) => !numbers.includes(number)).length).toBeLessThanOrEqual(3);
  });

  it('so that none stands nearer than asked to another of its side, names always wanted', () => {
    const number = fc.record({ number: fc.option(fc.integer({ min: 1, max: 400 }), { nil: null }), side: fc.constantFrom('left' as const, 'right' as const), y: fc.integer({ min: 0, max: 500 }) });
    fc.assert(
      fc.property(fc.array(number, { maxLength: 60 }), fc.integer({ min: 1, max: 40 }), (numbers, gap) => {
        const { chosen } = chosenNumbers(numbers, gap);
        for (const i of chosen) {
          for (const j of chosen) {
            const [a, b] = [numbers[i]!, numbers[j]!];
            if (i < j && a.side === b.side && a.y !== b.y) expect(Math.abs(a.y - b.y)).toBeGreaterThanOrEqual(0.8 * gap - 1e-6);
          }
        }
        expect(numbers.length === 0 || chosen.length > 0).toBe(true);
      }),
      { seed: 7, numRuns: 400 },
    );
  });
});
