import type { Ground, IndexedRow } from './ground.ts';
import type { Ripple } from './ripple.ts';

/** Steepest that rows are drawn, radians: nearer to upright they would run into each other. */
const STEEPEST = 0.9;

/**
 * Bends rows that were placed as a plain grid (first pivots at x = 0, stitches a width apart) into zigzags. Beside a pivot each row moves on by
 * `shift` stitches, so rows lie at the angle φ with tan φ = shift · width / height: x shrinks by cos φ, y grows by 1 / cos φ, and y
 * rises and falls by sin φ from pivot to pivot; stitches then stand square on their rows. Linear cost.
 */
export function bendRipple(ground: Ground, rows: readonly IndexedRow[], ripple: Ripple): void {
  const { first, w, headX, headY, footX, footY, corners, fabric } = ground;
  const [bottom, top] = [rows[1]!, rows.at(-1)!];
  const rise = (footY[middleOf(bottom) - first]! - headY[middleOf(top) - first]!) / (rows.length - 1);
  const angle = Math.min(STEEPEST, Math.atan((ripple.shift * w) / rise));
  const [sin, cos] = [Math.sin(angle), Math.cos(angle)];
  const fall = fallAlong(ripple, w);
  const bend = (xs: Float64Array, ys: Float64Array, i: number, j: number): void => {
    const x = xs[i]!;
    ys[j] = ys[j]! / cos + fall(x) * sin;
    xs[i] = x * cos;
  };
  for (const row of rows) {
    let from = row.first;
    while (from > first && fabric.row[from - 1] === row.index) from--;
    for (let i = from - first; i < row.end - first; i++) {
      bend(headX, headY, i, i);
      bend(footX, footY, i, i);
      for (let c = i * 8; c < i * 8 + 8; c += 2) bend(corners, corners, c, c + 1);
    }
  }
}

function middleOf({ first, end }: IndexedRow): number {
  return (first + end) >> 1;
}

/** How far below the first pivot's level a row lies at x, in lengths along the row. */
function fallAlong({ pivots }: Ripple, w: number): (x: number) => number {
  const places = pivots.map(({ at }) => at * w);
  const levels = [0];
  for (let k = 1; k < places.length; k++) levels.push(levels[k - 1]! + pivots[k - 1]!.peak * (places[k]! - places[k - 1]!));
  return (x) => {
    if (x < 0) return -x * pivots[0]!.peak;
    let k = 0;
    while (k + 1 < places.length && x >= places[k + 1]!) k++;
    return levels[k]! + pivots[k]!.peak * (x - places[k]!);
  };
}
