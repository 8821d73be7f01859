import { stitchCode } from '../craft/stitches.ts';
import { FLAG } from '../3-fabric/fabric.ts';
import type { Fabric } from '../3-fabric/fabric.ts';
import type { IndexedRow } from './ground.ts';

const RING = stitchCode('ring');

/**
 * Parts the rows of a section into pieces that hang together: rows are of one piece when one is worked into the other or
 * goes on with its yarn without a new foundation. Pieces in the order in which they were begun, their rows in working order. Linear in stitches (union–find over rows; Tarjan 1975).
 */
export function piecesOf(fabric: Fabric, rows: readonly IndexedRow[]): (readonly IndexedRow[])[] {
  if (rows.length < 2) return rows.length === 0 ? [] : [rows];
  const at = rows[0]!.index;
  // Mostly every row stands on an earlier one: no need to look at each stitch.
  if (rows.every(({ below, index }, r) => r === 0 || (below >= at && below < index))) return [rows];
  const place = new Map(rows.map(({ index }, r) => [index, r]));
  const parent = Int32Array.from(rows, (_, r) => r);
  const root = (r: number): number => {
    let at = r;
    while (parent[at] !== at) at = parent[at] = parent[parent[at]!]!;
    return at;
  };
  const join = (row: number, r: number): void => {
    const other = place.get(row);
    if (other === undefined) return;
    const [one, two] = [root(r), root(other)];
    parent[Math.max(one, two)] = Math.min(one, two);
  };
  rows.forEach((row, r) => {
    let last = -1;
    const before = fabric.previous[row.first]!;
    const begins = fabric.kind[row.first] === RING || (fabric.flags[row.first]! & FLAG.foundation) !== 0;
    if (before >= 0 && !begins) join(fabric.row[before]!, r);
    for (let b = fabric.baseStart[row.first]!; b < fabric.baseStart[row.end]!; b++) {
      const under = fabric.row[fabric.bases[b]!]!;
      if (under === last) continue;
      last = under;
      join(under, r);
    }
  });
  const pieces = new Map<number, IndexedRow[]>();
  rows.forEach((row, r) => {
    const own = pieces.get(root(r));
    if (own) own.push(row);
    else pieces.set(root(r), [row]);
  });
  return [...pieces.values()];
}
