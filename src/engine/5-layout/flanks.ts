import { FLAG } from '../3-fabric/fabric.ts';
import type { Ground, IndexedRow } from './ground.ts';
import { within } from './ground.ts';
import type { RowSlots } from './rowSlots.ts';

/** An open stitch of a flank, from the hinge outwards, and what becomes of it. */
export interface FlankTop {
  readonly stitch: number;
  /** The stitches under it in this section, itself first, downwards. */
  readonly column: readonly number[];
  /** The attaching stitch worked into it; -1 if it stays open. */
  readonly attached: number;
}

/** The turned part of a section, found in the graph of stitches. */
export interface Flanks {
  /** Index (in the section's rows) of the first row that ends in an attaching stitch. */
  readonly turnRow: number;
  readonly left: readonly FlankTop[];
  readonly right: readonly FlankTop[];
  /** Whether the open stitches make two plain flanks that a wedge can show. */
  readonly plain: boolean;
}

/** Rows that may lie under a flank: with more, columns fan out too far and the plain grid reads better. */
const MOST_ROWS = 4;

/** Finds the flanks of turned short rows: runs of stitches at the ends of the first rows that no later row works over. `ground` holds the plain grid. */
export function findFlanks(ground: Ground, rows: readonly IndexedRow[], slots: readonly RowSlots[]): Flanks {
  const { fabric } = ground;
  const turnRow = Math.max(0, rows.findIndex((_, r) => slots[r]!.slots.some((slot) => fabric.flags[slot]! & FLAG.attaching)));
  const { child, attached } = workedInto(ground, slots);
  const tops = { left: new Set<number>(), right: new Set<number>() };
  const side = new Map<number, 'left' | 'right'>();
  for (let r = turnRow - 2; r >= 0; r--) {
    const row = Array.from(slots[r]!.slots);
    const on = (slot: number, here: 'left' | 'right'): boolean => {
      const above = child.get(slot);
      if (above === undefined ? false : side.get(above) !== here) return false;
      if (above === undefined) tops[here].add(slot);
      side.set(slot, here);
      return true;
    };
    let left = 0;
    while (left < row.length && on(row[left]!, 'left')) left++;
    for (let i = row.length - 1; i >= left && on(row[i]!, 'right'); i--);
  }
  const columns = columnsUnder(child, side);
  const sorted = (here: 'left' | 'right', outward: number): FlankTop[] => {
    const own = [...tops[here]].sort((a, b) => outward * (ground.headX[a - ground.first]! - ground.headX[b - ground.first]!));
    const found: FlankTop[] = own.map((stitch) => ({ stitch, column: [stitch, ...(columns.get(stitch) ?? [])], attached: attached.get(stitch) ?? -1 }));
    return [...found, ...foreign(ground, slots, turnRow, outward)];
  };
  const [left, right] = [sorted('left', -1), sorted('right', 1)];
  return { turnRow, left, right, plain: isPlain(turnRow, slots, child, columns, [...left, ...right]) };
}

/** For each stitch of the section, the one worked into it in the ordinary way, and the one that attaches to it. */
function workedInto(ground: Ground, slots: readonly RowSlots[]): { child: Map<number, number>; attached: Map<number, number> } {
  const { fabric } = ground;
  const child = new Map<number, number>();
  const attached = new Map<number, number>();
  for (const row of slots) {
    for (const slot of row.slots) {
      const attaching = fabric.flags[slot]! & FLAG.attaching;
      const below = fabric.rows[fabric.row[slot]!]!.below;
      for (let b = fabric.baseStart[slot]!; b < fabric.baseStart[slot + 1]!; b++) {
        const base = fabric.bases[b]!;
        if (attaching && fabric.row[base] !== below) attached.set(base, slot);
        else if (!child.has(base)) child.set(base, slot);
      }
    }
  }
  return { child, attached };
}

/** Stitches under each top, nearest first. */
function columnsUnder(child: ReadonlyMap<number, number>, side: ReadonlyMap<number, string>): Map<number, number[]> {
  const columns = new Map<number, number[]>();
  // Later rows come first in `side`, so a column grows downwards.
  for (const stitch of side.keys()) {
    let top = stitch;
    for (let above = child.get(top); above !== undefined && side.has(above); above = child.get(top)) top = above;
    if (top === stitch) continue;
    const column = columns.get(top);
    if (column) column.push(stitch);
    else columns.set(top, [stitch]);
  }
  return columns;
}

/** Open stitches of other sections that return rows reach for, in the order in which they are used. */
function foreign(ground: Ground, slots: readonly RowSlots[], turnRow: number, outward: number): FlankTop[] {
  const { fabric } = ground;
  const found: FlankTop[] = [];
  for (let r = turnRow; r < slots.length; r++) {
    const row = slots[r]!;
    if ((row.reversed ? -1 : 1) !== outward) continue;
    for (const slot of row.reversed ? row.slots.toReversed() : row.slots) {
      if (!(fabric.flags[slot]! & FLAG.attaching)) continue;
      for (let b = fabric.baseStart[slot]!; b < fabric.baseStart[slot + 1]!; b++) {
        const base = fabric.bases[b]!;
        if (!within(ground, base)) found.push({ stitch: base, column: [], attached: slot });
      }
    }
  }
  return found;
}

function isPlain(turnRow: number, slots: readonly RowSlots[], child: ReadonlyMap<number, number>, columns: ReadonlyMap<number, readonly number[]>, tops: readonly FlankTop[]): boolean {
  if (turnRow < 2 && tops.some(({ column }) => column.length > 0)) return false;
  if (tops.some(({ column }) => column.length > MOST_ROWS)) return false;
  // Two stitches side by side under one top have no place in a column.
  for (const column of columns.values()) {
    for (let i = 1; i < column.length; i++) if (child.get(column[i]!) !== column[i - 1]) return false;
  }
  for (let r = turnRow; r < slots.length - 1; r++) {
    const row = slots[r]!.slots;
    if (row.length > 0 && (!child.has(row[0]!) || !child.has(row.at(-1)!))) return false;
  }
  return true;
}
