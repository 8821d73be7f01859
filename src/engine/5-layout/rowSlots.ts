import { stitchCode } from '../craft/stitches.ts';
import { FLAG } from '../3-fabric/fabric.ts';
import type { Fabric } from '../3-fabric/fabric.ts';
import type { AlikeRows } from './alikeRows.ts';
import type { IndexedRow } from './ground.ts';

const CHAIN = stitchCode('ch');
const PICOT = stitchCode('picot');
const RING = stitchCode('ring');
const SLIP = stitchCode('slst');
/** A chain with none of these was closed to a picot and has no place of its own. */
const KEEPS_PLACE = FLAG.space | FLAG.foundation | FLAG.turning | FLAG.counts;

/** What stands where in a row. All stitch numbers; `slots` runs left to right as seen on the right side, right-handed. */
export interface RowSlots {
  /** One stitch a slot: the one whose head the next row is worked into. */
  readonly slots: Int32Array;
  /** Turning chain that counts: its chains stand one on another in the slot of the last of them. `[from, end)`, empty if there is none. */
  readonly stack: readonly [from: number, end: number];
  /** Turning chain that does not count: beside the edge where the row starts. */
  readonly turning: readonly number[];
  /** Chains of a space that a flat row begins with, from its edge to its first stitch: beside the edge, with the turning chain before them. */
  readonly leading: readonly number[];
  /** Slip stitches that join a round: at the edge where it ends. */
  readonly joins: readonly number[];
  /** Stitches on top of the one before them: picots and slip stitches into the row itself. */
  readonly perched: readonly number[];
  /** The ring that the row is worked into, if it was made in the same row (a magic ring, or chains and their join): under its middle. */
  readonly rings: readonly number[];
  /** Slots run in working order (left to right) or against it. */
  readonly reversed: boolean;
  /** All flags that any of the slots has: rows without chain spaces or posts need not be looked through for them. */
  readonly has: number;
}

/** Slots of a fabric's rows by row index: layout, cells, bands and grid all ask for them. */
const KNOWN = new WeakMap<Fabric, Map<number, RowSlots>>();

/**
 * Sorts the stitches of a row into slots and the rest. A foundation's direction is taken from the row worked on it
 * (`above`), since the chain is worked towards the place where that row starts. The very same object again for the same row of a fabric.
 */
export function rowSlots(fabric: Fabric, row: IndexedRow, above: IndexedRow | null): RowSlots {
  // A foundation's order hangs on the row above it too.
  if (row.word === 'foundation') return sorted(fabric, row, above);
  let known = KNOWN.get(fabric);
  if (!known) KNOWN.set(fabric, (known = new Map()));
  let slots = known.get(row.index);
  if (!slots) known.set(row.index, (slots = sorted(fabric, row, above)));
  return slots;
}

function sorted(fabric: Fabric, row: IndexedRow, above: IndexedRow | null): RowSlots {
  const [from, lead] = leadingTurn(fabric, row);
  const counted = anyCounts(fabric, from, lead);
  const slots: number[] = [];
  const joins: number[] = [];
  const perched: number[] = [];
  const rings: number[] = [];
  let has = 0;
  if (counted) slots.push(lead - 1);
  for (let stitch = row.first; stitch < from; stitch++) if (isRing(fabric, row, stitch)) rings.push(stitch);
  for (let stitch = lead; stitch < row.end; stitch++) {
    // Foundation chains that were left out stand beside the next row and belong to it.
    if (fabric.row[stitch] !== row.index) continue;
    const flags = fabric.flags[stitch]!;
    if (isRing(fabric, row, stitch)) rings.push(stitch);
    else if (flags & FLAG.join) joins.push(stitch);
    else if (fabric.kind[stitch] === PICOT || (fabric.kind[stitch] === CHAIN && !(flags & KEEPS_PLACE)) || sitsOnOwnRow(fabric, row, stitch)) perched.push(stitch);
    else {
      slots.push(stitch);
      has |= flags;
    }
  }
  const leading = row.round || counted || !(has & FLAG.space) ? [] : takeLeading(fabric, slots);
  const reversed = direction(fabric, row, above) < 0;
  if (reversed) slots.reverse();
  const turning: number[] = [];
  if (!counted) for (let stitch = from; stitch < lead; stitch++) turning.push(stitch);
  return { slots: new Int32Array(slots), stack: counted ? [from, lead] : [from, from], turning, leading, joins, perched, rings, reversed, has };
}

/** Takes the chains before a row's first stitch off its slots. A row of chains alone keeps them. */
function takeLeading(fabric: Fabric, slots: number[]): number[] {
  let count = 0;
  while (count < slots.length && fabric.kind[slots[count]!] === CHAIN && fabric.flags[slots[count]!]! & FLAG.space) count++;
  return count === 0 || count === slots.length ? [] : slots.splice(0, count);
}

/** The chains of the turning chain that the row begins with, `[from, end)`, with foundation chains left out before its first stitch. */
function leadingTurn(fabric: Fabric, row: IndexedRow): readonly [from: number, end: number] {
  let from = row.first;
  while (from > 0 && fabric.row[from - 1] === row.index) from--;
  while (from < row.end && isRing(fabric, row, from)) from++;
  let end = Math.max(from, row.first);
  while (end < row.end && fabric.row[end] === row.index && fabric.kind[end] === CHAIN && fabric.flags[end]! & FLAG.turning) end++;
  return [from, end];
}

function anyCounts(fabric: Fabric, from: number, end: number): boolean {
  for (let stitch = from; stitch < end; stitch++) {
    if (fabric.flags[stitch]! & FLAG.counts) return true;
  }
  return false;
}

/** A ring, a chain of a ring or the join that closes it, with stitches of the same round worked into it. */
function isRing(fabric: Fabric, row: IndexedRow, stitch: number): boolean {
  if (!row.round || row.word === 'foundation' || row.made === 0) return false;
  if (fabric.kind[stitch] === RING) return row.end - row.first > 1;
  if (fabric.flags[stitch]! & FLAG.join) {
    const base = fabric.bases[fabric.baseStart[stitch]!];
    return base !== undefined && base >= row.first && (fabric.flags[base]! & FLAG.foundation) !== 0;
  }
  return fabric.kind[stitch] === CHAIN && (fabric.flags[stitch]! & FLAG.foundation) !== 0;
}

/** A slip stitch into the stitch or chain just made. */
function sitsOnOwnRow(fabric: Fabric, row: IndexedRow, stitch: number): boolean {
  if (fabric.kind[stitch] !== SLIP) return false;
  const from = fabric.baseStart[stitch]!;
  const end = fabric.baseStart[stitch + 1]!;
  if (from === end) return false;
  for (let b = from; b < end; b++) {
    if (fabric.bases[b]! < row.first) return false;
  }
  return true;
}

/** -1: the row runs right to left. */
export function direction(fabric: Fabric, row: IndexedRow, above: IndexedRow | null): -1 | 1 {
  if (row.word !== 'foundation' || !above || row.end - row.first < 2) return row.direction;
  let first = -1;
  let last = -1;
  for (let stitch = above.first; stitch < above.end; stitch++) {
    if (fabric.flags[stitch]! & (FLAG.otherSide | FLAG.join)) continue;
    for (let b = fabric.baseStart[stitch]!; b < fabric.baseStart[stitch + 1]!; b++) {
      const base = fabric.bases[b]!;
      if (base < row.first || base >= row.end) continue;
      if (first < 0) first = base;
      last = base;
    }
  }
  if (first === last) return row.direction;
  return first > last ? (above.direction === 1 ? -1 : 1) : above.direction;
}

/**
 * Whether a turning chain that counts stands beside the stitch worked into `base`, not on it: it goes on from a foundation
 * chain whose last chain is the base of the row's first other stitch (dc in 4th ch from hook).
 */
export function risesBeside(fabric: Fabric, base: number): boolean {
  return (fabric.flags[base]! & FLAG.foundation) !== 0 && base + 1 < fabric.count && (fabric.flags[base + 1]! & FLAG.turning) !== 0;
}

/** Gives the slots of rows that are alike in an earlier fabric on to the fabric that is laid out now, so that they need not be sorted again. */
export function lendSlots(old: Fabric, now: Fabric, { old: was, now: is, start, end }: Pick<AlikeRows, 'old' | 'now' | 'start' | 'end'>): void {
  const [from, to] = [KNOWN.get(old), KNOWN.get(now) ?? new Map<number, RowSlots>()];
  if (!from) return;
  KNOWN.set(now, to);
  for (let r = 0; r < is.length; r++) {
    if (r >= start && r < is.length - end) continue;
    const [row, other] = [is[r]!, was[r < start ? r : r + was.length - is.length]!];
    const slots = from.get(other.index);
    if (slots && row.word !== 'foundation' && !to.has(row.index)) to.set(row.index, renumbered(slots, row.first - other.first));
  }
}

function renumbered(slots: RowSlots, by: number): RowSlots {
  if (by === 0) return slots;
  const moved = (numbers: readonly number[]): readonly number[] => numbers.map((stitch) => stitch + by);
  return {
    ...slots, slots: slots.slots.map((stitch) => stitch + by), stack: [slots.stack[0] + by, slots.stack[1] + by],
    turning: moved(slots.turning), leading: moved(slots.leading), joins: moved(slots.joins), perched: moved(slots.perched), rings: moved(slots.rings),
  };
}
