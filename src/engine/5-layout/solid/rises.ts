import { STANDS } from './standing.ts';
import type { Web, WebRow } from './web.ts';

/**
 * How high heads stand over each other where stitches of unequal height stand in one row: hanging chains as high as what is
 * beside them, short rows, what is worked over them and what picks up row ends level.
 */
export function rises(web: Web, height: Float64Array): Float64Array {
  const { rows, baseStart, bases } = web;
  const rise = new Float64Array(web.count);
  for (const row of rows) {
    if (isLevel(web, row)) continue;
    for (let i = row.first; i < row.end; i++) {
      const own = baseStart[i + 1]! - baseStart[i]!;
      for (let k = baseStart[i]!; k < baseStart[i + 1]!; k++) rise[i] = rise[i]! + (rise[bases[k]!]! + height[i]!) / own;
    }
    hangBetween(web, row, rise);
  }
  return rise;
}

function isLevel({ rows, rowOf, baseStart, bases, stands }: Web, row: WebRow): boolean {
  let level = row.partial;
  for (let k = baseStart[row.first]!; k < baseStart[row.end]! && !level; k++) level = rows[rowOf[bases[k]!]!]!.partial;
  for (let i = row.first; i < row.end && !level; i++) level = stands[i] !== STANDS.top;
  return level || baseStart[row.first] === baseStart[row.end];
}

/** Heads without a base lie on the line between those beside them. */
export function hangBetween({ baseStart }: Web, { first, end }: WebRow, rise: Float64Array): void {
  let before = -1;
  for (let i = first; i <= end; i++) {
    if (i < end && baseStart[i] === baseStart[i + 1]) continue;
    const from = before < 0 ? rise[i]! : rise[before]!;
    const to = i < end ? rise[i]! : from;
    for (let k = before < 0 ? first : before + 1; k < i; k++) rise[k] = before < 0 || i === end ? from : from + ((to - from) * (k - before)) / (i - before);
    before = i;
  }
}
