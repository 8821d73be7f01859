import { lengthAt, mmToStation, ringPoint } from './ringCurve.ts';
import type { PlacedRound } from './placeRound.ts';

/** A closed band from feet to heads, all the way round: out along one line and back along the other. */
export function roundBand({ at, curve, order }: PlacedRound): number[] {
  // A multiple of 3, 4, 5 and 6, so that polygons keep their corners.
  const corners = order.length <= 30 ? 60 : order.length <= 60 ? 120 : 240;
  const points: number[] = [];
  // Corners of a polygon lie where its sides end: half a side from the start.
  const ring = (radius: number, from: number, step: number): void => {
    for (let k = 0; k <= corners; k++) {
      points.push(...ringPoint(curve, mmToStation(curve, ((from + step * k) / corners) * lengthAt(curve, radius), radius), radius));
    }
  };
  ring(at.heads, 0, 1);
  ring(Math.max(1e-6, at.feet), corners, -1);
  return points;
}
