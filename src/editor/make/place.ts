import type { Fabric } from '../../engine/3-fabric/fabric.ts';
import type { AlongRow } from './alongRows.ts';
import { runAfter, runBefore } from './runs.ts';

/** How far a maker is: an index into the rows, and how many stitches of that row are made. */
export interface Place {
  readonly at: number;
  readonly done: number;
}

export const START: Place = { at: 0, done: 0 };

/** Stitches of a row. */
export function lengthOf(rows: readonly AlongRow[], at: number): number {
  const row = rows[at];
  return row ? row.end - row.first : 0;
}

/** Whether every stitch of the row is made: what is left is to look at it and go on. */
export function rowIsMade(rows: readonly AlongRow[], { at, done }: Place): boolean {
  return done >= lengthOf(rows, at);
}

/** The stitch that is made next, or null at the end of a row. */
export function nextStitch(rows: readonly AlongRow[], place: Place): number | null {
  const row = rows[place.at];
  return row && !rowIsMade(rows, place) ? row.first + place.done : null;
}

/** One stitch on; from a row that is made, to the next row. At the very end nothing moves. */
export function stitchOn(rows: readonly AlongRow[], place: Place): Place {
  return rowIsMade(rows, place) ? rowOn(rows, place) : { at: place.at, done: place.done + 1 };
}

/** To the end of the run of like stitches. */
export function runOn(rows: readonly AlongRow[], fabric: Fabric, yarn: Uint8Array, place: Place): Place {
  const next = nextStitch(rows, place);
  if (next === null) return rowOn(rows, place);
  return { at: place.at, done: runAfter(fabric, yarn, next, rows[place.at]!.end) - rows[place.at]!.first };
}

/** To the beginning of the next row; the last row stays at its end. */
export function rowOn(rows: readonly AlongRow[], { at }: Place): Place {
  return at + 1 < rows.length ? { at: at + 1, done: 0 } : { at, done: lengthOf(rows, at) };
}

/** One stitch back; from the beginning of a row, to the end of the row before. */
export function stitchBack(rows: readonly AlongRow[], { at, done }: Place): Place {
  if (done > 0) return { at, done: Math.min(done, lengthOf(rows, at)) - 1 };
  return at > 0 ? { at: at - 1, done: lengthOf(rows, at - 1) } : { at, done };
}

/** To the beginning of the run of like stitches, or of the one before. */
export function runBack(rows: readonly AlongRow[], fabric: Fabric, yarn: Uint8Array, place: Place): Place {
  const row = rows[place.at];
  if (!row || place.done === 0) return stitchBack(rows, place);
  return { at: place.at, done: runBefore(fabric, yarn, row.first + place.done - 1, row.first) - row.first };
}

/** To the beginning of this row, or of the row before. */
export function rowBack({ at, done }: Place): Place {
  return done > 0 || at === 0 ? { at, done: 0 } : { at: at - 1, done: 0 };
}

/** The place nearest to a kept one in rows that may have changed since: same row by its key, no more stitches than it has. */
export function placeAgain(rows: readonly AlongRow[], kept: { readonly line: string; readonly nth: number; readonly done: number }): Place | null {
  const at = rows.findIndex(({ key }) => key.line === kept.line && key.nth === kept.nth);
  return at < 0 ? null : { at, done: Math.min(Math.max(0, Math.floor(kept.done)), lengthOf(rows, at)) };
}
