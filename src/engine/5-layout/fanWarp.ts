import type { Warp } from './placeFlank.ts';

/** How much less the ends of the rows rise than their middle, as a part of that. */
const SAG = 0.37;
/** Most that one half of a row is bent, radians. */
const MOST_BEND = 1.35;

/** Rows above a hinge: where it lies, how wide rows are there and at the top. Lengths in mm, y down. */
export interface FanRows {
  readonly middleX: number;
  readonly hingeY: number;
  readonly hingeHalf: number;
  readonly topY: number;
  readonly topHalf: number;
}

/**
 * Bends straight rows above a hinge to a half fan: each row becomes an arc of the same length, whose ends rise less than its
 * middle, so that the sides of the wedge lean out by about a radian from level and stitches keep their distance along
 * the rows. What lies below the hinge stays. Constant cost a point.
 */
export function fanWarp({ middleX, hingeY, hingeHalf, topY, topHalf }: FanRows): Warp {
  const tall = Math.max(1e-9, hingeY - topY);
  let known = NaN;
  let curvature = 0;
  return ([x, y]) => {
    const up = hingeY - y;
    if (up <= 0) return [x, y];
    if (y !== known) {
      const half = hingeHalf + (topHalf - hingeHalf) * Math.min(1, up / tall);
      curvature = bendFor((SAG * up) / half) / half;
      known = y;
    }
    const along = x - middleX;
    if (curvature * Math.abs(along) < 1e-9) return [x, y];
    const angle = curvature * along;
    return [middleX + Math.sin(angle) / curvature, y + (1 - Math.cos(angle)) / curvature];
  };
}

/** The bend θ of half a row whose end drops by `part` of its length: (1 - cos θ) / θ = part. Newton, from the small-angle answer. */
function bendFor(part: number): number {
  let bend = Math.min(MOST_BEND, 2 * part);
  for (let n = 0; n < 6; n++) {
    const value = (1 - Math.cos(bend)) / bend - part;
    const slope = (Math.sin(bend) * bend - (1 - Math.cos(bend))) / (bend * bend);
    bend = Math.min(MOST_BEND, Math.max(1e-9, bend - value / slope));
  }
  return bend;
}
