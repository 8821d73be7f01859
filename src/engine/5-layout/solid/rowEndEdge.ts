import { firstBase, lastBase } from './cornerIds.ts';
import type { CornerIds } from './cornerIds.ts';
import { STANDS } from './standing.ts';
import type { Web } from './web.ts';

/** Rows along the side of the fabric that are followed from one row end to another. */
const MOST_ROWS = 8;
/** Stitches passed over before a row end. */
const MOST_PASSED = 4;

/** Corners of the edge that a stitch in row ends stands on, from its left to its right: along the side of those rows. */
export function rowEndEdge(web: Web, ids: Pick<CornerIds, 'left' | 'right'>, i: number): number[] {
  const own = web.bases.subarray(web.baseStart[i]!, web.baseStart[i + 1]!);
  const edge = downwards(web, ids, Math.max(...own), Math.min(...own), web.stands[i]!);
  // With the side of the fabric below, the row at the left goes up, that at the right down.
  return web.stands[i] === STANDS.leftEnd ? edge.reverse() : edge;
}

/** Corners along the side between the row ends that two neighbours stand on: of rows passed over. */
export function rowEndsBetween(web: Web, ids: Pick<CornerIds, 'left' | 'right'>, i: number, j: number): number[] {
  const upwards = web.stands[i] === STANDS.leftEnd;
  const high = upwards ? firstBase(web, j) : lastBase(web, i);
  const low = upwards ? lastBase(web, i) : firstBase(web, j);
  if (high <= low) return [];
  const edge = downwards(web, ids, high, low, web.stands[i]!).slice(1, -1);
  return upwards ? edge.reverse() : edge;
}

/** Corners from a top out to the end of its row and down the side to the top of an earlier row end there; none where that lies elsewhere. */
export function fromTopToRowEnd(web: Web, ids: Pick<CornerIds, 'left' | 'right'>, top: number, end: number, side: number): number[] {
  const corners = side === STANDS.leftEnd ? ids.left : ids.right;
  const outwards = side === STANDS.leftEnd ? web.left : web.right;
  const path: number[] = [];
  let at = top;
  for (let steps = 0; outwards[at]! >= 0; steps++) {
    if (steps === MOST_PASSED) return [];
    at = outwards[at]!;
    path.push(corners[at]!);
  }
  const sideways = downwards(web, ids, at, end, side);
  const reached = sideways.indexOf(corners[end]!);
  return reached < 0 ? [] : [...path, ...sideways.slice(0, reached + 1)];
}

/** Corners at the side from the top of one row end down to the bottom of another below it. */
function downwards(web: Web, ids: Pick<CornerIds, 'left' | 'right'>, from: number, to: number, side: number): number[] {
  const corners = side === STANDS.leftEnd ? ids.left : ids.right;
  const baseOf = side === STANDS.leftEnd ? firstBase : lastBase;
  const edge = [corners[from]!];
  for (let at = from, rows = 0; rows < MOST_ROWS; rows++) {
    const base = baseOf(web, at);
    if (base < 0) break;
    edge.push(corners[base]!);
    if (at === to) break;
    at = base;
  }
  return edge;
}
