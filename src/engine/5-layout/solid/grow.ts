import { childrenOf } from './childrenOf.ts';
import { footPoints, meanOf, smoothed, walesUnder } from './feet.ts';
import { headNormals } from './headNormals.ts';
import { placeFlatRound } from './placeFlatRound.ts';
import { placeRound, placeRow } from './placeRows.ts';
import { sweep } from './relax.ts';
import { bowed, deepen, openingsOf } from './openings.ts';
import { hangBetween } from './rises.ts';
import { placeFirstRound, placeSeed } from './seeds.ts';
import type { Springs } from './springs.ts';
import { turnAfterShortRows } from './tilt.ts';
import { cross, plus, pointAt, unit } from './vector.ts';
import type { Vector } from './vector.ts';
import type { Web, WebRow } from './web.ts';

/** Sweeps after each row, over the rows below it that may still give way. */
const SWEEPS = 10;
const ROWS_BELOW = 10;
const ROWS_BELOW_PARTIAL = 8;
/** Push outwards, stitch widths a sweep, that opens a heel while it grows. Tubes get none: they would narrow and twist. */
const PARTIAL_PRESSURE = 0.004;
/** The direction after short rows is held for a quarter of the stitches round, in rounds. */
const HELD_SHARE = 0.25;

/** Rounds over which what is set into an opening is held to grow out of it. */
const SET_IN_HELD = 3;

/** Heads of the web in space, in stitch widths, x y z each, and how open the piece is: 0 flat, 1 a tube. */
export interface Grown {
  readonly at: Float64Array;
  readonly openness: number;
}

/**
 * Grows the piece row by row: each row stands on the one below, half in the direction of its own columns, half in that of the
 * whole row; rounds also as far in or out as their count of stitches asks. After short rows the work turns away from where it
 * grew deeper. `flat` keeps rounds in their plane. Linear in stitches.
 */
export function grow(web: Web, springs: Springs, heights: Float64Array, flat: boolean, onRow: (row: number) => void = () => undefined): Grown {
  const at = new Float64Array(web.count * 3);
  const normals = new Float64Array(web.count * 3);
  const depth = new Float64Array(web.count);
  let held: { axis: Vector; rounds: number } | null = null;
  let axis: Vector = [0, 0, 1];
  let upright = 0;
  let inRounds = 0;
  const openings = openingsOf(web, heights);
  const children = childrenOf(web);
  web.rows.forEach((row, r) => {
    depthOfRow(web, heights, depth, row);
    const opened = openings.get(r) ?? [];
    deepen(depth, row, opened);
    const feet = footPoints(web, at, row);
    if (!feet) placeSeed(at, row);
    else if (flat) placeFlatRound(web, at, row, feet, heights);
    else if (row.wraps && !placeFirstRound(web, at, row, heights)) {
      const turned = turnAfterShortRows(web, row, feet, depth, axis, opened.length > 0);
      const before = axis;
      if (row.setInto >= 0 && web.rows[r - 1]!.setInto !== row.setInto) held = { axis: outOfOpening(web, at, normals, row), rounds: SET_IN_HELD };
      if (turned) {
        held = { axis: turned, rounds: Math.round(HELD_SHARE * feet.length) };
        level(depth, row);
      }
      const wales = smoothed(walesUnder(web, at, row, children), true);
      axis = held ? held.axis : roundAxis(feet, wales, axis);
      upright += placeRound(web, at, row, bowed(web, row, feet, opened, before, axis), wales, axis, held !== null, heights) * feet.length;
      inRounds += feet.length;
      if (held && --held.rounds === 0) held = null;
    } else if (!row.wraps) placeRow(at, row, feet, smoothed(walesUnder(web, at, row, children), false), heights);
    const from = Math.max(0, r - (row.partial ? ROWS_BELOW_PARTIAL : ROWS_BELOW));
    // What is set in pulls at both edges of its opening.
    const edges = row.setInto < 0 ? null : [Math.max(0, row.setInto - ROWS_BELOW), Math.min(from, row.setInto + ROWS_BELOW)] as const;
    for (let k = 0; k < SWEEPS; k++) {
      if (edges) sweep(at, springs, springs.rowStart[edges[0]]!, springs.rowStart[edges[1]]!, k % 2 === 1);
      sweep(at, springs, springs.rowStart[from]!, springs.rowStart[r + 1]!, k % 2 === 1);
      if (row.partial) pushOut(web, at, normals, web.rows[from]!.first, row.end);
    }
    onRow(r);
  });
  return { at, openness: inRounds > 0 ? upright / inRounds : 0 };
}

/** Length of the columns from the start of the piece to each head. */
function depthOfRow(web: Web, heights: Float64Array, depth: Float64Array, row: WebRow): void {
  const { baseStart, bases } = web;
  for (let i = row.first; i < row.end; i++) {
    const count = baseStart[i + 1]! - baseStart[i]!;
    for (let k = baseStart[i]!; k < baseStart[i + 1]!; k++) depth[i]! += (depth[bases[k]!]! + heights[i]!) / count;
  }
  hangBetween(web, row, depth);
}

/** Out of the right side of the fabric round an opening: the mean normal of the edges that a round is worked into. */
function outOfOpening(web: Web, at: Float64Array, normals: Float64Array, row: WebRow): Vector {
  headNormals(web, at, normals, 0, row.first);
  let out: Vector = [0, 0, 0];
  for (let k = web.baseStart[row.first]!; k < web.baseStart[row.end]!; k++) out = plus(out, pointAt(normals, web.bases[k]!));
  return unit(out);
}

/** From here on the work is as long all round: no later part of a round turns it again. */
function level(depth: Float64Array, { first, end }: WebRow): void {
  depth.fill(depth.subarray(first, end).reduce((sum, each) => sum + each / (end - first), 0), first, end);
}

/** The way a round goes on: the normal of its ring, with the mean of its columns. */
function roundAxis(feet: readonly Vector[], wales: readonly Vector[], before: Vector): Vector {
  const middle = meanOf(feet);
  const area = feet.reduce((sum, foot, k) => plus(sum, cross(plus(foot, middle, -1), plus(feet[(k + 1) % feet.length]!, middle, -1))), [0, 0, 0] as Vector);
  return unit(plus(unit(area, before), meanOf(wales)), before);
}

/** Pushes heads `[from, end)` outwards. */
function pushOut(web: Web, at: Float64Array, normals: Float64Array, from: number, end: number): void {
  headNormals(web, at, normals, from, end);
  for (let k = from * 3; k < end * 3; k++) at[k] = at[k]! + PARTIAL_PRESSURE * normals[k]!;
}
