import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { evenRow } from '../../../../src/engine/2-construct/recipes/evenRow.ts';
import { eventRows, spreadEvenly } from '../../../../src/engine/2-construct/recipes/spreadEvenly.ts';
import { mergeBodies } from '../../../../src/engine/2-construct/recipes/mergeBodies.ts';
import { writeRow } from '../../../../src/engine/notation/writeRow.ts';
import { made } from '../../workText.ts';

/** All ways to split a total into so many whole parts. */
function splits(total: number, parts: number): number[][] {
  if (parts === 1) return [[total]];
  return Array.from({ length: total + 1 }, (_, first) => splits(total - first, parts - 1).map((rest) => [first, ...rest])).flat();
}

/** How far the running sums of parts stray from an even line, at most. */
function stray(parts: readonly number[]): number {
  const total = parts.reduce((sum, part) => sum + part, 0);
  let sum = 0;
  return Math.max(...parts.map((part, i) => Math.abs((sum += part) - ((i + 1) * total) / parts.length)));
}

describe('spreading evenly', () => {
  it('gives the parts of the even-spacing sum: total divided by parts, the rest one more each', () => {
    // The sum of knitting handbooks: 47 stitches in 6 gaps are 7, five of them one longer (common practice).
    expect([...spreadEvenly(47, 6)].sort()).toEqual([7, 8, 8, 8, 8, 8]);
    expect(spreadEvenly(12, 4)).toEqual([3, 3, 3, 3]);
    expect(spreadEvenly(10, 4)).toEqual([3, 2, 3, 2]);
  });

  it('is as even as any split can be, by brute force over all of them', () => {
    for (let total = 0; total <= 9; total++) {
      for (let parts = 1; parts <= 5; parts++) {
        const spread = spreadEvenly(total, parts);
        const all = splits(total, parts);
        const squares = (list: readonly number[]) => list.reduce((sum, part) => sum + part * part, 0);
        expect(squares(spread)).toBe(Math.min(...all.map(squares)));
        expect(stray(spread)).toBeLessThanOrEqual(0.5);
        expect(stray(spread)).toBeLessThanOrEqual(Math.min(...all.map(stray)) + 0.5);
      }
    }
  });

  it('never differs by more than one, keeps the total, and never strays more than half', () => {
    fc.assert(
      fc.property(fc.nat(2000), fc.integer({ min: 1, max: 300 }), (total, parts) => {
        const spread = spreadEvenly(total, parts);
        expect(spread.reduce((sum, part) => sum + part, 0)).toBe(total);
        expect(Math.max(...spread) - Math.min(...spread)).toBeLessThanOrEqual(1);
        expect(stray(spread)).toBeLessThanOrEqual(0.5);
      }),
      { numRuns: 500, seed: 1 },
    );
  });

  it('puts events on rows of their own with gaps that differ by one at most', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 200 }), fc.nat(), (rows, seed) => {
        const events = 1 + (seed % rows);
        const at = eventRows(rows, events);
        expect(new Set(at).size).toBe(events);
        expect(at[0]!).toBeGreaterThanOrEqual(0);
        expect(at.at(-1)!).toBeLessThan(rows);
        const gaps = at.slice(1).map((row, i) => row - at[i]!);
        if (gaps.length > 0) expect(Math.max(...gaps) - Math.min(...gaps)).toBeLessThanOrEqual(1);
      }),
      { numRuns: 500, seed: 2 },
    );
  });

  it('refuses what can’t be', () => {
    expect(() => spreadEvenly(3.5, 2)).toThrow(RangeError);
    expect(() => spreadEvenly(3, 0)).toThrow(RangeError);
    expect(() => eventRows(3, 4)).toThrow(RangeError);
  });
});

describe('rows that change the count evenly', () => {
  it.each([
    [18, 24, 'stacked', '(sc in next 2 sts, 2 sc in next st) 6 times.'],
    [18, 24, 'staggered', 'sc in next st, 2 sc in next st, (sc in next 2 sts, 2 sc in next st) 5 times, sc in next st.'],
    [40, 46, 'stacked', '(sc in next 6 sts, 2 sc in next st) 4 times, (sc in next 5 sts, 2 sc in next st) 2 times.'],
    [24, 18, 'stacked', '(sc in next 2 sts, sc2tog) 6 times.'],
    [9, 3, 'stacked', 'sc3tog over next 9 sts.'],
    [6, 12, 'stacked', '2 sc in each st around.'],
  ] as const)('%i to %i, %s', (from, to, place, words) => {
    expect(pruned(evenRow('sc', from, to, place))).toBe(words);
  });

  it('make what they should of what is there, for any two counts', () => {
    fc.assert(
      fc.property(fc.integer({ min: 6, max: 90 }), fc.integer({ min: 3, max: 150 }), fc.constantFrom('stacked' as const, 'staggered' as const), (from, to, place) => {
        const counts = made(`Foundation: ch ${from}, join to form a ring.\nRnd 1: sc in each st around. (${from} sc)\nRnd 2: ${pruned(evenRow('sc', from, to, place))}`);
        expect(counts.slice(1)).toEqual([from, to]);
      }),
      { numRuns: 200, seed: 4 },
    );
  });
});

function pruned(body: Parameters<typeof mergeBodies>[0][number]): string {
  return writeRow(mergeBodies([body], [0], 1)!, null, { terms: 'us' });
}
