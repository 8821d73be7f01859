import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { plainCall } from '../../../../src/engine/notation/instruction.ts';
import type { Instruction } from '../../../../src/engine/notation/instruction.ts';
import { foldSteps } from '../../../../src/engine/readings/words/foldSteps.ts';
import type { Step } from '../../../../src/engine/readings/words/unrollRow.ts';

/** Steps of a row in two yarns and two stitches. */
const stepsOf = (row: readonly number[]): Step[] =>
  row.map((code) => ({ node: { kind: 'work', stitch: plainCall(code & 2 ? 'hdc' : 'sc'), each: 1, into: { at: 'next', count: 1, what: 'st' }, range: [0, 0] }, yarn: code & 1, endsIn: code & 1 }));
const LIMITS = { toEnd: 'end', chainCounts: false, letters: ['A', 'B'] } as const;

/** Runs that a stretch of a row is said in. */
const runsIn = (row: readonly number[]): number => row.reduce((sum, code, at) => sum + (at > 0 && row[at - 1] === code ? 0 : 1), 0);

/** Clauses that stitches are said in; a repeat's own words weigh as one and a half. */
function weight(body: readonly Instruction[]): number {
  return body.reduce((sum, node) => sum + (node.kind === 'repeat' ? weight(node.body) + 1.5 : node.kind === 'yarn' ? 0 : 1), 0);
}

/** The least weight of all ways to fold one repeat of a row: every period of two runs or more, every start, every number of times. */
function least(row: readonly number[]): number {
  let best = runsIn(row);
  for (let period = 2; period * 2 <= row.length; period++) {
    for (let start = 0; start + 2 * period <= row.length; start++) {
      const unit = row.slice(start, start + period);
      if (runsIn(unit) < 2) continue;
      for (let times = 2; start + times * period <= row.length; times++) {
        if (!row.slice(start + (times - 1) * period, start + times * period).every((code, at) => code === unit[at])) break;
        best = Math.min(best, runsIn(row.slice(0, start)) + runsIn(unit) + 1.5 + runsIn(row.slice(start + times * period)));
      }
    }
  }
  return best;
}

describe('a row folded from its stitches', () => {
  it('is never longer than unfolded, and the shortest of all periods, starts and times', () => {
    let folded = 0;
    const row = fc.oneof(
      fc.array(fc.integer({ min: 0, max: 3 }), { minLength: 1, maxLength: 24 }),
      fc.record({ lead: fc.array(fc.nat(3), { maxLength: 4 }), unit: fc.array(fc.nat(3), { minLength: 2, maxLength: 6 }), times: fc.integer({ min: 2, max: 5 }), rest: fc.array(fc.nat(3), { maxLength: 4 }) }).map(({ lead, unit, times, rest }) => [...lead, ...Array.from({ length: times }, () => unit).flat(), ...rest]),
    );
    fc.assert(
      fc.property(row, (codes) => {
        const own = weight(foldSteps(stepsOf(codes), LIMITS));
        expect(own).toBeLessThanOrEqual(runsIn(codes));
        expect(own).toBe(least(codes));
        if (own < runsIn(codes)) folded++;
      }),
      { numRuns: 3000, seed: 61 },
    );
    expect(folded).toBeGreaterThan(300);
  });
});
