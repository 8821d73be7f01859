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

/**
 * As `spaced`, within `[from, to]`: the first position not before `from`, the last not beyond `to`. Bounded isotonic regression
 * is the free one, cut off at the bounds (Barlow, Bartholomew, Bremner, Brunk 1972, "Statistical inference under order restrictions").
 * Gaps longer than the stretch give the first position at `from`. Linear cost.
 */
export function spacedWithin(target: Float64Array, weight: Float64Array, gap: Float64Array, from: number, to: number): Float64Array {
  const free = spaced(target, weight, gap);
  let before = 0;
  let whole = 0;
  for (const one of gap) whole += one;
  for (let i = 0; i < free.length; i++) {
    const [low, high] = [from + before, to - (whole - before)];
    free[i] = Math.max(low, Math.min(high, free[i]!));
    before += gap[i] ?? 0;
  }
  return free;
}
