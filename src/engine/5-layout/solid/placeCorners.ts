import type { Outlines } from './cellOutlines.ts';
import { firstBase, lastBase } from './cornerIds.ts';
import type { CornerIds } from './cornerIds.ts';
import { cross, plus, pointAt, setPoint, times, unit } from './vector.ts';
import type { Vector } from './vector.ts';
import type { Web } from './web.ts';

/** How far the tops of a round that is drawn shut are gathered into its middle. */
const GATHERED = 0.85;
/** Thickness of a hanging chain, in its own height. */
const CHAIN_THICK = 0.9;

/** Positions of all corners: between neighbours, half a stitch beyond the last one at an edge, and those made on the way. */
export function placeCorners(web: Web, ids: CornerIds, { made }: Outlines, at: Float64Array): Float64Array {
  const corners = new Float64Array((ids.count + made.length) * 3);
  for (let corner = 0; corner < ids.count; corner++) {
    const before = ids.headBefore[corner]!;
    const after = ids.headAfter[corner]!;
    if (before >= 0 && after >= 0) setPoint(corners, corner, times(plus(pointAt(at, before), pointAt(at, after)), 0.5));
    else if (before >= 0) setPoint(corners, corner, plus(pointAt(at, before), toTheRight(web, at, before), 0.5));
    else setPoint(corners, corner, plus(pointAt(at, after), toTheRight(web, at, after), -0.5));
  }
  for (const row of web.rows) if (row.drawnShut) gather(ids, corners, at, row.first, row.end);
  made.forEach((corner, k) => setPoint(corners, ids.count + k, placeMade(web, at, corners, corner)));
  return corners;
}

function placeMade(web: Web, at: Float64Array, corners: Float64Array, corner: Outlines['made'][number]): Vector {
  switch (corner.kind) {
    case 'head': return pointAt(at, corner.head);
    case 'between': return plus(times(pointAt(corners, corner.a), 1 - corner.share), pointAt(corners, corner.b), corner.share);
    case 'under': return plus(pointAt(corners, corner.corner), upBeside(web, at, corner.head), -CHAIN_THICK * web.height[corner.head]!);
  }
}

/** From one head to its right neighbour's place, one stitch long where the row has only one. */
function toTheRight(web: Web, at: Float64Array, head: number): Vector {
  const { left, right } = web;
  const own = pointAt(at, head);
  if (right[head]! >= 0) return plus(pointAt(at, right[head]!), own, -1);
  if (left[head]! >= 0) return plus(own, pointAt(at, left[head]!), -1);
  const base = firstBase(web, head);
  if (base < 0) return [1, 0, 0];
  if (left[base]! >= 0 || right[base]! >= 0) return toTheRight(web, at, base);
  return unit(cross(plus(own, pointAt(at, base), -1), [0, 0, 1]), [1, 0, 0]);
}

/** Up at a chain that hangs between stitches: as the stitches beside it stand. */
function upBeside(web: Web, at: Float64Array, head: number): Vector {
  for (const side of [web.left, web.right]) {
    for (let i = side[head]!, steps = 0; i >= 0 && steps < 12; i = side[i]!, steps++) {
      const base = lastBase(web, i);
      if (base >= 0) return unit(plus(pointAt(at, i), pointAt(at, base), -1));
    }
  }
  return [0, 1, 0];
}

function gather(ids: CornerIds, corners: Float64Array, at: Float64Array, first: number, end: number): void {
  let middle: Vector = [0, 0, 0];
  for (let i = first; i < end; i++) middle = plus(middle, pointAt(at, i), 1 / (end - first));
  for (let i = first; i < end; i++) setPoint(corners, ids.right[i]!, plus(times(pointAt(corners, ids.right[i]!), 1 - GATHERED), middle, GATHERED));
}
