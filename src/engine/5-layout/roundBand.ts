import { lengthAt, mmToStation, ringPoint } from './ringCurve.ts';
import type { PlacedRound } from './placeRound.ts';

/** Corners of a full round's outline. */
const FEWEST = 48;

/** A closed band from feet to heads, all the way round: out along one line and back along the other. */
export function roundBand({ at, curve, order }: PlacedRound): number[] {
  const corners = Math.max(FEWEST, Math.min(240, 2 * order.length));
  const points: number[] = [];
  const ring = (radius: number, from: number, step: number): void => {
    for (let k = 0; k <= corners; k++) {
      const { x, y } = ringPoint(curve, mmToStation(curve, ((from + step * k) / corners) * lengthAt(curve, radius), radius), radius);
      points.push(x, y);
    }
  };
  ring(at.heads, 0, 1);
  ring(Math.max(1e-6, at.feet), corners, -1);
  return points;
}
