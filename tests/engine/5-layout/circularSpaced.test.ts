import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { circularSpaced } from '../../../src/engine/5-layout/circularSpaced.ts';
import { spaced, spacedWithin } from '../../../src/engine/5-layout/spaced.ts';

const PERIOD = 100;

/** Targets anywhere round the line, gaps of any sizes that fill `part` of it. */
const cases = fc
  .record({ many: fc.array(fc.record({ target: fc.double({ min: -PERIOD, max: 2 * PERIOD, noNaN: true }), gap: fc.double({ min: 0.1, max: 1, noNaN: true }) }), { minLength: 1, maxLength: 24 }), part: fc.double({ min: 0.1, max: 0.98, noNaN: true }) })
  .map(({ many, part }) => {
    const whole = many.reduce((sum, { gap }) => sum + gap, 0);
    return { target: Float64Array.from(many, ({ target }) => target).sort(), gap: Float64Array.from(many, ({ gap }) => (gap / whole) * part * PERIOD) };
  });

/** Targets near where they belong, as those of a round are, but in any order at close range. */
const rounds = fc
  .record({ noise: fc.array(fc.double({ min: -12, max: 12, noNaN: true }), { minLength: 3, maxLength: 30 }), part: fc.double({ min: 0.3, max: 0.98, noNaN: true }) })
  .map(({ noise, part }) => ({ target: Float64Array.from(noise, (off, i) => (i * PERIOD) / noise.length + off), gap: new Float64Array(noise.length).fill((part * PERIOD) / noise.length) }));

const ones = (count: number): Float64Array => new Float64Array(count).fill(1);

describe('spacing round a line', () => {
  it.each([['sorted targets over three turns and uneven gaps', cases, 31], ['targets as a round has them', rounds, 32]] as const)('gives with three turns what it gives with eleven: %s', (_, from, seed) => {
    fc.assert(
      fc.property(from, ({ target, gap }) => {
        const [three, eleven] = [circularSpaced(target, ones(target.length), gap, PERIOD), circularSpaced(target, ones(target.length), gap, PERIOD, 11)];
        three.forEach((value, i) => expect(Math.abs(value - eleven[i]!)).toBeLessThan(1e-9));
      }),
      { seed, numRuns: 600 },
    );
  });

  it('keeps every gap, also from the last to the first', () => {
    fc.assert(
      fc.property(cases, ({ target, gap }) => {
        const x = circularSpaced(target, ones(target.length), gap, PERIOD);
        x.forEach((value, i) => expect((i + 1 < x.length ? x[i + 1]! : x[0]! + PERIOD) - value).toBeGreaterThanOrEqual(gap[i]! - 1e-9));
      }),
      { seed: 33, numRuns: 300 },
    );
  });

  it('does not depend on where the round is begun', () => {
    fc.assert(
      fc.property(rounds, fc.integer({ min: 1, max: 29 }), ({ target, gap }, by) => {
        const count = target.length;
        const turn = by % count;
        const turned = Float64Array.from({ length: count }, (_, i) => target[(i + turn) % count]! + (i + turn >= count ? PERIOD : 0));
        const [plain, begun] = [circularSpaced(target, ones(count), gap, PERIOD), circularSpaced(turned, ones(count), gap, PERIOD)];
        begun.forEach((value, i) => expect(value).toBeCloseTo(plain[(i + turn) % count]! + (i + turn >= count ? PERIOD : 0), 8));
      }),
      { seed: 34, numRuns: 200 },
    );
  });

  it('leaves positions that keep their gaps where they are', () => {
    const target = Float64Array.of(5, 30, 55, 80);
    expect([...circularSpaced(target, ones(4), ones(4).fill(20), PERIOD)]).toEqual([...target]);
  });

  it('refuses gaps that are longer than the line, and says both', () => {
    expect(() => circularSpaced(ones(3), ones(3), ones(3).fill(40), PERIOD)).toThrow(new RangeError('gaps of 120 in all on a line of 100'));
    expect(() => circularSpaced(ones(3), ones(3), ones(2), PERIOD)).toThrow(new RangeError('3 positions round a line need 3 gaps, got 2'));
  });
});

describe('spacing between two ends', () => {
  it('is the nearest of all spaced positions between them', () => {
    fc.assert(
      fc.property(fc.array(fc.double({ min: -10, max: 30, noNaN: true }), { minLength: 1, maxLength: 5 }), (many) => {
        const target = Float64Array.from(many);
        const gap = new Float64Array(many.length - 1).fill(3);
        const found = spacedWithin(target, ones(many.length), gap, 0, 20);
        expect(found[0]!).toBeGreaterThanOrEqual(-1e-9);
        expect(found.at(-1)!).toBeLessThanOrEqual(20 + 1e-9);
        const cost = (x: ArrayLike<number>): number => many.reduce((sum, value, i) => sum + (x[i]! - value) ** 2, 0);
        // No step of a fine grid does better.
        const steps = Array.from({ length: 11 }, (_, k) => k * 2);
        const search = (chosen: number[]): void => {
          if (chosen.length === many.length) {
            expect(cost(chosen)).toBeGreaterThanOrEqual(cost(found) - 1e-6);
            return;
          }
          for (const step of steps) if (chosen.length === 0 || step - chosen.at(-1)! >= 3) search([...chosen, step]);
        };
        search([]);
      }),
      { seed: 35, numRuns: 60 },
    );
  });

  it('without ends in reach is plain spacing', () => {
    const [target, gap] = [Float64Array.of(3, 1, 2), Float64Array.of(1, 1)];
    expect(spacedWithin(target, ones(3), gap, -Infinity, Infinity)).toEqual(spaced(target, ones(3), gap));
  });
});
