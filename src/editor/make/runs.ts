import { FLAG, type Fabric } from '../../engine/3-fabric/fabric.ts';

/** What tells a stitch from another for the hook: the rest are marks of bookkeeping. */
const TOLD = FLAG.turning | FLAG.join | FLAG.frontLoop | FLAG.backLoop | FLAG.frontPost | FLAG.backPost | FLAG.spike | FLAG.inSpace | FLAG.attaching | FLAG.corner;

/** Stitches made into one place, or one stitch made over several: what a maker does in one go. `[first, end)`. */
export interface OneGo {
  readonly first: number;
  readonly end: number;
  /** Places it takes: 2 for two together, 0 for a chain. */
  readonly bases: number;
}

/** The go that a stitch belongs to, within `[from, end)`. */
export function goOf(fabric: Fabric, stitch: number, from: number, end: number): OneGo {
  let first = stitch;
  while (first > from && (fabric.flags[first]! & FLAG.sameBase) !== 0) first--;
  let last = stitch + 1;
  while (last < end && (fabric.flags[last]! & FLAG.sameBase) !== 0) last++;
  return { first, end: last, bases: fabric.baseStart[first + 1]! - fabric.baseStart[first]! };
}

/** Whether two goes are made alike: same stitches, same yarn, into places of the same sort. */
export function alike(fabric: Fabric, yarn: Uint8Array, a: OneGo, b: OneGo): boolean {
  if (a.end - a.first !== b.end - b.first || a.bases !== b.bases) return false;
  for (let n = 0; n < a.end - a.first; n++) {
    const [p, q] = [a.first + n, b.first + n];
    if (fabric.kind[p] !== fabric.kind[q] || yarn[p] !== yarn[q] || fabric.legs[p] !== fabric.legs[q]) return false;
    if ((fabric.flags[p]! & TOLD) !== (fabric.flags[q]! & TOLD)) return false;
  }
  return true;
}

/** The stitch after the run of like goes that begins with the go of `stitch`; at most `end`. */
export function runAfter(fabric: Fabric, yarn: Uint8Array, stitch: number, end: number): number {
  const start = goOf(fabric, stitch, stitch, end);
  let at = start;
  while (at.end < end) {
    const next = goOf(fabric, at.end, at.end, end);
    if (!alike(fabric, yarn, next, goOf(fabric, start.first, fabric.rows[fabric.row[stitch]!]!.first, end))) break;
    at = next;
  }
  return at.end;
}

/** The first stitch of the run of like goes that ends with the go of `stitch`; not before `from`. */
export function runBefore(fabric: Fabric, yarn: Uint8Array, stitch: number, from: number): number {
  const end = fabric.rows[fabric.row[stitch]!]!.end;
  const last = goOf(fabric, stitch, from, end);
  let at = last;
  while (at.first > from) {
    const before = goOf(fabric, at.first - 1, from, end);
    if (!alike(fabric, yarn, before, last)) break;
    at = before;
  }
  return at.first;
}
