import type { Fabric } from '../3-fabric/fabric.ts';
import { alikeRows } from '../5-layout/alikeRows.ts';
import type { IndexedRow } from '../5-layout/ground.ts';
import { stoodRows } from '../5-layout/layOutSection.ts';
import type { Layout } from '../5-layout/layout.ts';
import { lendSlots } from '../5-layout/rowSlots.ts';
import type { Drawing } from './drawing.ts';

/** An earlier drawing and what it was drawn of. */
export interface DrawnBefore {
  readonly drawing: Drawing;
  readonly fabric: Fabric;
  readonly layout: Layout;
}

/** Items one after another that are copied from the earlier drawing (`from`), or drawn (`from` -1). */
export interface ItemRun {
  readonly at: number;
  readonly count: number;
  readonly from: number;
  /** Stands higher or lower than it stood. */
  readonly isMoved: boolean;
}

/** What of an earlier drawing stands as it stood. */
export interface KeptItems {
  readonly before: DrawnBefore;
  readonly runs: readonly ItemRun[];
  /** Row of the section in the earlier drawing, by row of the section; -1 for one that is drawn anew. */
  readonly oldOf: Int32Array;
}

/**
 * Which rows' items can be copied from an earlier drawing: rows that are alike in stitches and in all that they are worked into, and that
 * stand as they stood, to the last bit, or all of it higher or lower. Null where the earlier drawing says nothing about this one.
 */
export function keptItems(fabric: Fabric, layout: Layout, before: DrawnBefore): KeptItems | null {
  const [now, was] = [stoodRows(layout), stoodRows(before.layout)];
  const comparable = now && was && layout.kind === before.layout.kind && layout.section === before.layout.section && now.mirroredAt === was.mirroredAt && layout.cellWidthMm === before.layout.cellWidthMm && layout.cellHeightMm === before.layout.cellHeightMm;
  if (!comparable) return null;
  const alike = alikeRows(before.fabric, fabric, layout.section);
  const { old: oldRows, now: rows, start, end } = alike;
  if (oldRows.length !== was.stood.length || rows.length !== now.stood.length) return null;
  lendSlots(before.fabric, fabric, alike);
  const added = rows.length - oldRows.length;
  const oldOf = new Int32Array(rows.length).fill(-1);
  // From this row on all stand as they stood, or are all moved by as much.
  let [sameFrom, oldBefore] = [0, -1];
  for (let r = 0; r < rows.length; r++) {
    const old = r < start ? r : r >= rows.length - end ? r - added : -1;
    if (old < 0 || now.stood[r]!.places !== was.stood[old]!.places) {
      sameFrom = r + 1;
      continue;
    }
    const follows = r === 0 || (old > 0 && oldBefore === old - 1 && now.stood[r]!.originY - was.stood[old]!.originY === now.stood[r - 1]!.originY - was.stood[old - 1]!.originY);
    if (!follows) sameFrom = Math.max(sameFrom, r);
    oldBefore = old;
    if (now.starts[r]! - now.stood[r]!.reach >= now.starts[sameFrom]!) oldOf[r] = old;
  }
  return { before, oldOf, runs: runsOf(layout, before.layout, now, was, oldOf, rows) };
}

type Stood = NonNullable<ReturnType<typeof stoodRows>>;

/** Grey stitches in the order of their rows, then all stitches. */
function runsOf(layout: Layout, old: Layout, now: Stood, was: Stood, oldOf: Int32Array, rows: readonly IndexedRow[]): ItemRun[] {
  const [ghosts, oldGhosts] = [ghostStarts(layout, now), ghostStarts(old, was)];
  const runs: { at: number; count: number; from: number; isMoved: boolean }[] = [];
  const add = (at: number, end: number, from: number, isMoved: boolean): void => {
    const last = runs.at(-1);
    if (end === at) return;
    if (last && (from < 0 ? last.from < 0 : last.from >= 0 && last.from + last.count === from && last.isMoved === isMoved)) last.count += end - at;
    else runs.push({ at, count: end - at, from, isMoved });
  };
  const isMoved = (r: number): boolean => oldOf[r]! >= 0 && now.stood[r]!.originY !== was.stood[oldOf[r]!]!.originY;
  add(0, ghosts[0]!, -1, false);
  // Grey stitches that were moved are drawn anew.
  for (let r = 0; r < rows.length; r++) add(ghosts[r]!, ghosts[r + 1]!, oldOf[r]! < 0 || isMoved(r) ? -1 : oldGhosts[oldOf[r]!]!, false);
  const item = (stitch: number, of: Layout): number => of.ghosts.length + stitch - of.first;
  for (let r = 0; r < rows.length; r++) add(item(now.starts[r]!, layout), item(rows[r]!.end, layout), oldOf[r]! < 0 ? -1 : item(was.starts[oldOf[r]!]!, old), isMoved(r));
  return runs;
}

/** Item of the first grey stitch of each row, and after the last. */
function ghostStarts({ ghosts }: Layout, { stood }: Stood): number[] {
  const starts = [ghosts.length];
  for (let r = stood.length - 1; r >= 0; r--) starts.unshift(starts[0]! - stood[r]!.marks.repeats.length);
  return starts;
}
