import type { Fabric } from '../../engine/3-fabric/fabric.ts';
import { FLAG } from '../../engine/3-fabric/fabric.ts';

/** The stitches a straight run goes over: from the first touched to the last, along the row of the first. */
export function straightRun(fabric: Fabric, touched: readonly number[]): number[] {
  const first = touched[0];
  if (first === undefined) return [];
  const row = fabric.row[first]!;
  const last = touched.findLast((stitch) => fabric.row[stitch] === row) ?? first;
  const [from, to] = first < last ? [first, last] : [last, first];
  return Array.from({ length: to - from + 1 }, (_, i) => from + i);
}

/** The stitches on either side of one that are of its yarn, along its row: what a double press fills. */
export function runOfYarn(fabric: Fabric, yarn: Uint8Array, stitch: number): number[] {
  const row = fabric.rows[fabric.row[stitch] ?? -1];
  if (!row) return [];
  const same = (other: number) => other >= row.first && other < row.end && (yarn[other] === yarn[stitch] || !(fabric.flags[other]! & FLAG.counts));
  let from = stitch;
  let to = stitch;
  while (same(from - 1)) from--;
  while (same(to + 1)) to++;
  return Array.from({ length: to - from + 1 }, (_, i) => from + i);
}

/** All stitches of a row that count. */
export function wholeRow(fabric: Fabric, row: number): number[] {
  const worked = fabric.rows[row];
  if (!worked) return [];
  return Array.from({ length: worked.end - worked.first }, (_, i) => worked.first + i).filter((stitch) => fabric.flags[stitch]! & FLAG.counts);
}
