import { stitchCode } from '../craft/stitches.ts';
import type { Ground } from './ground.ts';
import { lengthAt, roundness } from './ringCurve.ts';
import type { RingCurve } from './ringCurve.ts';
import type { RoundWidths } from './roundWidths.ts';
import { meanHeight } from './roundWidths.ts';
import type { RowSlots } from './rowSlots.ts';

const CHAIN = stitchCode('ch');
const RING = stitchCode('ring');

/** A round may be squeezed to this part of its stitches' widths before it is drawn larger. */
const SQUEEZE = 0.8;
/** Half the thickness of a foundation chain, in single-crochet heights. */
const CHAIN_HALF = 0.25;

/** Radius of a round's feet and of its heads, mm from the core; feet are further out where the work goes inwards. */
export interface Annulus {
  readonly feet: number;
  readonly heads: number;
}

/** The lines of each round worked outwards: by the heights of its stitches, and long enough to hold them. */
export function radiiOutwards(ground: Ground, curve: RingCurve, rows: readonly RowSlots[], widths: readonly RoundWidths[]): Annulus[] {
  const { w, h } = ground;
  let radius = curve.halfMm > 0 ? CHAIN_HALF * h : 0;
  return rows.map((row, r) => {
    if (r === 0 && curve.halfMm > 0) return { feet: 0, heads: radius };
    if (r === 0 && isCentre(ground, row)) {
      radius = Math.max(0.35 * h, (0.45 * row.slots.length * w) / (2 * Math.PI));
      return { feet: 0, heads: radius };
    }
    const height = meanHeight(ground, row);
    // A ring of chains made in the same round lies inside its stitches.
    const ring = Math.max((height > 1.2 * h ? 0.7 : 0.35) * h, row.rings.length > 1 ? (0.55 * row.rings.length * w) / (2 * Math.PI) + 0.2 * h : 0);
    const feet = row.rings.length > 0 ? ring : radius;
    radius = Math.max(feet + height, holds(curve, widths[r]!.least));
    return { feet, heads: radius };
  });
}

/** The lines of each round worked inwards, found from the last one outwards. */
export function radiiInwards(ground: Ground, curve: RingCurve, rows: readonly RowSlots[], widths: readonly RoundWidths[]): Annulus[] {
  const radii: Annulus[] = [];
  let heads = Math.max(0.5 * ground.h, holds(curve, widths.at(-1)?.least ?? 0));
  for (let r = rows.length - 1; r >= 0; r--) {
    const own = Math.max(heads, holds(curve, widths[r]!.least));
    const feet = own + meanHeight(ground, rows[r]!);
    radii[r] = { feet, heads: own };
    heads = feet;
  }
  return radii;
}

/** The least radius whose line holds stitches of so much width, squeezed as far as may be. */
function holds(curve: RingCurve, widthMm: number): number {
  return Math.max(0, (SQUEEZE * widthMm - lengthAt(curve, 0)) / roundness(curve));
}

/** A magic ring or a ring of chains that is a row of its own. */
export function isCentre({ fabric }: Ground, { slots }: RowSlots): boolean {
  return slots.every((slot) => fabric.kind[slot] === RING || fabric.kind[slot] === CHAIN);
}
