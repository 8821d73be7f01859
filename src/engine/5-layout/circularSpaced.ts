import { pava } from './pava.ts';

/**
 * Positions round a closed line of length `period`, nearest to `target` (weighted least squares), that keep at least `gap[i]` from
 * `i` to `i + 1`, and `gap.at(-1)` from the last to the first one turn on. PAVA on three turns of the positions less the gaps
 * that came before; the middle turn is the answer, since no pooled block is longer than a turn as long as the gaps leave
 * some of the line free. Targets and results are unwrapped: they may lie beyond one turn. Refuses gaps longer than the line.
 * Linear cost.
 */
export function circularSpaced(target: Float64Array, weight: Float64Array, gap: Float64Array, period: number, turns = 3): Float64Array {
  const count = target.length;
  if (gap.length !== count) throw new RangeError(`${count} positions round a line need ${count} gaps, got ${gap.length}`);
  let whole = 0;
  for (const one of gap) whole += one;
  if (whole > period * (1 + 1e-9)) throw new RangeError(`gaps of ${whole} in all on a line of ${period}`);
  const shifted = new Float64Array(count * turns);
  const heavy = new Float64Array(count * turns);
  const middle = turns >> 1;
  let before = 0;
  for (let i = 0; i < count; i++) {
    for (let turn = 0; turn < turns; turn++) {
      shifted[turn * count + i] = target[i]! - before + (turn - middle) * (period - whole);
      heavy[turn * count + i] = weight[i]!;
    }
    before += gap[i]!;
  }
  const fitted = pava(shifted, heavy).subarray(middle * count, (middle + 1) * count);
  const result = new Float64Array(count);
  before = 0;
  for (let i = 0; i < count; i++) {
    result[i] = fitted[i]! + before;
    before += gap[i]!;
  }
  return result;
}
