import { fanned, meanOf, smoothed, walesUnder } from './feet.ts';
import { placeFirstRound } from './seeds.ts';
import { across, lengthOf, plus, setPoint, times, unit } from './vector.ts';
import type { Vector } from './vector.ts';
import type { Web, WebRow } from './web.ts';

/** How firmly a direction is held after short rows. */
const HELD = 0.85;
/** A round that grows faster than it can lie flat starts with waves this high: else nothing tells it which way to go. */
const WAVE = 0.06;

/** Places a round over its feet; returns the cosine of its slope: 1 straight on, 0 straight outwards or inwards. */
export function placeRound(web: Web, at: Float64Array, row: WebRow, feet: readonly Vector[], wales: readonly Vector[], axis: Vector, held: boolean, heights: Float64Array): number {
  const middle = meanOf(feet);
  const count = feet.length;
  let around = 0;
  let height = 0;
  let out = 0;
  feet.forEach((foot, k) => {
    around += web.width[row.first + k]!;
    height += heights[row.first + k]! / count;
    out += lengthOf(across(plus(foot, middle, -1), axis)) / count;
  });
  const wanted = (around / (2 * Math.PI) - out) / height;
  const sine = Math.max(-1, Math.min(1, wanted));
  const cosine = Math.sqrt(1 - sine * sine);
  fanned(feet, true).forEach((foot, k) => {
    const radial = unit(across(plus(foot, middle, -1), axis), [0, 0, 0]);
    const asRound = plus(times(axis, cosine + (wanted > 1.05 ? WAVE * Math.cos((6 * Math.PI * k) / count) : 0)), radial, sine);
    const own = held ? 1 - HELD : 0.5;
    const way = unit(plus(times(wales[k]!, own), asRound, 1 - own), axis);
    setPoint(at, row.first + k, plus(foot, way, heights[row.first + k]!));
  });
  return cosine;
}

/** Places a round of a flat disc in its plane: evenly, straight outwards. */
export function placeAround(web: Web, at: Float64Array, row: WebRow, feet: readonly Vector[], heights: Float64Array): void {
  if (placeFirstRound(web, at, row, heights)) {
    for (let i = row.first; i < row.end; i++) at[i * 3 + 2] = 0;
    return;
  }
  const count = feet.length;
  let [re, im, out] = [0, 0, 0];
  feet.forEach(([x, y], k) => {
    const turn = Math.atan2(y, x) - (2 * Math.PI * k) / count;
    re += Math.cos(turn);
    im += Math.sin(turn);
    out += (Math.hypot(x, y) + heights[row.first + k]!) / count;
  });
  const start = Math.atan2(im, re);
  for (let k = 0; k < count; k++) {
    const angle = start + (2 * Math.PI * k) / count;
    setPoint(at, row.first + k, [out * Math.cos(angle), out * Math.sin(angle), 0]);
  }
}

/** Places a row that doesn't meet its own start. */
export function placeRow(web: Web, at: Float64Array, row: WebRow, feet: readonly Vector[], heights: Float64Array): void {
  const wales = smoothed(walesUnder(web, at, row), false);
  const mean = unit(meanOf(wales), [0, 1, 0]);
  const spread = fanned(feet, false);
  feet.forEach((_, k) => {
    const way = unit(plus(wales[k]!, mean), mean);
    setPoint(at, row.first + k, plus(spread[k]!, way, heights[row.first + k]!));
  });
}
