import { FLAG, type Fabric, type WorkedRow } from '../../../engine/3-fabric/fabric.ts';
import type { RowKey } from '../../../engine/1-pattern/pattern.ts';

/** A row in one size: its index in the fabric, and its stitches but for turning chains and joins. */
export interface RowInSize {
  readonly index: number;
  readonly row: WorkedRow;
  readonly stitches: readonly number[];
}

/** A row of a section as one size has it; null where it hasn't got it. */
export function rowInSize(fabric: Fabric, section: string, key: RowKey): RowInSize | null {
  const index = fabric.rows.findIndex((each) => each.key.line === key.line && each.key.nth === key.nth && fabric.sections[each.section]?.id === section);
  const row = fabric.rows[index];
  if (!row) return null;
  const stitches: number[] = [];
  for (let stitch = row.first; stitch < row.end; stitch++) if (!(fabric.flags[stitch]! & (FLAG.turning | FLAG.join))) stitches.push(stitch);
  return { index, row, stitches };
}

/**
 * Where a place of a row of `own` stitches is in one of `other` stitches: in the first third of the row as far from its start, in
 * the last third as far from its end, in the middle as far from its centre (half a stitch nearer to the start where only one of the numbers is
 * odd). Edges keep their edges that way, and what is centred stays centred. Null where the other row is too short.
 */
export function placeInOther(at: number, own: number, other: number): number | null {
  const third = own / 3;
  const place = own === other || at < third ? at : at >= own - third ? other - own + at : Math.floor(at + (other - own) / 2);
  return place >= 0 && place < other ? place : null;
}
