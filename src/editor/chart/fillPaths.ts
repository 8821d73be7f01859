import type { Drawing } from '../../engine/6-drawing/drawing.ts';
import { keyedPaths, type KeyedPath } from './keyedPaths.ts';
import type { PathBytes } from './pathBytes.ts';
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

/** One long side of a run, in units: x, y, x, y … Written over for each run; one of n cells needs 2n + 2 numbers. */
interface Side {
  at: Int32Array;
  length: number;
}
const bottom: Side = { at: new Int32Array(512), length: 0 };
const top: Side = { at: new Int32Array(512), length: 0 };

const paths = keyedPaths();

/**
 * Path data that fills the cells of `items[from] … items[to - 1]`, one path a key; −1 leaves a cell out. Cells that follow one
 * another in the drawing, lie in one row and share an edge become one outline, and corners on a straight line are left out: a
 * straight run of any length is a rectangle.
 */
export function fillPaths(drawing: Drawing, items: ArrayLike<number>, from: number, to: number, keyOf: (item: number) => number, shape: FillShape): KeyedPath[] {
  const { corners, row } = drawing.stitches;
  const near = Math.max(shape.toleranceMm, 0.02);
  const tolerance = shape.toleranceMm * UNITS_PER_MM;
  let i = from;
  while (i < to) {
    const start = i;
    let last = items[i++]!;
    const key = keyOf(last);
    if (key < 0) continue;
    let way: 0 | 1 | -1 = 0;
    while (shape.merge && i < to) {
      const next = items[i]!;
      if (row[next] !== row[last] || keyOf(next) !== key) break;
      if (way !== -1 && isRightOf(corners, next * 8, last * 8, near)) way = 1;
      else if (way !== 1 && isRightOf(corners, last * 8, next * 8, near)) way = -1;
      else break;
      last = next;
      i++;
    }
    const path = paths.of(key);
    const level = isLevel(corners, items, start, i);
    if (level && writeBox(path, corners, items[start]! * 8, last * 8, way === -1, shape.growMm)) continue;
    makeRoom(bottom, 2 * (i - start) + 2);
    makeRoom(top, 2 * (i - start) + 2);
    // Corners between the cells of a level run lie on its edges: the first and the last cell say all.
    const stride = level && i - start > 2 ? i - 1 - start : 1;
    for (let j = start; j < i; j += stride) addCell(corners, items[j]! * 8, way === -1, j === start, j === i - 1, shape.growMm);
    // All outlines run the same way round: where grown rows overlap they must add up, not cancel, under the non-zero rule.
    if (way === -1) writeClosed(path, top, bottom, tolerance);
    else writeClosed(path, bottom, top, tolerance);
  }
  return paths.take();
}

/** One path for all cells of `items[from] … items[to - 1]`; empty without cells. */
export function fillPath(drawing: Drawing, items: ArrayLike<number>, from: number, to: number, shape: FillShape): string {
  return fillPaths(drawing, items, from, to, () => 0, shape)[0]?.d ?? '';
}

/** Empties a side for so many numbers. */
function makeRoom(side: Side, numbers: number): void {
  side.length = 0;
  if (side.at.length < numbers) side.at = new Int32Array(2 * numbers);
}

/** Whether the cells of a run have their lower corners on one level line, and their upper corners on another. */
function isLevel(corners: Float32Array, items: ArrayLike<number>, from: number, to: number): boolean {
  const first = items[from]! * 8;
  const low = corners[first + BL + 1]!, high = corners[first + TL + 1]!;
  for (let j = from; j < to; j++) {
    const at = items[j]! * 8;
    if (corners[at + BL + 1] !== low || corners[at + BR + 1] !== low || corners[at + TL + 1] !== high || corners[at + TR + 1] !== high) return false;
  }
  return true;
}

/** Writes a level run that is an upright rectangle, from the corner where the other outlines begin; false where it is not one. */
function writeBox(path: PathBytes, corners: Float32Array, first: number, last: number, backward: boolean, grow: number): boolean {
  const left = backward ? last : first, right = backward ? first : last;
  const x0 = corners[left + BL]!, x1 = corners[right + BR]!, low = corners[left + BL + 1]!, high = corners[left + TL + 1]!;
  if (x0 !== corners[left + TL] || x1 !== corners[right + TR] || x1 <= x0 || low <= high) return false;
  const fromX = Math.round((x0 - grow) * UNITS_PER_MM), toX = Math.round((x1 + grow) * UNITS_PER_MM);
  const fromY = Math.round((high - grow) * UNITS_PER_MM), toY = Math.round((low + grow) * UNITS_PER_MM);
  const across = backward ? fromX - toX : toX - fromX, down = backward ? toY - fromY : fromY - toY;
  path.moveTo(backward ? toX : fromX, backward ? fromY : toY);
  path.lineBy(across, 0);
  path.lineBy(0, down);
  path.lineBy(-across, 0);
  path.close();
  return true;
}

/** Whether cell `b` stands right of `a` and shares its edge. */
function isRightOf(corners: Float32Array, b: number, a: number, near: number): boolean {
  return (
    Math.abs(corners[a + BR]! - corners[b + BL]!) <= near && Math.abs(corners[a + BR + 1]! - corners[b + BL + 1]!) <= near &&
    Math.abs(corners[a + TR]! - corners[b + TL]!) <= near && Math.abs(corners[a + TR + 1]! - corners[b + TL + 1]!) <= near
  );
}

/** Adds a cell's bottom corners to one side of a run and its top corners to the other, grown outward, in units. */
function addCell(corners: Float32Array, at: number, backward: boolean, first: boolean, last: boolean, grow: number): void {
  const nearB = at + (backward ? BR : BL), farB = at + (backward ? BL : BR);
  const nearT = at + (backward ? TR : TL), farT = at + (backward ? TL : TR);
  const dx = corners[farB]! - corners[nearB]! + corners[farT]! - corners[nearT]!;
  const dy = corners[farB + 1]! - corners[nearB + 1]! + corners[farT + 1]! - corners[nearT + 1]!;
  const by = grow / (Math.sqrt(dx * dx + dy * dy) || 1);
  const ux = dx * by, uy = dy * by;
  // Down, square to the run: a level row keeps exactly level edges, which fill without faint lines.
  const vx = backward ? uy : -uy, vy = backward ? -ux : ux;
  if (first) {
    add(bottom, corners[nearB]! - ux + vx, corners[nearB + 1]! - uy + vy);
    add(top, corners[nearT]! - ux - vx, corners[nearT + 1]! - uy - vy);
  }
  const after = last ? 1 : 0;
  add(bottom, corners[farB]! + ux * after + vx, corners[farB + 1]! + uy * after + vy);
  add(top, corners[farT]! + ux * after - vx, corners[farT + 1]! + uy * after - vy);
}

function add(side: Side, xMm: number, yMm: number): void {
  side.at[side.length] = Math.round(xMm * UNITS_PER_MM);
  side.at[side.length + 1] = Math.round(yMm * UNITS_PER_MM);
  side.length += 2;
}

/** One closed outline: along one side there, along the other back, without the corners that lie on a straight line. */
function writeClosed(path: PathBytes, there: Side, back: Side, tolerance: number): void {
  straighten(there, tolerance);
  straighten(back, tolerance);
  let x = there.at[0]!, y = there.at[1]!;
  path.moveTo(x, y);
  for (let p = 2; p < there.length + back.length; p += 2) {
    const q = there.length + back.length - 2 - p;
    const nx = p < there.length ? there.at[p]! : back.at[q]!;
    const ny = p < there.length ? there.at[p + 1]! : back.at[q + 1]!;
    if (nx === x && ny === y) continue;
    path.lineBy(nx - x, ny - y);
    x = nx;
    y = ny;
  }
  path.close();
}

/**
 * Leaves out, in place, each point that lies, with all left out before it, within about `tolerance` of the line from the last
 * point kept to the next one: every point left out narrows the slopes that such a line may have.
 */
function straighten(side: Side, tolerance: number): void {
  const { at, length } = side;
  if (length <= 4) return;
  let kept = 2;
  let x = at[0]!, y = at[1]!;
  let alongX = at[2]! - x, alongY = at[3]! - y;
  let least = -Infinity, most = Infinity;
  for (let p = 2; p < length - 2; p += 2) {
    const dx = at[p]! - x, dy = at[p + 1]! - y;
    const ex = at[p + 2]! - x, ey = at[p + 3]! - y;
    const along = dx * alongX + dy * alongY, across = dy * alongX - dx * alongY;
    const slack = tolerance * Math.sqrt(alongX * alongX + alongY * alongY);
    least = Math.max(least, (across - slack) / along);
    most = Math.min(most, (across + slack) / along);
    const onAlong = ex * alongX + ey * alongY;
    const slope = (ey * alongX - ex * alongY) / onAlong;
    if (along > 0 && onAlong > along && slope >= least && slope <= most) continue;
    x = at[kept++] = at[p]!;
    y = at[kept++] = at[p + 1]!;
    alongX = at[p + 2]! - x;
    alongY = at[p + 3]! - y;
    least = -Infinity;
    most = Infinity;
  }
  at[kept++] = at[length - 2]!;
  at[kept++] = at[length - 1]!;
  side.length = kept;
}
