/**
 * Isotonic regression by pooling adjacent violators: the non-decreasing `z` that minimises `Σ weight (z - target)²`.
 * Ayer, Brunk, Ewing, Reid, Silverman (1955), "An empirical distribution function for sampling with incomplete
 * information". One pass, linear cost. Weights must be above 0. Refuses arrays of different lengths.
 */
export function pava(target: Float64Array, weight: Float64Array): Float64Array {
  const count = target.length;
  if (weight.length !== count) throw new RangeError(`${count} targets but ${weight.length} weights`);
  const result = new Float64Array(count);
  const value = new Float64Array(count);
  const mass = new Float64Array(count);
  const end = new Int32Array(count);
  let blocks = 0;
  for (let i = 0; i < count; i++) {
    value[blocks] = target[i]!;
    mass[blocks] = weight[i]!;
    end[blocks] = i + 1;
    while (blocks > 0 && value[blocks - 1]! > value[blocks]!) {
      const together = mass[blocks - 1]! + mass[blocks]!;
      value[blocks - 1] = (value[blocks - 1]! * mass[blocks - 1]! + value[blocks]! * mass[blocks]!) / together;
      mass[blocks - 1] = together;
      end[blocks - 1] = i + 1;
      blocks--;
    }
    blocks++;
  }
  for (let block = 0, i = 0; block < blocks; block++) {
    for (; i < end[block]!; i++) result[i] = value[block]!;
  }
  return result;
}
