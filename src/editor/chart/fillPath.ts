import type { Drawing } from '../../engine/6-drawing/drawing.ts';
import { UNITS_PER_MM } from './pathUnits.ts';

/** How the outline of cells is drawn, mm. */
export interface FillShape {
  /** How far the outline reaches beyond the cells. */
  readonly growMm: number;
  /** How far a corner may be off its line and still be left out. */
  readonly toleranceMm: number;
  /** Whether neighbours of one row become one outline; otherwise each cell has its own. */
  readonly merge: boolean;
}

/** Corner offsets in `corners`: bottom left, bottom right, top right, top left. */
const BL = 0, BR = 2, TR = 4, TL = 6;

/**
 * Path data that fills the cells of `items[from] … items[to - 1]`. Cells that follow one another in the drawing, lie in
 * one row and share an edge become one outline, and corners on a straight line are left out: a straight run of any
 * length is a rectangle.
 */
export function fillPath(drawing: Drawing, items: ArrayLike<number>, from: number, to: number, shape: FillShape): string {
  const { corners, row } = drawing.stitches;
  const near = Math.max(shape.toleranceMm, 0.02);
  const there: number[] = [];
  const back: number[] = [];
  let text = '';
  let i = from;
  while (i < to) {
    const first = items[i]!;
    let last = first;
    let way: 0 | 1 | -1 = 0;
    there.length = 0;
    back.length = 0;
    const start = i;
    i++;
    while (shape.merge && i < to) {
      const next = items[i]!;
      const step = row[next] === row[last] ? meeting(corners, last * 8, next * 8, near) : 0;
      if (step === 0 || (way !== 0 && step !== way)) break;
      way = step;
      last = next;
      i++;
    }
    for (let j = start; j < i; j++) addCell(corners, items[j]! * 8, way === -1, j === start, j === i - 1, shape.growMm, there, back);
    // All outlines run the same way round: where grown rows overlap they must add up, not cancel, under the non-zero rule.
    text += way === -1 ? closed(back, there, shape.toleranceMm * UNITS_PER_MM) : closed(there, back, shape.toleranceMm * UNITS_PER_MM);
  }
  return text;
}

/** 1: the second cell stands right of the first, -1: left of it, 0: they share no edge. */
function meeting(corners: Float32Array, a: number, b: number, near: number): 0 | 1 | -1 {
  if (same(corners, a + BR, b + BL, near) && same(corners, a + TR, b + TL, near)) return 1;
  return same(corners, a + BL, b + BR, near) && same(corners, a + TL, b + TR, near) ? -1 : 0;
}

function same(corners: Float32Array, p: number, q: number, near: number): boolean {
  return Math.abs(corners[p]! - corners[q]!) <= near && Math.abs(corners[p + 1]! - corners[q + 1]!) <= near;
}

/** Adds a cell's bottom corners to one side of a run and its top corners to the other, grown outward, in units. */
function addCell(corners: Float32Array, at: number, backward: boolean, first: boolean, last: boolean, grow: number, bottom: number[], top: number[]): void {
  const nearB = at + (backward ? BR : BL), farB = at + (backward ? BL : BR);
  const nearT = at + (backward ? TR : TL), farT = at + (backward ? TL : TR);
  const ux = corners[farB]! - corners[nearB]! + corners[farT]! - corners[nearT]!;
  const uy = corners[farB + 1]! - corners[nearB + 1]! + corners[farT + 1]! - corners[nearT + 1]!;
  // Down, square to the run: a level row keeps exactly level edges, which fill without faint lines.
  const vx = backward ? uy : -uy, vy = backward ? -ux : ux;
  const u = grow / (Math.hypot(ux, uy) || 1), v = u;
  const before = first ? u : 0, after = last ? u : 0;
  if (first) {
    push(bottom, corners[nearB]! - ux * before + vx * v, corners[nearB + 1]! - uy * before + vy * v);
    push(top, corners[nearT]! - ux * before - vx * v, corners[nearT + 1]! - uy * before - vy * v);
  }
  push(bottom, corners[farB]! + ux * after + vx * v, corners[farB + 1]! + uy * after + vy * v);
  push(top, corners[farT]! + ux * after - vx * v, corners[farT + 1]! + uy * after - vy * v);
}

function push(points: number[], x: number, y: number): void {
  points.push(Math.round(x * UNITS_PER_MM), Math.round(y * UNITS_PER_MM));
}

/** One closed outline: along one side there, along the other back, without the corners that lie on a straight line. */
function closed(there: number[], back: number[], tolerance: number): string {
  straighten(there, tolerance);
  straighten(back, tolerance);
  let x = there[0]!, y = there[1]!;
  let text = `M${x} ${y}`;
  const to = (nx: number, ny: number): void => {
    if (nx === x && ny === y) return;
    text += ny === y ? `h${nx - x}` : nx === x ? `v${ny - y}` : `l${nx - x} ${ny - y}`;
    x = nx;
    y = ny;
  };
  for (let p = 2; p < there.length; p += 2) to(there[p]!, there[p + 1]!);
  for (let p = back.length - 2; p >= 0; p -= 2) to(back[p]!, back[p + 1]!);
  return `${text}z`;
}

/**
 * Leaves out, in place, each point that lies, with all left out before it, within `tolerance` of the line from the last
 * point kept to the next one. Quadratic in the length of a straight run, which a block keeps short.
 */
function straighten(points: number[], tolerance: number): void {
  if (points.length <= 4) return;
  let kept = 2;
  let from = 0;
  for (let p = 2; p < points.length - 2; p += 2) {
    const ax = points[from]!, ay = points[from + 1]!;
    const dx = points[p + 2]! - ax, dy = points[p + 3]! - ay;
    const length = Math.hypot(dx, dy) || 1;
    let straight = true;
    for (let q = from + 2; q <= p; q += 2) {
      if (Math.abs((points[q]! - ax) * dy - (points[q + 1]! - ay) * dx) > tolerance * length) {
        straight = false;
        break;
      }
    }
    if (straight) continue;
    from = p;
    points[kept++] = points[p]!;
    points[kept++] = points[p + 1]!;
  }
  points[kept++] = points[points.length - 2]!;
  points[kept++] = points[points.length - 1]!;
  points.length = kept;
}
