import { fanned, meanOf } from './feet.ts';
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

/** Places a row that doesn't meet its own start. */
export function placeRow(at: Float64Array, row: WebRow, feet: readonly Vector[], wales: readonly Vector[], heights: Float64Array): void {
  const mean = unit(meanOf(wales), [0, 1, 0]);
  const spread = fanned(feet, false);
  feet.forEach((_, k) => {
    const way = unit(plus(wales[k]!, mean), mean);
    setPoint(at, row.first + k, plus(spread[k]!, way, heights[row.first + k]!));
  });
}
