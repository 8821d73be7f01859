import { pava } from './pava.ts';

/**
 * Positions nearest to `target` (weighted least squares) that keep at least `gap[i]` between `i` and `i + 1`: PAVA on the
 * positions less the gaps that came before. `gap` has one number fewer than `target`. Linear cost.
 */
export function spaced(target: Float64Array, weight: Float64Array, gap: Float64Array): Float64Array {
  const count = target.length;
  if (count > 0 && gap.length !== count - 1) throw new RangeError(`${count} positions need ${count - 1} gaps, got ${gap.length}`);
  const shifted = new Float64Array(count);
  let before = 0;
  for (let i = 0; i < count; i++) {
    shifted[i] = target[i]! - before;
    before += gap[i] ?? 0;
  }
  const result = pava(shifted, weight);
  before = 0;
  for (let i = 0; i < count; i++) {
    result[i]! += before;
    before += gap[i] ?? 0;
  }
  return result;
}
