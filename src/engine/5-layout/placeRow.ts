import { stitchRow, STITCHES } from '../craft/stitches.ts';
import { FLAG } from '../3-fabric/fabric.ts';
import { fitRow } from './fitRow.ts';
import { goreWishes } from './goreWishes.ts';
import { stitchHeight, within } from './ground.ts';
import type { Ground, IndexedRow } from './ground.ts';
import { placeBeside } from './placeBeside.ts';
import { placeCells } from './placeCells.ts';
import type { RowSlots } from './rowSlots.ts';
import { slotWidth } from './slotWidth.ts';
import { spaced } from './spaced.ts';

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
  /** Width of all slots where it isn't their own, mm; else 0. */
  readonly evenMm: number;
}

/** How a row is placed: where a row without any base starts, and the circumference of the round below for a tube. */
export interface RowPlacing {
  readonly startX: number;
  readonly baseY: number;
  /** Rounds keep their columns and open holes at decreases; rows draw in. */
  readonly inRounds: boolean;
  /** Width of the round below, mm; 0 where there is none. */
  readonly aroundMm: number;
  /** Width of every slot of a round that is spread evenly round a tube that widens, mm; 0 for the stitches' own widths. */
  readonly evenMm: number;
  /** Moves every stitch by this much in the working direction (lean of unturned rounds), mm. */
  readonly leanMm: number;
}

/** Places one row of a section: slots, cells, turning chains and joins. Linear in the row's stitches. */
export function placeRow(ground: Ground, row: IndexedRow, slots: RowSlots, placing: RowPlacing): void {
  const plan = planRow(ground, row, slots, placing);
  placeCells(ground, slots, plan);
  placeBeside(ground, row, slots);
}

function planRow(ground: Ground, row: IndexedRow, { slots, stack, reversed }: RowSlots, placing: RowPlacing): SlotPlan {
  const count = slots.length;
  const plan: SlotPlan = {
    x: new Float64Array(count), y: new Float64Array(count), baseX: new Float64Array(count).fill(NaN), baseY: new Float64Array(count).fill(NaN),
    shift: new Float64Array(count), share: new Int32Array(count), shared: new Int32Array(count).fill(1), evenMm: placing.evenMm,
  };
  for (let i = 0; i < count; i++) anchor(ground, row, slots[i]!, stack, i, plan);
  shareBases(ground, slots, plan);
  if (placing.aroundMm > 0) unroll(plan, placing.aroundMm, reversed);
  if (placing.evenMm > 0) {
    for (let i = 0; i < count; i++) plan.x[i] = placing.startX + (i + 0.5) * placing.evenMm;
    heights(ground, slots, stack, placing.baseY, plan);
    return plan;
  }
  const gap = gaps(ground, slots);
  const { wanted, weight } = wishes(ground, plan, gap, placing);
  const lean = placing.leanMm * (row.direction < 0 ? 1 : -1);
  if (placing.inRounds) goreWishes(wanted, decreases(ground, slots), gap);
  const x = placing.inRounds ? spaced(wanted, weight, gap) : fitRow(wanted, weight, gap);
  for (let i = 0; i < count; i++) plan.x[i] = x[i]! + lean;
  heights(ground, slots, stack, placing.baseY, plan);
  return plan;
}

/** Mean head of the bases that are in reach: attaching stitches are held by the row below only, not by the open stitch they reach for. */
function anchor(ground: Ground, row: IndexedRow, slot: number, stack: readonly [number, number], i: number, plan: SlotPlan): void {
  const { fabric } = ground;
  if (fabric.flags[slot]! & FLAG.otherSide || inRing(ground, slot)) return;
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
      if (within(ground, base)) {
        if (!ground.placed[base - ground.first]) continue;
        x += ground.headX[base - ground.first]!;
        y += ground.headY[base - ground.first]!;
      } else {
        const head = ground.outside.get(base);
        if (!head) continue;
        x += head[0];
        y += head[1];
      }
      count++;
    }
  }
  if (count === 0) return;
  plan.baseX[i] = x / count;
  if (!(fabric.flags[slot]! & FLAG.spike)) plan.baseY[i] = y / count;
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
  return true;
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

function gaps(ground: Ground, slots: Int32Array): Float64Array {
  const gap = new Float64Array(Math.max(0, slots.length - 1));
  for (let i = 0; i < gap.length; i++) {
    const left = slotWidth(ground, slots[i]!);
    const right = slotWidth(ground, slots[i + 1]!);
    gap[i] = left === right ? left : (left + right) / 2;
  }
  return gap;
}

function decreases({ fabric }: Ground, slots: Int32Array): Uint8Array {
  return Uint8Array.from(slots, (slot) => (fabric.baseStart[slot + 1]! - fabric.baseStart[slot]! > 1 && !(fabric.flags[slot]! & FLAG.inSpace) ? 1 : 0));
}

/** Weight of a stitch without a base in reach. */
const LOOSE = 0.05;

/** Where each slot would like to stand: over its bases, spread where they are shared, between its neighbours where it has none. */
function wishes(ground: Ground, plan: SlotPlan, gap: Float64Array, placing: RowPlacing): { wanted: Float64Array; weight: Float64Array } {
  const count = plan.x.length;
  const wanted = new Float64Array(count);
  const weight = new Float64Array(count).fill(1);
  let before = -1;
  for (let i = 0; i < count; i++) {
    if (Number.isNaN(plan.baseX[i]!)) {
      weight[i] = LOOSE;
      wanted[i] = NaN;
      continue;
    }
    const spread = (plan.share[i]! - (plan.shared[i]! - 1) / 2) * 0.5 * ground.w;
    wanted[i] = plan.baseX[i]! + spread;
    fillBetween(wanted, gap, before, i);
    before = i;
  }
  if (before < 0) {
    if (count > 0) wanted[0] = placing.startX + ground.w / 2;
    before = 0;
    weight.fill(1);
  }
  for (let i = before + 1; i < count; i++) wanted[i] = wanted[i - 1]! + gap[i - 1]!;
  return { wanted, weight };
}

/** Fills the wishes strictly between two anchored slots in proportion to the gaps; before the first anchored one at the gaps. */
function fillBetween(wanted: Float64Array, gap: Float64Array, left: number, right: number): void {
  if (left < 0) {
    for (let i = right - 1; i >= 0; i--) wanted[i] = wanted[i + 1]! - gap[i]!;
    return;
  }
  let whole = 0;
  for (let i = left; i < right; i++) whole += gap[i]!;
  const part = (wanted[right]! - wanted[left]!) / whole;
  for (let i = left + 1; i < right; i++) wanted[i] = wanted[i - 1]! + gap[i - 1]! * part;
}

/** Head heights: by parents, so that mixed heights wave; then smoothed along the row so that they don't zigzag. */
function heights(ground: Ground, slots: Int32Array, stack: readonly [number, number], baseY: number, plan: SlotPlan): void {
  const count = slots.length;
  const y = plan.y;
  let before = -1;
  for (let i = 0; i < count; i++) {
    y[i] = Number.isNaN(plan.baseY[i]!) ? NaN : plan.baseY[i]! - slotHeight(ground, slots[i]!, stack);
    if (Number.isNaN(y[i]!)) continue;
    for (let k = before + 1; k < i; k++) y[k] = before < 0 ? y[i]! : y[before]! + ((y[i]! - y[before]!) * (k - before)) / (i - before);
    before = i;
  }
  for (let k = before + 1; k < count; k++) y[k] = before < 0 ? baseY - slotHeight(ground, slots[k]!, stack) : y[before]!;
  if (level(y)) return;
  const rough = y.slice();
  for (let i = 0; i < count; i++) {
    const left = rough[i - 1] ?? rough[i + 1] ?? rough[i]!;
    const right = rough[i + 1] ?? left;
    y[i] = 0.65 * rough[i]! + 0.35 * (left === right ? left : (left + right) / 2);
  }
}

function level(y: Float64Array): boolean {
  for (let i = 1; i < y.length; i++) {
    if (Math.abs(y[i]! - y[0]!) > 1e-9) return false;
  }
  return true;
}

/** Height of a slot in mm; a turning chain reaches as high as the stitch it stands for. */
function slotHeight(ground: Ground, slot: number, stack: readonly [number, number]): number {
  if (slot < stack[0] || slot >= stack[1] || !within(ground, slot)) return stitchHeight(ground, slot);
  const chains = stack[1] - stack[0];
  const stands = STITCHES.find((row) => row.turningChains === chains && row.legs === 0);
  return (stands ? stands.height : chains * stitchRow('ch').height) * ground.h;
}
