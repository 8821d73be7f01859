import type { Fabric, WorkedRow } from '../../engine/3-fabric/fabric.ts';
import { FLAG } from '../../engine/3-fabric/fabric.ts';

/** Neighbouring stitches of one yarn, as shares of the width that shows: 0 is its left end, 1 its right end. */
export interface Run {
  readonly from: number;
  readonly to: number;
  readonly yarn: number;
}

/**
 * The yarns of a row from left to right as seen on the right side. Of a row that is folded (round, seamed) only the half
 * next to the seam shows.
 */
export function visibleRuns(fabric: Fabric, yarn: Uint8Array, row: WorkedRow, folded: boolean): Run[] {
  const counted: number[] = [];
  for (let stitch = row.first; stitch < row.end; stitch++) {
    if (fabric.flags[stitch]! & FLAG.counts) counted.push(yarn[stitch]!);
  }
  if (row.direction < 0) counted.reverse();
  const shown = folded ? counted.slice(Math.floor(counted.length / 2)) : counted;
  const runs: Run[] = [];
  let start = 0;
  for (let at = 1; at <= shown.length; at++) {
    if (at < shown.length && shown[at] === shown[start]) continue;
    runs.push({ from: start / shown.length, to: at / shown.length, yarn: shown[start]! });
    start = at;
  }
  return runs;
}
