import type { Gauge } from '../../1-pattern/pattern.ts';
import type { Fabric } from '../../3-fabric/fabric.ts';
import { gaugeCell } from '../gaugeCell.ts';
import { cellOutlines } from './cellOutlines.ts';
import type { Outlines } from './cellOutlines.ts';
import { cornerIds } from './cornerIds.ts';
import { easedHeights } from './easedHeights.ts';
import { flatWidths } from './flatWidths.ts';
import { grow } from './grow.ts';
import { placeCorners } from './placeCorners.ts';
import { restPose } from './restPose.ts';
import type { RestPose } from './restPose.ts';
import { settle } from './settle.ts';
import type { Solid } from './solid.ts';
import { springsOf } from './springs.ts';
import { dot, pointAt } from './vector.ts';
import type { Web } from './web.ts';
import { webOf } from './webOf.ts';

/** Share of the work that growing takes, for the progress. */
const GROWING = 0.4;

/**
 * The shape of the piece that a fabric makes, from its stitches and gauge: grown round by round, then settled as springs of
 * the stitches' widths and heights, filled lightly where it is a tube. Pieces of their own beside the largest are left out. The
 * same fabric and gauge give the same numbers, to the last bit, in one engine. `onProgress` is told shares from 0 to 1.
 * Linear in stitches; under a second for 5,000. Refuses a gauge that is not positive.
 */
export function shapeSolid(fabric: Fabric, gauge: Gauge, onProgress: (share: number) => void = () => undefined): Solid {
  const worked = webOf(fabric, gaugeCell(gauge));
  const heights = easedHeights(worked);
  const { width, flat } = flatWidths(worked, heights);
  const web = { ...worked, width };
  const springs = springsOf(web, heights, flat);
  const { at, openness } = grow(web, springs, heights, flat, (row) => onProgress((GROWING * (row + 1)) / web.rows.length));
  const plane = flat || !web.rows.some((row) => row.wraps);
  settle(web, springs, at, openness, plane, (share) => onProgress(GROWING + (1 - GROWING) * share));
  return solidOf(web, at, restPose(web, at, openness));
}

function solidOf(web: Web, at: Float64Array, pose: RestPose): Solid {
  const ids = cornerIds(web);
  const outlines = cellOutlines(web, ids);
  const corners = placeCorners(web, ids, outlines, at);
  const heads = new Float32Array(at.length);
  const placed = new Float32Array(corners.length);
  const low = [Infinity, Infinity, Infinity];
  const high = [-Infinity, -Infinity, -Infinity];
  const turned = (from: Float64Array, i: number): number[] => [pose.x, pose.y, pose.z].map((axis) => dot(pointAt(from, i), axis) * web.cellWidthMm);
  for (const corner of new Set(outlines.outline)) {
    turned(corners, corner).forEach((value, c) => {
      low[c] = Math.min(low[c]!, value);
      high[c] = Math.max(high[c]!, value);
    });
  }
  const empty = outlines.heads.length === 0;
  const middle = low.map((value, c) => (empty ? 0 : (value + high[c]!) / 2));
  const write = (from: Float64Array, to: Float32Array): void => {
    for (let i = 0; i * 3 < from.length; i++) turned(from, i).forEach((value, c) => (to[i * 3 + c] = value - middle[c]!));
  };
  write(at, heads);
  write(corners, placed);
  return {
    stitches: web.stitch, heads,
    corners: placed, normals: cornerNormals(placed, outlines),
    cells: outlines.heads.map((head) => web.stitch[head]!),
    outlineStart: outlines.outlineStart, topStart: outlines.topStart, outline: outlines.outline,
    halfMm: empty ? [0, 0, 0] : [high[0]! - middle[0]!, high[1]! - middle[1]!, high[2]! - middle[2]!],
    restView: { yawRad: pose.yawRad, pitchRad: pose.pitchRad },
    leftOut: web.leftOut,
  };
}

/** Unit normals at the corners: of the cells around each, by their areas (Newell's method). */
function cornerNormals(corners: Float32Array, { outlineStart, outline }: Outlines): Float32Array {
  const normals = new Float32Array(corners.length);
  for (let cell = 0; cell + 1 < outlineStart.length; cell++) {
    const from = outlineStart[cell]!;
    const end = outlineStart[cell + 1]!;
    const sum = [0, 0, 0];
    for (let k = from; k < end; k++) {
      const a = pointAt(corners, outline[k]!);
      const b = pointAt(corners, outline[k + 1 < end ? k + 1 : from]!);
      sum[0]! += (a[1] - b[1]) * (a[2] + b[2]);
      sum[1]! += (a[2] - b[2]) * (a[0] + b[0]);
      sum[2]! += (a[0] - b[0]) * (a[1] + b[1]);
    }
    for (let k = from; k < end; k++) for (let c = 0; c < 3; c++) normals[outline[k]! * 3 + c]! += sum[c]!;
  }
  for (let i = 0; i < normals.length; i += 3) {
    const length = Math.hypot(normals[i]!, normals[i + 1]!, normals[i + 2]!) || 1;
    for (let c = 0; c < 3; c++) normals[i + c]! /= length;
  }
  return normals;
}
