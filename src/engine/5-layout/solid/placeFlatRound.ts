import { placeFirstRound } from './seeds.ts';
import { pointAt, setPoint } from './vector.ts';
import type { Vector } from './vector.ts';
import type { Web, WebRow } from './web.ts';

/**
 * Places a round of a flat disc or oval in its plane: evenly on the line that runs at the height of its stitches outside the
 * one below, turned so that stitches stand as straight over their feet as may be.
 */
export function placeFlatRound(web: Web, at: Float64Array, row: WebRow, feet: readonly Vector[], heights: Float64Array): void {
  if (placeFirstRound(web, at, row, heights)) {
    for (let i = row.first; i < row.end; i++) at[i * 3 + 2] = 0;
    return;
  }
  const start = web.rows[0]!;
  const track = trackAround(pointAt(at, start.first)[0], pointAt(at, start.end - 1)[0]);
  const count = feet.length;
  let radius = 0;
  feet.forEach(([x, y], k) => (radius += (track.distance(x, y) + heights[row.first + k]!) / count));
  // From left to right the right side's ring runs anticlockwise about a ring, clockwise about a chain: see the seeds.
  const way = start.centre ? -1 : 1;
  let [re, im] = [0, 0];
  feet.forEach(([x, y], k) => {
    const turn = 2 * Math.PI * (track.share(x, y, radius) - (way * k) / count);
    re += Math.cos(turn);
    im += Math.sin(turn);
  });
  const from = Math.atan2(im, re) / (2 * Math.PI);
  for (let k = 0; k < count; k++) setPoint(at, row.first + k, [...track.point(from + (way * k) / count, radius), 0]);
}

/** A line around the stretch of the x axis from x0 to x1, at any distance from it: two straights and two half circles, clockwise from above x0. */
interface Track {
  readonly distance: (x: number, y: number) => number;
  /** Share of the way round at which a point lies nearest, 0 … 1. */
  readonly share: (x: number, y: number, radius: number) => number;
  readonly point: (share: number, radius: number) => readonly [x: number, y: number];
}

function trackAround(x0: number, x1: number): Track {
  const straight = x1 - x0;
  const whole = (radius: number): number => 2 * (straight + Math.PI * radius);
  return {
    distance: (x, y) => Math.hypot(x - Math.max(x0, Math.min(x1, x)), y),
    share: (x, y, radius) => {
      const arc = Math.PI * radius;
      if (x > x1) return (straight + radius * (Math.PI / 2 - Math.atan2(y, x - x1))) / whole(radius);
      // From below, by the left, to above.
      if (x < x0) return (2 * straight + arc + radius * (Math.PI / 2 + Math.atan2(y, x0 - x))) / whole(radius);
      return (y >= 0 ? x - x0 : straight + arc + x1 - x) / whole(radius);
    },
    point: (share, radius) => {
      const arc = Math.PI * radius;
      const along = (share - Math.floor(share)) * whole(radius);
      if (along < straight) return [x0 + along, radius];
      if (along < straight + arc) {
        const angle = Math.PI / 2 - (along - straight) / radius;
        return [x1 + radius * Math.cos(angle), radius * Math.sin(angle)];
      }
      if (along < 2 * straight + arc) return [x1 - (along - straight - arc), -radius];
      const angle = (along - 2 * straight - arc) / radius - Math.PI / 2;
      return [x0 - radius * Math.cos(angle), radius * Math.sin(angle)];
    },
  };
}
