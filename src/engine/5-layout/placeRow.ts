import { FLAG } from '../3-fabric/fabric.ts';
import { archSpaces } from './archChains.ts';
import { fitRow } from './fitRow.ts';
import { goreWishes } from './goreWishes.ts';
import { seenY, within } from './ground.ts';
import type { Ground, IndexedRow } from './ground.ts';
import { placeBeside } from './placeBeside.ts';
import { placeCells } from './placeCells.ts';
import { rowHeights } from './rowHeights.ts';
import { risesBeside } from './rowSlots.ts';
import type { RowSlots } from './rowSlots.ts';
import { rowWishes } from './rowWishes.ts';
import { slotLeast, slotWidth } from './slotWidth.ts';
import { spacedWithin } from './spaced.ts';

/** What a row wants, worked out slot by slot (left to right). */
export interface SlotPlan {
  readonly x: Float64Array;
  readonly y: Float64Array;
  /** Mean head of the bases, moved by whole turns of a tube; NaN without bases. */
  readonly baseX: Float64Array;
  readonly baseY: Float64Array;
  /** What was added to the bases' own x to unroll a tube. */
  readonly shift: Float64Array;
  /** Place among the stitches worked into the same base, and how many they are. */
  readonly share: Int32Array;
  readonly shared: Int32Array;
  /** Worked round the end of a foundation: the row lies straight, its stitches hang over no base. */
  readonly detached: boolean;
  /** Part of their own widths that the slots of a round are squeezed to, 1 for none. */
  squeeze: number;
  /** Width of all slots where it isn't their own, mm; else 0. */
  readonly evenMm: number;
}

/** How a row is placed: where a row without any base starts, and the circumference of the round below for a tube. */
export interface RowPlacing {
  readonly startX: number;
  readonly baseY: number;
  /** Rounds keep their columns and open holes at decreases; rows draw in. */
  readonly inRounds: boolean;
  /** Left and right edge of the round below, mm; null where there is none. */
  readonly around: readonly [left: number, right: number] | null;
  /** Width of every slot of a round that is spread evenly round a tube that widens, mm; 0 for the stitches' own widths. */
  readonly evenMm: number;
  /** Moves every stitch by this much in the working direction (lean of unturned rounds), mm. */
  readonly leanMm: number;
}

/** Places one row of a section: slots, cells, turning chains and joins. Linear in the row's stitches. */
export function placeRow(ground: Ground, row: IndexedRow, slots: RowSlots, placing: RowPlacing): void {
  const plan = planRow(ground, row, slots, placing);
  placeCells(ground, slots, plan);
  if (slots.has & FLAG.space) archSpaces(ground, slots.slots, false);
  placeBeside(ground, row, slots);
}

function planRow(ground: Ground, row: IndexedRow, { slots, stack, reversed, has }: RowSlots, placing: RowPlacing): SlotPlan {
  const count = slots.length;
  const plan: SlotPlan = {
    x: new Float64Array(count), y: new Float64Array(count), baseX: new Float64Array(count).fill(NaN), baseY: new Float64Array(count).fill(NaN),
    shift: new Float64Array(count), share: new Int32Array(count), shared: new Int32Array(count).fill(1), detached: goesRoundEnd(ground, slots), squeeze: 1, evenMm: placing.evenMm,
  };
  if (!plan.detached) for (let i = 0; i < count; i++) anchor(ground, row, slots[i]!, stack, i, plan);
  shareBases(ground, slots, plan);
  if (placing.around) unroll(plan, placing.around[1] - placing.around[0], reversed);
  if (placing.evenMm > 0) {
    for (let i = 0; i < count; i++) plan.x[i] = placing.startX + (i + 0.5) * placing.evenMm;
    rowHeights(ground, slots, stack, has, placing.baseY, plan);
    return plan;
  }
  const [gap, least] = gaps(ground, slots, has);
  const { wanted, weight } = rowWishes(ground, plan, gap, placing);
  const lean = placing.leanMm * (row.direction < 0 ? 1 : -1);
  const x = placing.inRounds ? fitRound(ground, slots, reversed, plan, wanted, weight, gap, placing) : fitRow(wanted, weight, gap, least);
  for (let i = 0; i < count; i++) plan.x[i] = x[i]! + lean;
  rowHeights(ground, slots, stack, has, placing.baseY, plan);
  return plan;
}

/** A round of a tube is squeezed to the width of the round below at most by this; with more stitches it grows wider. */
const LEAST_SQUEEZE = 0.72;

/** A round keeps the way round of the one below: its increases are squeezed in as long as symbols can be told apart. */
function fitRound(ground: Ground, slots: Int32Array, reversed: boolean, plan: SlotPlan, wanted: Float64Array, weight: Float64Array, gap: Float64Array, { around }: RowPlacing): Float64Array {
  goreWishes(wanted, decreases(ground, slots), gap);
  if (!around || slots.length === 0) return spacedWithin(wanted, weight, gap, -Infinity, Infinity);
  const [left, right] = around;
  const ends = [slotWidth(ground, slots[0]!), slotWidth(ground, slots.at(-1)!)] as const;
  let whole = (ends[0] + ends[1]) / 2;
  for (const one of gap) whole += one;
  if (whole <= right - left + 1e-6) return spacedWithin(wanted, weight, gap, -Infinity, Infinity);
  plan.squeeze = Math.max(LEAST_SQUEEZE, (right - left) / whole);
  const beyond = (whole * plan.squeeze - (right - left)) / 2;
  // A round that begins elsewhere than the one below (a spiral that was counted otherwise) keeps its own start.
  const off = reversed ? wanted.at(-1)! - (right - ends[1] / 2) : wanted[0]! - (left + ends[0] / 2);
  const moved = Math.abs(off) > 2 * ground.w ? off : 0;
  return spacedWithin(wanted, weight, gap.map((one) => one * plan.squeeze), moved + left - beyond + (ends[0] * plan.squeeze) / 2, moved + right + beyond - (ends[1] * plan.squeeze) / 2);
}

/** Mean head of the bases that are in reach: attaching stitches are held by the row below only, not by the open stitch they reach for. */
function anchor(ground: Ground, row: IndexedRow, slot: number, stack: readonly [number, number], i: number, plan: SlotPlan): void {
  const { fabric } = ground;
  if (inRing(ground, slot)) return;
  const attaching = (fabric.flags[slot]! & FLAG.attaching) !== 0;
  let x = 0;
  let y = 0;
  let count = 0;
  const from = slot >= stack[0] && slot < stack[1] ? stack[0] : slot;
  for (let stitch = from; stitch <= slot; stitch++) {
    for (let b = fabric.baseStart[stitch]!; b < fabric.baseStart[stitch + 1]!; b++) {
      const base = fabric.bases[b]!;
      if (attaching && fabric.row[base] !== row.below) continue;
      if (base >= row.first) continue;
      if (from < slot && risesBeside(fabric, base)) x -= row.direction * ground.w;
      if (within(ground, base)) {
        if (!ground.placed[base - ground.first]) continue;
        x += ground.headX[base - ground.first]!;
        y += seenY(ground, ground.headY[base - ground.first]!, base - ground.first);
      } else {
        const head = ground.outside.get(base);
        if (!head) continue;
        x += head[0];
        y += head[1] - ground.frame.originY;
      }
      count++;
    }
  }
  if (count === 0) return;
  plan.baseX[i] = x / count;
  if (!(fabric.flags[slot]! & FLAG.spike)) plan.baseY[i] = y / count;
}

/** Whether a row is worked along a foundation chain and back along its other side: its bases run both ways. */
function goesRoundEnd({ fabric }: Ground, slots: Int32Array): boolean {
  const foot = fabric.bases[fabric.baseStart[slots[0] ?? 0]!];
  if (foot === undefined || slots.length < 3 || !(fabric.flags[foot]! & FLAG.foundation)) return false;
  let [up, down] = [0, 0];
  let before = -1;
  for (const slot of slots) {
    const base = fabric.bases[fabric.baseStart[slot]!];
    if (base === undefined || fabric.baseStart[slot] === fabric.baseStart[slot + 1]) continue;
    if (before >= 0 && base > before) up++;
    if (before >= 0 && base < before) down++;
    before = base;
  }
  return up > 1 && down > 1;
}

/** Whether a stitch is worked into a ring as a whole: it then stands side by side with the others, not over one chain of the ring. */
export function inRing({ fabric }: Ground, slot: number): boolean {
  const base = fabric.bases[fabric.baseStart[slot]!];
  return (fabric.flags[slot]! & FLAG.inSpace) !== 0 && base !== undefined && (fabric.flags[base]! & FLAG.foundation) !== 0 && fabric.rows[fabric.row[slot]!]!.round;
}

/** Which stitches go into the same base as their neighbour. */
function shareBases({ fabric }: Ground, slots: Int32Array, plan: SlotPlan): void {
  for (let i = 0; i < slots.length; ) {
    let end = i + 1;
    while (end < slots.length && sameBases(fabric, slots[i]!, slots[end]!)) end++;
    for (let k = i; k < end; k++) {
      plan.share[k] = k - i;
      plan.shared[k] = end - i;
    }
    i = end;
  }
}

function sameBases(fabric: Ground['fabric'], one: number, other: number): boolean {
  const from = fabric.baseStart[one]!;
  const count = fabric.baseStart[one + 1]! - from;
  const otherFrom = fabric.baseStart[other]!;
  if (count === 0 || count !== fabric.baseStart[other + 1]! - otherFrom) return false;
  for (let b = 0; b < count; b++) {
    if (fabric.bases[from + b] !== fabric.bases[otherFrom + b]) return false;
  }
  return !((fabric.flags[one]! | fabric.flags[other]!) & FLAG.turning && risesBeside(fabric, fabric.bases[from]!));
}

/** Moves bases by whole turns so that they follow each other in working order instead of jumping across the cut. */
function unroll(plan: SlotPlan, around: number, reversed: boolean): void {
  const count = plan.x.length;
  const step = reversed ? -1 : 1;
  let before = NaN;
  for (let k = 0; k < count; k++) {
    const i = reversed ? count - 1 - k : k;
    if (Number.isNaN(plan.baseX[i]!)) continue;
    let x = plan.baseX[i]!;
    while ((x - before) * step < -around / 2) x += step * around;
    while ((x - before) * step > around / 2) x -= step * around;
    plan.shift[i] = x - plan.baseX[i]!;
    plan.baseX[i] = x;
    before = x;
  }
}

/** Distances of neighbours at their own widths, and the least they may have. */
function gaps(ground: Ground, slots: Int32Array, has: number): readonly [own: Float64Array, least: Float64Array] {
  const own = new Float64Array(Math.max(0, slots.length - 1));
  const between = (widthOf: (ground: Ground, stitch: number) => number, into: Float64Array): Float64Array => {
    let left = into.length > 0 ? widthOf(ground, slots[0]!) : 0;
    for (let i = 0; i < into.length; i++) {
      const right = widthOf(ground, slots[i + 1]!);
      into[i] = left === right ? left : (left + right) / 2;
      left = right;
    }
    return into;
  };
  between(slotWidth, own);
  return [own, has & FLAG.space ? between(slotLeast, own.slice()) : own];
}

function decreases({ fabric: { baseStart, flags } }: Ground, slots: Int32Array): Uint8Array {
  const marked = new Uint8Array(slots.length);
  for (let i = 0; i < slots.length; i++) if (baseStart[slots[i]! + 1]! - baseStart[slots[i]!]! > 1 && !(flags[slots[i]!]! & FLAG.inSpace)) marked[i] = 1;
  return marked;
}
