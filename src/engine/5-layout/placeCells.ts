import { headOf, setStitch, stitchHeight, within } from './ground.ts';
import type { Ground } from './ground.ts';
import type { SlotPlan } from './placeRow.ts';
import type { RowSlots } from './rowSlots.ts';
import { slotWidth } from './slotWidth.ts';

/** Neighbours further apart than this many stitch widths don't share an edge: there is a hole between them. */
const APART = 1.4;

/**
 * Heads, feet and cells of a row's slots. A cell's top corners lie midway to its neighbours and its bottom edge is the
 * top edge of its bases (divided where they are shared), so the cells of a plain fabric share their edges exactly.
 */
export function placeCells(ground: Ground, { slots, stack }: RowSlots, plan: SlotPlan): void {
  const count = slots.length;
  for (let i = 0; i < count; i++) {
    const slot = slots[i]!;
    const head = [plan.x[i]!, plan.y[i]!] as const;
    const [left, right] = topEdge(ground, slots, plan, i);
    const standing = slot >= stack[0] && slot < stack[1];
    const tall = standing && !Number.isNaN(plan.baseY[i]!) ? plan.baseY[i]! - head[1] : stitchHeight(ground, slot);
    const foot = footOf(ground, standing ? stack[0] : slot, slot, plan.shift[i]!) ?? [head[0], head[1] + tall];
    const [footLeft, footRight] = bottomEdge(ground, slot, plan, i) ?? [[left[0], left[1] + tall], [right[0], right[1] + tall]];
    const corners = [...footLeft, ...footRight, ...right, ...left];
    if (standing) placeStack(ground, stack, head, foot, corners);
    else setStitch(ground, slot, head, foot, corners);
  }
}

type Point = readonly [x: number, y: number];

function topEdge(ground: Ground, slots: Int32Array, plan: SlotPlan, i: number): readonly [Point, Point] {
  return [edgePoint(ground, slots, plan, i, -1), edgePoint(ground, slots, plan, i, 1)];
}

function edgePoint(ground: Ground, slots: Int32Array, plan: SlotPlan, i: number, side: -1 | 1): Point {
  const x = plan.x[i]!;
  const own = slotWidth(ground, slots[i]!);
  const other = slots[i + side];
  if (other !== undefined) {
    const otherX = plan.x[i + side]!;
    const meant = (own + slotWidth(ground, other)) / 2;
    if (Math.abs(otherX - x) <= Math.max(meant, APART * ground.w)) return [(x + otherX) / 2, (plan.y[i]! + plan.y[i + side]!) / 2];
  }
  return [x + (side * own) / 2, plan.y[i]!];
}

/** Mean head of the bases, or null where there are none in reach. */
function footOf(ground: Ground, from: number, to: number, shift: number): Point | null {
  let x = 0;
  let y = 0;
  let count = 0;
  const { fabric } = ground;
  for (let b = fabric.baseStart[from]!; b < fabric.baseStart[to + 1]!; b++) {
    const base = fabric.bases[b]!;
    const head = base < from ? headOf(ground, base) : null;
    if (!head) continue;
    x += head[0];
    y += head[1];
    count++;
  }
  return count === 0 ? null : [x / count + shift, y / count];
}

/** The stretch of the bases' top edge that this stitch stands on. */
function bottomEdge(ground: Ground, slot: number, plan: SlotPlan, i: number): readonly [Point, Point] | null {
  if (Number.isNaN(plan.baseX[i]!) || Number.isNaN(plan.baseY[i]!)) return null;
  const { fabric } = ground;
  let leftMost: Point | null = null;
  let rightMost: Point | null = null;
  for (let b = fabric.baseStart[slot]!; b < fabric.baseStart[slot + 1]!; b++) {
    const edge = topOfBase(ground, fabric.bases[b]!);
    if (!edge) continue;
    if (!leftMost || edge[0][0] < leftMost[0]) leftMost = edge[0];
    if (!rightMost || edge[1][0] > rightMost[0]) rightMost = edge[1];
  }
  if (!leftMost || !rightMost) return null;
  const shift = plan.shift[i]!;
  const shared = plan.shared[i]!;
  const cut = (k: number): Point => {
    if (k === 0) return [leftMost[0] + shift, leftMost[1]];
    if (k === shared) return [rightMost[0] + shift, rightMost[1]];
    return [leftMost[0] + shift + ((rightMost[0] - leftMost[0]) * k) / shared, leftMost[1] + ((rightMost[1] - leftMost[1]) * k) / shared];
  };
  return [cut(plan.share[i]!), cut(plan.share[i]! + 1)];
}

/** Top edge of a base stitch: left and right point. */
function topOfBase(ground: Ground, base: number): readonly [Point, Point] | null {
  if (within(ground, base)) {
    const i = base - ground.first;
    if (!ground.placed[i]) return null;
    const c = ground.corners;
    return [[c[i * 8 + 6]!, c[i * 8 + 7]!], [c[i * 8 + 4]!, c[i * 8 + 5]!]];
  }
  const head = ground.outside.get(base);
  return head ? [[head[0] - ground.w / 2, head[1]], [head[0] + ground.w / 2, head[1]]] : null;
}

/** A counted turning chain: its chains share the slot's cell, one above the other from the foot to the head. */
function placeStack(ground: Ground, [from, end]: readonly [number, number], head: Point, foot: Point, corners: readonly number[]): void {
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
