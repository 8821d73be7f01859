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
  const rounds = rows.filter((row) => row.round);
  const first = rounds[0];
  if (!first || rounds.length < rows.length - 1 || !standsOnRing(fabric, first)) return false;
  let heights = 0;
  return rounds.every((row, r) => {
    const below = rounds[r - 1];
    if (row.made === 0 || (below && row.used < below.made)) return false;
    heights += heightOf(fabric, row);
    // In single-crochet squares: the way round at this radius, a stitch.
    return r < 2 || (2 * Math.PI * heights) / row.made <= MOST_SPREAD;
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
