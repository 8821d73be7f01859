/**
 * In rounds, a decrease follows the columns of the longer run of stitches beside it, so that the runs between paired
 * decreases stay exact columns and a hole opens beside them, as the flat halves of a toe lie. `wanted` is changed in place;
 * `decrease[i]` marks slots drawn from several bases, `gap` the least distances. Left to right; the round closes. Linear.
 */
export function goreWishes(wanted: Float64Array, decrease: Uint8Array, gap: Float64Array): void {
  const count = wanted.length;
  const toLeft = runs(decrease, -1);
  const toRight = runs(decrease, 1);
  for (let i = 0; i < count; i++) {
    if (!decrease[i] || (toLeft[i] === 0 && toRight[i] === 0)) continue;
    const left = toLeft[i]! >= toRight[i]!;
    if (left && i > 0 && !decrease[i - 1]) wanted[i] = wanted[i - 1]! + gap[i - 1]!;
    if (!left && i < count - 1 && !decrease[i + 1]) wanted[i] = wanted[i + 1]! - gap[i]!;
  }
}

/** Plain stitches between each slot and the nearest decrease on one side, round the ring. */
function runs(decrease: Uint8Array, step: -1 | 1): Int32Array {
  const count = decrease.length;
  const run = new Int32Array(count);
  let plain = 0;
  for (let k = 0; k < 2 * count; k++) {
    // Twice round, against the side looked at: the first lap finds what lies beyond the cut.
    const i = step > 0 ? count - 1 - (k % count) : k % count;
    run[i] = plain;
    plain = decrease[i] ? 0 : plain + 1;
  }
  return run;
}
