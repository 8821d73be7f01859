import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { fitRow } from '../../../src/engine/5-layout/fitRow.ts';
import { pava } from '../../../src/engine/5-layout/pava.ts';
import { spaced } from '../../../src/engine/5-layout/spaced.ts';

/** Every way to cut the targets into blocks of equal value; the best one that ascends. */
function bruteForce(target: readonly number[], weight: readonly number[]): number[] {
  let best: { cost: number; values: number[] } = { cost: Infinity, values: [] };
  for (let cuts = 0; cuts < 1 << Math.max(0, target.length - 1); cuts++) {
    const values: number[] = [];
    for (let from = 0; from < target.length; ) {
      let end = from + 1;
      while (end < target.length && !(cuts & (1 << (end - 1)))) end++;
      let [sum, mass] = [0, 0];
      for (let i = from; i < end; i++) [sum, mass] = [sum + target[i]! * weight[i]!, mass + weight[i]!];
      for (let i = from; i < end; i++) values.push(sum / mass);
      from = end;
    }
    if (values.some((value, i) => i > 0 && value < values[i - 1]! - 1e-12)) continue;
    const cost = values.reduce((sum, value, i) => sum + weight[i]! * (value - target[i]!) ** 2, 0);
    if (cost < best.cost) best = { cost, values };
  }
  return best.values;
}

const row = fc.array(fc.record({ target: fc.double({ min: -20, max: 20, noNaN: true }), weight: fc.double({ min: 0.05, max: 4, noNaN: true }) }), { minLength: 1, maxLength: 9 });

describe('pooling adjacent violators', () => {
  it('finds the best ascending values that trying every partition finds', () => {
    fc.assert(
      fc.property(row, (items) => {
        const [target, weight] = [items.map((item) => item.target), items.map((item) => item.weight)];
        const found = pava(Float64Array.from(target), Float64Array.from(weight));
        bruteForce(target, weight).forEach((value, i) => expect(found[i]).toBeCloseTo(value, 8));
      }),
      { seed: 20, numRuns: 400 },
    );
  });

  it('refuses targets and weights of different lengths and says both', () => {
    expect(() => pava(new Float64Array(3), new Float64Array(2))).toThrow(new RangeError('3 targets but 2 weights'));
  });

  it('leaves what ascends as it is', () => {
    expect([...pava(Float64Array.of(1, 2, 2, 5), new Float64Array(4).fill(1))]).toEqual([1, 2, 2, 5]);
  });
});

describe('spacing a row', () => {
  const gaps = fc.array(fc.double({ min: 0.1, max: 3, noNaN: true }), { minLength: 0, maxLength: 30 });

  it('never puts two closer than their gap', () => {
    fc.assert(
      fc.property(gaps, fc.array(fc.double({ min: -50, max: 50, noNaN: true }), { minLength: 31, maxLength: 31 }), (gap, many) => {
        const x = spaced(Float64Array.from(many.slice(0, gap.length + 1)), new Float64Array(gap.length + 1).fill(1), Float64Array.from(gap));
        gap.forEach((least, i) => expect(x[i + 1]! - x[i]!).toBeGreaterThanOrEqual(least - 1e-9));
      }),
      { seed: 21, numRuns: 300 },
    );
  });

  it('returns a row that already stands at its gaps to the last bit', () => {
    const wanted = Float64Array.from({ length: 40 }, (_, i) => 0.1 + i * 6.25);
    expect(fitRow(wanted, new Float64Array(40).fill(1), new Float64Array(39).fill(6.25))).toEqual(wanted);
  });

  it('gives a mirrored row for mirrored wishes', () => {
    fc.assert(
      fc.property(fc.array(fc.double({ min: -30, max: 30, noNaN: true }), { minLength: 2, maxLength: 25 }), (many) => {
        const [wanted, ones, gap] = [Float64Array.from(many), new Float64Array(many.length).fill(1), new Float64Array(many.length - 1).fill(1)];
        const there = fitRow(wanted, ones, gap);
        const back = fitRow(wanted.map((value) => -value).reverse(), ones, gap).map((value) => -value).reverse();
        there.forEach((value, i) => expect(value).toBeCloseTo(back[i]!, 8));
      }),
      { seed: 22, numRuns: 200 },
    );
  });

  it('shares the hole that a decrease leaves with its neighbours', () => {
    // Columns 0 1 2 [3+4] 5 6 7: holes of 1.5 on either side of the decrease at 3.5.
    const x = fitRow(Float64Array.of(0, 1, 2, 3.5, 5, 6, 7), new Float64Array(7).fill(1), new Float64Array(6).fill(1));
    expect(x[3]! - x[2]!).toBeLessThan(1.4);
    expect(x[2]! - x[1]!).toBeLessThan(1.2);
    expect(x[3]).toBeCloseTo(3.5, 9);
  });
});
