import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { evenRow, type ChangePlace } from '../../../../src/engine/2-construct/recipes/evenRow.ts';
import { eventRows, spreadEvenly } from '../../../../src/engine/2-construct/recipes/spreadEvenly.ts';
import { mergeBodies } from '../../../../src/engine/2-construct/recipes/mergeBodies.ts';
import { writeRow } from '../../../../src/engine/notation/writeRow.ts';
import { made, workText } from '../../workText.ts';

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

/** Whether each unit of a row is worked otherwise than the plain ones: increases by what stands in a stitch below, decreases by what a stitch draws together. */
function changesOf(from: number, to: number, place: ChangePlace): boolean[] {
  const { fabric } = workText(`Foundation: ch ${from}, join to form a ring.\nRnd 1: sc in each st around. (${from} sc)\nRnd 2: ${pruned(evenRow('sc', from, to, place))}`);
  const row = fabric.rows.at(-1)!;
  const drawn: number[] = [];
  const standing = new Map<number, number>();
  for (let stitch = row.first; stitch < row.end; stitch++) {
    const bases = fabric.bases.slice(fabric.baseStart[stitch]!, fabric.baseStart[stitch + 1]!);
    drawn.push(bases.length);
    for (const base of bases) standing.set(base, (standing.get(base) ?? 0) + 1);
  }
  const sizes = to >= from ? [...standing.values()] : drawn;
  const plain = Math.floor(Math.max(from, to) / Math.min(from, to));
  expect(sizes.every((size) => size === plain || size === plain + 1)).toBe(true);
  return sizes.map((size) => size > plain);
}

/** Plain units between each change and the next, all the way round. */
function gapsRound(changes: readonly boolean[]): number[] {
  const at = changes.flatMap((isChange, i) => (isChange ? [i] : []));
  return at.map((position, i) => (at[i + 1] ?? at[0]! + changes.length) - position - 1);
}

const unevenness = (gaps: readonly number[]) => Math.max(...gaps) - Math.min(...gaps);

/** The least unevenness that any choice of places gives, by trying all of them. */
function bestUnevenness(units: number, changes: number): number {
  let best = Infinity;
  for (let mask = 1; mask < 2 ** units; mask++) {
    const tried = Array.from({ length: units }, (_, i) => (mask & (2 ** i)) !== 0);
    if (tried.filter(Boolean).length === changes) best = Math.min(best, unevenness(gapsRound(tried)));
  }
  return best;
}

describe('where changes stand in a worked round', () => {
  it('is as even as any choice of places, by brute force over all of them, stacked and staggered', () => {
    for (const place of ['stacked', 'staggered'] as const) {
      for (let units = 4; units <= 10; units++) {
        for (let changes = 1; changes < units; changes++) {
          // Increases among `units` stitches; decreases that leave `units` stitches.
          for (const [from, to] of [[units, units + changes], [units + changes, units]] as const) {
            const found = changesOf(from, to, place);
            expect(found.filter(Boolean)).toHaveLength(changes);
            expect(unevenness(gapsRound(found)), `${from} to ${to}, ${place}`).toBe(bestUnevenness(units, changes));
          }
        }
      }
    }
  });

  it('differs by one stitch at most for any counts, stacked or staggered, round and at both edges', () => {
    fc.assert(
      fc.property(fc.integer({ min: 6, max: 140 }), fc.integer({ min: 6, max: 140 }), fc.constantFrom('stacked' as const, 'staggered' as const), (from, to, place) => {
        const found = changesOf(from, to, place);
        const gaps = gapsRound(found);
        if (gaps.length === 0) return;
        expect(unevenness(gaps)).toBeLessThanOrEqual(1);
        if (place === 'stacked') {
          expect(found.at(-1)).toBe(true);
          return;
        }
        // Half a gap before the first change and the other half after the last.
        const [before, after] = [found.indexOf(true), found.length - 1 - found.lastIndexOf(true)];
        expect(Math.abs(after - before)).toBeLessThanOrEqual(1);
        expect(before + after).toBe(Math.max(...gaps));
      }),
      { numRuns: 120, seed: 5 },
    );
  });

  it('of a disc of 6 stands above the one below when stacked, and half a gap aside when staggered', () => {
    for (let round = 3; round <= 9; round++) {
      const at = (place: ChangePlace) => changesOf(6 * (round - 1), 6 * round, place).flatMap((isChange, i) => (isChange ? [(i + 1) / (round - 1)] : []));
      // In sixths of the round.
      expect(at('stacked')).toEqual([1, 2, 3, 4, 5, 6]);
      at('staggered').forEach((sixth, i) => expect(Math.abs(sixth - (i + 0.5))).toBeLessThanOrEqual(0.5 / (round - 1) + 1e-9));
    }
  });
});

function pruned(body: Parameters<typeof mergeBodies>[0][number]): string {
  return writeRow(mergeBodies([body], [0], 1)!, null, { terms: 'us' });
}
