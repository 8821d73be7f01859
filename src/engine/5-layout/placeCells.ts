import { FLAG } from '../3-fabric/fabric.ts';
import { PLACED, seenY, setStitch, stitchHeight, within } from './ground.ts';
import type { Ground } from './ground.ts';
import { inRing } from './placeRow.ts';
import type { SlotPlan } from './placeRow.ts';
import { risesBeside } from './rowSlots.ts';
import type { RowSlots } from './rowSlots.ts';
import { slotWidth } from './slotWidth.ts';
import { spaceFeet } from './spaceFeet.ts';

/** Neighbours further apart than this many stitch widths don't share an edge: there is a hole between them. */
const APART = 1.4;

/**
 * Heads, feet and cells of a row's slots. A cell's top corners lie midway to its neighbours and its bottom edge is the
 * top edge of its bases (divided where they are shared), so the cells of a plain fabric share their edges exactly.
 */
export function placeCells(ground: Ground, { slots, stack, has }: RowSlots, plan: SlotPlan): void {
  const { corners } = ground;
  topEdges(ground, slots, plan);
  const feet = has & FLAG.inSpace ? spaceFeet(ground, slots) : null;
  for (let k = 0; k < slots.length; k++) {
    const slot = slots[k]!;
    const i = slot - ground.first;
    const standing = slot >= stack[0] && slot < stack[1];
    const tall = standing && !Number.isNaN(plan.baseY[k]!) ? plan.baseY[k]! - plan.y[k]! : stitchHeight(ground, slot);
    ground.headX[i] = plan.x[k]!;
    ground.headY[i] = plan.y[k]!;
    if (plan.detached || !placeFoot(ground, standing ? stack[0] : slot, slot, plan.shift[k]! + (feet?.[k] ?? 0))) {
      ground.footX[i] = plan.x[k]!;
      ground.footY[i] = plan.y[k]! + tall;
    }
    if (!bottomEdge(ground, slot, plan, k)) {
      corners[i * 8] = corners[i * 8 + 6]!;
      corners[i * 8 + 1] = corners[i * 8 + 7]! + tall;
      corners[i * 8 + 2] = corners[i * 8 + 4]!;
      corners[i * 8 + 3] = corners[i * 8 + 5]! + tall;
    }
    ground.placed[i] = PLACED;
    if (standing) placeStack(ground, stack);
  }
}

function topEdges(ground: Ground, slots: Int32Array, plan: SlotPlan): void {
  const { corners, w, first } = ground;
  const { x, y } = plan;
  const count = slots.length;
  for (let k = 0; k <= count; k++) {
    const own = plan.evenMm || (k < count ? slotWidth(ground, slots[k]!) * plan.squeeze : 0);
    const before = plan.evenMm || (k > 0 ? slotWidth(ground, slots[k - 1]!) * plan.squeeze : 0);
    const touch = k > 0 && k < count && Math.abs(x[k]! - x[k - 1]!) <= Math.max((own + before) / 2, APART * w) + 1e-9;
    if (k > 0) {
      const c = (slots[k - 1]! - first) * 8;
      corners[c + 4] = touch ? (x[k]! + x[k - 1]!) / 2 : x[k - 1]! + before / 2;
      corners[c + 5] = touch ? (y[k]! + y[k - 1]!) / 2 : y[k - 1]!;
    }
    if (k < count) {
      const c = (slots[k]! - first) * 8;
      corners[c + 6] = touch ? (x[k]! + x[k - 1]!) / 2 : x[k]! - own / 2;
      corners[c + 7] = touch ? (y[k]! + y[k - 1]!) / 2 : y[k]!;
    }
  }
}

/** Puts the foot at the mean head of the bases; false where there are none in reach. */
function placeFoot(ground: Ground, from: number, slot: number, shift: number): boolean {
  const { fabric, first } = ground;
  if (inRing(ground, slot)) return false;
  let x = 0;
  let y = 0;
  let count = 0;
  for (let b = fabric.baseStart[from]!; b < fabric.baseStart[slot + 1]!; b++) {
    const base = fabric.bases[b]!;
    if (base >= from) continue;
    if (from < slot && risesBeside(fabric, base)) x -= fabric.rows[fabric.row[slot]!]!.direction * ground.w;
    if (within(ground, base)) {
      if (!ground.placed[base - first]) continue;
      x += ground.headX[base - first]!;
      y += seenY(ground, ground.headY[base - first]!, base - first);
    } else {
      const head = ground.outside.get(base);
      if (!head) continue;
      x += head[0];
      y += head[1] - ground.frame.originY;
    }
    count++;
  }
  if (count === 0) return false;
  ground.footX[slot - first] = x / count + shift;
  ground.footY[slot - first] = y / count;
  return true;
}

/** Puts the bottom corners on the stretch of the bases' top edge that this stitch stands on; false where there is none. */
function bottomEdge(ground: Ground, slot: number, plan: SlotPlan, k: number): boolean {
  if (Number.isNaN(plan.baseX[k]!) || Number.isNaN(plan.baseY[k]!)) return false;
  const { fabric, first, corners, w } = ground;
  let x0 = Infinity;
  let y0 = 0;
  let x1 = -Infinity;
  let y1 = 0;
  for (let b = fabric.baseStart[slot]!; b < fabric.baseStart[slot + 1]!; b++) {
    const base = fabric.bases[b]!;
    const c = (base - first) * 8;
    const head = within(ground, base) ? null : ground.outside.get(base);
    if (head === undefined || (head === null && !ground.placed[base - first])) continue;
    const left = head === null ? corners[c + 6]! : head[0] - w / 2;
    const right = head === null ? corners[c + 4]! : head[0] + w / 2;
    if (left < x0) {
      x0 = left;
      y0 = head === null ? seenY(ground, corners[c + 7]!, base - first) : head[1] - ground.frame.originY;
    }
    if (right > x1) {
      x1 = right;
      y1 = head === null ? seenY(ground, corners[c + 5]!, base - first) : head[1] - ground.frame.originY;
    }
  }
  if (x0 > x1) return false;
  const shift = plan.shift[k]!;
  const shared = plan.shared[k]!;
  const share = plan.share[k]!;
  const c = (slot - first) * 8;
  corners[c] = (share === 0 ? x0 : x0 + ((x1 - x0) * share) / shared) + shift;
  corners[c + 1] = share === 0 ? y0 : y0 + ((y1 - y0) * share) / shared;
  corners[c + 2] = (share + 1 === shared ? x1 : x0 + ((x1 - x0) * (share + 1)) / shared) + shift;
  corners[c + 3] = share + 1 === shared ? y1 : y0 + ((y1 - y0) * (share + 1)) / shared;
  return true;
}

/** A counted turning chain: its chains share the slot's cell, one above the other from the foot to the head of its last. */
function placeStack(ground: Ground, [from, end]: readonly [number, number]): void {
  const i = end - 1 - ground.first;
  const head = [ground.headX[i]!, ground.headY[i]!] as const;
  const foot = [ground.footX[i]!, ground.footY[i]!] as const;
  const corners = Array.from(ground.corners.subarray(i * 8, i * 8 + 8));
  const count = end - from;
  const along = (a: number, b: number, t: number): number => (t === 1 ? b : a + (b - a) * t);
  for (let k = 0; k < count; k++) {
    const low = k / count;
    const high = (k + 1) / count;
    const at = (corner: number, other: number, t: number): readonly number[] => [
      along(corners[corner * 2]!, corners[other * 2]!, t), along(corners[corner * 2 + 1]!, corners[other * 2 + 1]!, t),
    ];
    setStitch(
      ground, from + k,
      [along(foot[0], head[0], high), along(foot[1], head[1], high)],
      [along(foot[0], head[0], low), along(foot[1], head[1], low)],
      [...at(0, 3, low), ...at(1, 2, low), ...at(1, 2, high), ...at(0, 3, high)],
    );
  }
}
