import type { Drawing } from '../../engine/6-drawing/drawing.ts';

/** The item under a point (mm), or -1. Stitches before ghosts; beside the cells the nearest within reach of half a cell. */
export type FindItem = (xMm: number, yMm: number) => number;

/** Buckets are this many cells wide and high: a cell lies in two of them on average. */
const BUCKET_CELLS = 2;

/**
 * An index over the cells of a drawing: uniform buckets in compressed rows, built by one count and one fill. Finding
 * looks at one bucket, or at nine when no cell holds the point.
 */
export function gridIndex(drawing: Drawing): FindItem {
  const { stitches, bounds } = drawing;
  const { count, corners, ghost, x: middleX, y: middleY } = stitches;
  const width = drawing.cellWidthMm * BUCKET_CELLS;
  const height = drawing.cellHeightMm * BUCKET_CELLS;
  const reach = 0.75 * Math.max(drawing.cellWidthMm, drawing.cellHeightMm);
  const columns = Math.max(1, Math.ceil((bounds.x1 - bounds.x0) / width));
  const rows = Math.max(1, Math.ceil((bounds.y1 - bounds.y0) / height));
  const column = (x: number): number => Math.min(Math.max(Math.floor((x - bounds.x0) / width), 0), columns - 1);
  const row = (y: number): number => Math.min(Math.max(Math.floor((y - bounds.y0) / height), 0), rows - 1);

  const spans = new Int32Array(count * 4);
  const start = new Int32Array(columns * rows + 1);
  for (let i = 0; i < count; i++) {
    let x0 = Infinity, x1 = -Infinity, y0 = Infinity, y1 = -Infinity;
    for (let c = i * 8; c < i * 8 + 8; c += 2) {
      const x = corners[c]!, y = corners[c + 1]!;
      if (x < x0) x0 = x;
      if (x > x1) x1 = x;
      if (y < y0) y0 = y;
      if (y > y1) y1 = y;
    }
    const c0 = column(x0), c1 = column(x1), r0 = row(y0), r1 = row(y1);
    spans[i * 4] = c0;
    spans[i * 4 + 1] = c1;
    spans[i * 4 + 2] = r0;
    spans[i * 4 + 3] = r1;
    for (let r = r0; r <= r1; r++) for (let c = c0; c <= c1; c++) start[r * columns + c + 1]!++;
  }
  for (let b = 0; b < columns * rows; b++) start[b + 1]! += start[b]!;
  const entries = new Int32Array(start[columns * rows]!);
  const next = start.slice(0, -1);
  for (let i = 0; i < count; i++) {
    for (let r = spans[i * 4 + 2]!; r <= spans[i * 4 + 3]!; r++) {
      for (let c = spans[i * 4]!; c <= spans[i * 4 + 1]!; c++) entries[next[r * columns + c]!++] = i;
    }
  }

  return (x, y) => {
    if (!(x >= bounds.x0 - reach && x <= bounds.x1 + reach && y >= bounds.y0 - reach && y <= bounds.y1 + reach)) return -1;
    const c = column(x), r = row(y);
    let held = -1;
    for (let e = start[r * columns + c]!; e < start[r * columns + c + 1]!; e++) {
      const item = entries[e]!;
      if (holds(corners, item * 8, x, y) && (held < 0 || ghost[item]! <= ghost[held]!)) held = item;
    }
    if (held >= 0) return held;
    let nearest = -1;
    let least = reach * reach;
    for (let nr = Math.max(0, r - 1); nr <= Math.min(rows - 1, r + 1); nr++) {
      for (let nc = Math.max(0, c - 1); nc <= Math.min(columns - 1, c + 1); nc++) {
        for (let e = start[nr * columns + nc]!; e < start[nr * columns + nc + 1]!; e++) {
          const item = entries[e]!;
          const distance = (middleX[item]! - x) ** 2 + (middleY[item]! - y) ** 2;
          if (distance < least && ghost[item] === 0) {
            least = distance;
            nearest = item;
          }
        }
      }
    }
    return nearest;
  };
}

/** Whether a cell (a convex quadrilateral) holds a point: on one side of all four edges; a cell without area holds none. */
function holds(corners: Float32Array, at: number, x: number, y: number): boolean {
  let positive = false, negative = false;
  for (let c = 0; c < 8; c += 2) {
    const d = (c + 2) % 8;
    const ax = corners[at + c]!, ay = corners[at + c + 1]!;
    const turn = (corners[at + d]! - ax) * (y - ay) - (corners[at + d + 1]! - ay) * (x - ax);
    if (turn > 0) positive = true;
    else if (turn < 0) negative = true;
  }
  return positive !== negative;
}
