import { stitchCode } from '../craft/stitches.ts';
import { stitchHeight } from './ground.ts';
import type { Ground } from './ground.ts';
import type { RowSlots } from './rowSlots.ts';

const CHAIN = stitchCode('ch');
const RING = stitchCode('ring');

/** Room kept free where rounds start, in stitch widths: the turning chain, the round's number, the join. */
export const START_ROOM = 2.2;

/** A round may be squeezed to this part of its stitches' widths before the disc is drawn larger. */
const SQUEEZE = 0.8;

/** Inner and outer radius of one round, mm. */
export interface Annulus {
  readonly inner: number;
  readonly outer: number;
}

/** The circles of each round of a disc: by the heights of its stitches, and wide enough to hold them. */
export function discRadii(ground: Ground, rows: readonly RowSlots[]): Annulus[] {
  const { w, h } = ground;
  let radius = 0;
  return rows.map((row, r) => {
    const ring = Math.max((meanHeight(ground, row) > 1.2 * h ? 0.7 : 0.35) * h, row.rings.length > 1 ? (0.55 * row.rings.length * w) / (2 * Math.PI) + 0.2 * h : 0);
    const inner = row.rings.length > 0 ? ring : radius;
    radius = isCentre(ground, row, r) ? Math.max(0.35 * h, (0.45 * row.slots.length * w) / (2 * Math.PI))
      : Math.max(inner + meanHeight(ground, row), (SQUEEZE * row.slots.length * w + START_ROOM * w) / (2 * Math.PI));
    return { inner: Math.min(inner, radius), outer: radius };
  });
}

/** A magic ring or a ring of chains that is a row of its own. */
function isCentre({ fabric }: Ground, { slots }: RowSlots, r: number): boolean {
  return r === 0 && slots.every((slot) => fabric.kind[slot] === RING || fabric.kind[slot] === CHAIN);
}

/** Mean height of a round's stitches, chains apart, mm. */
function meanHeight(ground: Ground, { slots, stack }: RowSlots): number {
  let [sum, count] = [0, 0];
  for (const slot of slots) {
    if (ground.fabric.kind[slot] === CHAIN || (slot >= stack[0] && slot < stack[1])) continue;
    sum += stitchHeight(ground, slot);
    count++;
  }
  return count > 0 ? sum / count : 0.4 * ground.h;
}
