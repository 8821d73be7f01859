import type { Fabric } from '../3-fabric/fabric.ts';
import { alikeRows, type AlikeRows } from './alikeRows.ts';
import { finishKept } from './finishKept.ts';
import { flatPart, flatStacking } from './flat.ts';
import type { Cell } from './gaugeCell.ts';
import { groundOf, SETTLED, type Ground, type IndexedRow } from './ground.ts';
import type { Layout } from './layout.ts';
import { placeOutside } from './placeOutside.ts';
import { rippleOf } from './ripple.ts';
import { lendSlots, rowSlots, type RowSlots } from './rowSlots.ts';
import { movedRow, NO_LEVEL, ownPlaces, reachOf, standAlike, standRow, startOfRow, type Stacking, type StoodRow } from './stoodRow.ts';
import { spreadAlike, tubePart, tubeStacking, type TubeOptions } from './tube.ts';

/** What stays beside a layout of one flat piece or tube, so that an edit lays out only the rows that stand elsewhere. */
export interface KeptLayout {
  readonly fabric: Fabric;
  readonly cell: Cell;
  readonly kind: 'flat' | 'tube';
  readonly tube: TubeOptions;
  readonly stood: readonly StoodRow[];
  /** First stitch of each row. */
  readonly starts: Int32Array;
}

/**
 * Lays out a section that is one flat piece or tube as an earlier layout is, placing only the rows that are others, those above them
 * until a row stands as it did, and moving the rest up or down. The very same numbers as when all is placed anew. Null where the
 * earlier layout can't be built on.
 */
export function layOutAgain(previous: Layout, kept: KeptLayout, fabric: Fabric, section: number): { readonly layout: Layout; readonly kept: KeptLayout } | null {
  const alike = alikeRows(kept.fabric, fabric, section);
  const rows = alike.now;
  if (alike.start + alike.end === 0) return null;
  const starts = startsOf(fabric, rows);
  if (!starts) return null;
  lendSlots(kept.fabric, fabric, alike);
  const slots = rows.map((row, r) => rowSlots(fabric, row, rows[r + 1] ?? null));
  const end = rows.at(-1)!.end;
  const whole: Ground = { ...groundOf(fabric, section, starts[0]!, starts[0]!, kept.cell), end };
  if (kept.kind === 'flat' && rippleOf(whole, rows, slots)) return null;
  if (kept.kind === 'tube' && !spreadAlike(alike.old, rows)) return null;
  placeOutside(whole, slots[0]!.slots);
  const again = standAgain(whole, alike, starts, slots, kept.stood, kept.kind === 'flat' ? flatStacking() : tubeStacking(rows, kept.tube, whole.w));
  if (!again) return null;
  const { stood, oldOf } = again;
  const groundAt = (r: number): Ground => lent(whole, starts, stood, r, r + 1, rows[r]!.end);
  const placed = kept.kind === 'flat' ? flatPart(whole, rows, slots, stood, groundAt) : tubePart(whole, rows, stood, kept.tube);
  return { layout: finishKept(whole, { rows, placed }, { stood, starts, oldOf }, { ...kept, layout: previous }), kept: { ...kept, fabric, stood, starts } };
}

/** First stitch of each row; null where rows don't follow one another without a gap. */
export function startsOf(fabric: Fabric, rows: readonly IndexedRow[]): Int32Array | null {
  const starts = Int32Array.from(rows, (row) => startOfRow({ fabric }, row));
  return starts[0] === rows[0]!.first && rows.every((_, r) => r === 0 || starts[r] === rows[r - 1]!.end) ? starts : null;
}

interface StoodAgain {
  readonly stood: readonly StoodRow[];
  /** Row of the earlier layout that stands alike, by row; -1 for none. */
  readonly oldOf: Int32Array;
}

/** Rows placed at first; then twice as many each time, as long as they stand elsewhere than before. */
const FIRST_ROWS = 2;
/** Up to so many rows have arrays of their own, so that they don't hold on to those of the rows beside them. */
const OWN_ROWS = 8;

function standAgain(whole: Ground, { old, now, start, end }: AlikeRows, starts: Int32Array, slots: readonly RowSlots[], was: readonly StoodRow[], stacking: Stacking): StoodAgain | null {
  const count = now.length;
  const added = count - old.length;
  const lowest = lowestReached(starts, was, count - end, added);
  if (!lowest) return null;
  const stood: StoodRow[] = [];
  const oldOf = new Int32Array(count).fill(-1);
  const keep = (r: number, row: StoodRow, oldRow: number): void => {
    stood.push(row);
    oldOf[r] = oldRow;
  };
  // A foundation lies as the row above it says.
  const from = start > 0 && now[start - 1]!.word === 'foundation' ? start - 1 : start;
  for (let r = 0; r < from; r++) keep(r, was[r]!, r);
  // From this row up to the last one placed all stand as they did, or all moved by as much.
  let sameFrom = 0;
  for (let r = from, many = FIRST_ROWS; r < count; many *= 2) {
    const upTo = Math.min(count, r + many);
    const ground = groundFor(whole, now, starts, slots, stood, r, upTo);
    for (; r < upTo; r++) {
      const one = standRow(ground, now[r]!, slots[r]!, r, stood[r - 1]?.level ?? NO_LEVEL, stacking);
      if (!one.isWhole) return null;
      const pair = r < start || added === 0 ? r : r >= count - end ? r - added : -1;
      const other = was[pair];
      if (!other || !standAlike(one, other)) {
        keep(r, many <= OWN_ROWS ? ownPlaces(one) : one, -1);
        sameFrom = r + 1;
        continue;
      }
      const byMm = one.originY - other.originY;
      if (r > 0 && (oldOf[r - 1] !== pair - 1 || stood[r - 1]!.originY - was[pair - 1]!.originY !== byMm)) sameFrom = r;
      keep(r, { ...one, places: other.places }, pair);
      if (r + 1 < count - end || (lowest[r + 1] ?? count) < sameFrom) continue;
      for (let k = r + 1; k < count; k++) keep(k, movedRow(was[k - added]!, byMm), k - added);
      return { stood, oldOf };
    }
  }
  return { stood, oldOf };
}

/** A ground to place rows [r, upTo) on: with the rows that they reach down to. */
function groundFor(whole: Ground, rows: readonly IndexedRow[], starts: Int32Array, slots: readonly RowSlots[], stood: readonly StoodRow[], r: number, upTo: number): Ground {
  let low = starts[r]!;
  for (let k = r; k < upTo; k++) low = Math.min(low, starts[k]! - reachOf(whole, rows[k]!, starts[k]!, slots[k]!));
  let from = r;
  while (from > 0 && starts[from]! > low) from--;
  return lent(whole, starts, stood, from, r, rows[upTo - 1]!.end);
}

/** The lowest row that the rows from each of the kept ones on reach down to, by row; null where one reaches into another section or rows don't follow one another. */
function lowestReached(starts: Int32Array, was: readonly StoodRow[], from: number, added: number): Int32Array | null {
  const lowest = new Int32Array(starts.length).fill(starts.length);
  for (let r = starts.length - 1; r >= from; r--) {
    const stitch = starts[r]! - was[r - added]!.reach;
    if (stitch < starts[0]! && r > 0) return null;
    let row = r;
    while (row > 0 && starts[row]! > stitch) row--;
    lowest[r] = Math.min(row, lowest[r + 1] ?? row);
  }
  return lowest;
}

/** A ground for the stitches [first, end) with rows [from, to) as they stand. */
function lent(whole: Ground, starts: Int32Array, stood: readonly StoodRow[], from: number, to: number, end: number): Ground {
  const first = starts[from]!;
  const ground: Ground = { ...groundOf(whole.fabric, whole.section, first, end, { widthMm: whole.w, heightMm: whole.h }), outside: whole.outside };
  for (let r = from; r < to; r++) {
    const { places, originY } = stood[r]!;
    const to = starts[r]! - first;
    const byMm = originY - places.laidY;
    for (const name of ['headX', 'footX'] as const) ground[name].set(places[name].subarray(places.at, places.at + places.count), to);
    for (const name of ['headY', 'footY'] as const) for (let i = 0; i < places.count; i++) ground[name][to + i] = places[name][places.at + i]! + byMm;
    for (let c = 0; c < places.count * 8; c++) ground.corners[to * 8 + c] = places.corners[places.at * 8 + c]! + (c % 2 === 0 ? 0 : byMm);
    ground.placed.fill(SETTLED, to, to + places.count);
  }
  return ground;
}
