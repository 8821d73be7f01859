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
  let count = 0;
  for (let stitch = row.first; stitch < row.end; stitch++) if (fabric.flags[stitch]! & FLAG.counts) count++;
  const shown = folded ? count - Math.floor(count / 2) : count;
  const runs: Run[] = [];
  const isBackwards = row.direction < 0;
  // From left to right; of a folded row the places from the middle on.
  let [place, start, last] = [0, 0, -1];
  for (let k = 0; k < row.end - row.first; k++) {
    const stitch = isBackwards ? row.end - 1 - k : row.first + k;
    if (!(fabric.flags[stitch]! & FLAG.counts)) continue;
    const at = place++ - (count - shown);
    if (at < 0) continue;
    if (at > 0 && yarn[stitch] !== last) {
      runs.push({ from: start / shown, to: at / shown, yarn: last });
      start = at;
    }
    last = yarn[stitch]!;
  }
  if (shown > 0) runs.push({ from: start / shown, to: 1, yarn: last });
  return runs;
}
