import { across, dot, plus, times, unit } from './vector.ts';
import type { Vector } from './vector.ts';
import type { Web, WebRow } from './web.ts';

/** How much further the work is turned than the difference in depth over the width of the ring, since it springs back; found by trying. */
const TURN_MORE = 2;
/** A round that begins a little later is no turn: the harmonic of a row over part of the ring, stitch widths. */
const LEAST_DEPTH = 1;
/** Radians; springs back to about a right angle. */
const MOST_TURN = 2.1;

/**
 * The direction in which the work goes on in the first full round after short rows, or over an opening that something deep is set
 * into (`opens`); null for any other round. The depth of
 * the columns round the ring has a first harmonic of amplitude A; the axis turns away from the deep side by twice 2A / D
 * radians, D the width of the ring.
 */
export function turnAfterShortRows(web: Web, row: WebRow, feet: readonly Vector[], depth: Float64Array, axis: Vector, opens: boolean): Vector | null {
  const { baseStart, bases, rowOf, rows } = web;
  const count = row.end - row.first;
  let onPartial = opens;
  let [re, im] = [0, 0];
  for (let i = row.first; i < row.end; i++) {
    // What hangs has the length of those beside it, which have one stitch more.
    let below = baseStart[i] === baseStart[i + 1] ? depth[i]! - web.height[i]! : 0;
    for (let k = baseStart[i]!; k < baseStart[i + 1]!; k++) {
      below += depth[bases[k]!]! / (baseStart[i + 1]! - baseStart[i]!);
      onPartial ||= rows[rowOf[bases[k]!]!]!.partial;
    }
    const angle = (2 * Math.PI * (i - row.first)) / count;
    re += (2 / count) * below * Math.cos(angle);
    im += (2 / count) * below * Math.sin(angle);
  }
  const amplitude = Math.hypot(re, im);
  if (!onPartial || amplitude < LEAST_DEPTH) return null;
  // The side of the ring that lies in the phase of the harmonic.
  const middle = feet.reduce((sum, foot) => plus(sum, foot, 1 / count), [0, 0, 0] as Vector);
  const deep = feet.reduce((sum, foot, k) => {
    const angle = (2 * Math.PI * k) / count;
    return plus(sum, plus(foot, middle, -1), (re * Math.cos(angle) + im * Math.sin(angle)) / amplitude);
  }, [0, 0, 0] as Vector);
  const side = unit(across(deep, axis), [0, 0, 0]);
  if (dot(side, side) < 0.5) return null;
  const turn = Math.min(MOST_TURN, (TURN_MORE * 2 * amplitude * Math.PI) / count);
  return unit(plus(times(axis, Math.cos(turn)), side, -Math.sin(turn)));
}
