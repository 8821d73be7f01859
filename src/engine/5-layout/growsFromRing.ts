import { stitchCode } from '../craft/stitches.ts';
import { FLAG } from '../3-fabric/fabric.ts';
import type { Fabric } from '../3-fabric/fabric.ts';
import { stitchHeight } from './ground.ts';
import type { IndexedRow } from './ground.ts';

const RING = stitchCode('ring');

/** A round may be spread to this many stitch widths a stitch before a disc stops being a good picture of it. */
const MOST_SPREAD = 2;

/**
 * Whether rounds worked from a ring stay near enough to a flat disc to be drawn as one: a disc or a shallow cap does, a tube
 * that is closed at its start doesn't. Every round must go once round the one below.
 */
export function growsFromRing(fabric: Fabric, rows: readonly IndexedRow[]): boolean {
  const first = rows.find((row) => row.round);
  return first !== undefined && standsOnRing(fabric, first) && goesRoundOnce(fabric, rows, 0);
}

/** Whether each round goes once round the one below and has stitches enough for its distance from a core of so many chains (0: a point). */
export function goesRoundOnce(fabric: Fabric, rows: readonly IndexedRow[], coreChains: number): boolean {
  const rounds = rows.filter((row) => row.round);
  if (rounds.length < rows.length - 1) return false;
  let heights = 0;
  return rounds.every((row, r) => {
    const below = rounds[r - 1];
    // The last round may be on its way: a chart doesn't change its shape while a round is written.
    const begun = r > 1 && r === rounds.length - 1;
    // Lace has few stitches between its chains: what it puts on the edge counts too.
    if (row.made === 0 || (below && !begun && row.used < Math.min(below.made, below.placed))) return false;
    if (begun && row.used < below!.made) return true;
    heights += heightOf(fabric, row);
    // In single-crochet squares: the way round at this distance, a place.
    return r < 2 || (2 * Math.PI * heights + 2 * coreChains) / Math.max(row.made, row.placed) <= MOST_SPREAD;
  });
}

function standsOnRing(fabric: Fabric, row: IndexedRow): boolean {
  for (let stitch = row.first; stitch < row.end; stitch++) {
    const base = fabric.bases[fabric.baseStart[stitch]!];
    if (!(fabric.flags[stitch]! & FLAG.counts) || fabric.flags[stitch]! & FLAG.turning || base === undefined) continue;
    return fabric.kind[base] === RING || (fabric.flags[stitch]! & (FLAG.inSpace | FLAG.sameBase)) !== 0;
  }
  return false;
}

/** Height of the first stitch of a round that isn't part of a turning chain, in single-crochet heights. */
function heightOf(fabric: Fabric, row: IndexedRow): number {
  for (let stitch = row.first; stitch < row.end; stitch++) {
    if (fabric.flags[stitch]! & FLAG.counts && !(fabric.flags[stitch]! & FLAG.turning)) return stitchHeight({ fabric, h: 1 }, stitch);
  }
  return 1;
}
