import { stitchCode } from '../craft/stitches.ts';
import type { Ground } from './ground.ts';
import { stitchHeight } from './ground.ts';
import type { RowSlots } from './rowSlots.ts';
import { isSpaceChain, slotLeast } from './slotWidth.ts';

const CHAIN = stitchCode('ch');

/** Room between the last and the first stitch of a round, in stitch widths: the turning chain, the round's number, the join. */
const START_ROOM = 1.3;
/** The same where nothing but the number and a mark for the start stands there. */
const SPIRAL_ROOM = 1.3;
/** What a chain of a space takes of the line at least, in stitch widths. */
const LEAST_CHAIN = 0.3;

/** What a round takes along its line at its stitches' own widths. */
export interface RoundWidths {
  /** Width of each slot in anticlockwise order, mm. */
  readonly own: Float64Array;
  /** Room at the start, mm. */
  readonly room: number;
  readonly sum: number;
  /** The least they can do with: chains of a space rise to arches. */
  readonly least: number;
}

/** Slots of a round in the order in which they lie anticlockwise, heads outwards, right side facing: `slots` the other way round. */
export function anticlockwise({ slots }: RowSlots): Int32Array {
  return slots.toReversed();
}

/** Widths of a round's slots and of its start. */
export function roundWidths(ground: Ground, slots: RowSlots): RoundWidths {
  const order = anticlockwise(slots);
  const own = Float64Array.from(order, (slot) => slotLeast(ground, slot));
  let least = 0;
  order.forEach((slot, k) => (least += isSpaceChain(ground, slot) ? LEAST_CHAIN * ground.w : own[k]!));
  const plain = slots.turning.length > 0 || slots.joins.length > 0;
  const room = (plain ? START_ROOM : SPIRAL_ROOM) * ground.w;
  return { own, room, sum: own.reduce((sum, width) => sum + width, room), least: least + room };
}

/** Mean height of a round's stitches, chains apart, mm. */
export function meanHeight(ground: Ground, { slots, stack }: RowSlots): number {
  let [sum, count] = [0, 0];
  for (const slot of slots) {
    if (ground.fabric.kind[slot] === CHAIN || (slot >= stack[0] && slot < stack[1])) continue;
    sum += stitchHeight(ground, slot);
    count++;
  }
  return count > 0 ? sum / count : 0.4 * ground.h;
}
