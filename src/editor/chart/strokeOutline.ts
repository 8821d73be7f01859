import type { Stroke } from '../../engine/6-drawing/drawing.ts';

/** A closed outline: x, y, x, y … A symbol is filled, not stroked: filled paths are cheaper to draw. */
export type Outline = readonly number[];

/**
 * Outlines that fill a stroke of a glyph drawn `width` wide (mm). All run the same way round (holes the other way), so
 * that overlapping parts add up under the non-zero rule. `points`: corners of a full oval.
 */
export function strokeOutline(stroke: Stroke, width: number, points: number): Outline[] {
  switch (stroke.kind) {
    case 'line':
      return lineOutlines(stroke.points, width);
    case 'curve':
      return [ribbon(flattened(stroke.points, Math.max(3, Math.round(points / 3))), width)];
    case 'oval': {
      const outer = stroke.filled ? 0 : width / 2;
      const outline = [oval(stroke, outer, points)];
      if (!stroke.filled && stroke.rx > width / 2 && stroke.ry > width / 2) outline.push(reversed(oval(stroke, -width / 2, points)));
      return outline;
    }
  }
}

/** One rectangle a segment; segments reach into each other where they meet, so that a bend has no notch. */
function lineOutlines(points: readonly number[], width: number): Outline[] {
  const outlines: Outline[] = [];
  const half = width / 2;
  for (let p = 0; p + 3 < points.length; p += 2) {
    const ax = points[p]!, ay = points[p + 1]!, bx = points[p + 2]!, by = points[p + 3]!;
    const length = Math.hypot(bx - ax, by - ay);
    if (length === 0) continue;
    const ux = ((bx - ax) / length) * half, uy = ((by - ay) / length) * half;
    const back = p > 0 ? 1 : 0;
    const on = p + 5 < points.length ? 1 : 0;
    const sx = ax - ux * back, sy = ay - uy * back, ex = bx + ux * on, ey = by + uy * on;
    outlines.push([sx + uy, sy - ux, ex + uy, ey - ux, ex - uy, ey + ux, sx - uy, sy + ux]);
  }
  return outlines;
}

function flattened([x0, y0, cx, cy, x1, y1]: readonly [number, number, number, number, number, number], segments: number): number[] {
  const points: number[] = [];
  for (let s = 0; s <= segments; s++) {
    const t = s / segments, u = 1 - t;
    points.push(u * u * x0 + 2 * u * t * cx + t * t * x1, u * u * y0 + 2 * u * t * cy + t * t * y1);
  }
  return points;
}

/** A band of this width along a line: one side there, the other side back. */
function ribbon(points: readonly number[], width: number): Outline {
  const there: number[] = [];
  const back: number[] = [];
  const half = width / 2;
  for (let p = 0; p < points.length; p += 2) {
    const before = Math.max(0, p - 2), after = Math.min(points.length - 2, p + 2);
    const dx = points[after]! - points[before]!, dy = points[after + 1]! - points[before + 1]!;
    const length = Math.hypot(dx, dy) || 1;
    const nx = (dy / length) * half, ny = (-dx / length) * half;
    there.push(points[p]! + nx, points[p + 1]! + ny);
    back.push(points[p + 1]! - ny, points[p]! - nx);
  }
  const outline = [...there, ...back.reverse()];
  return area(outline) < 0 ? reversed(outline) : outline;
}

function oval(stroke: Extract<Stroke, { kind: 'oval' }>, wider: number, points: number): Outline {
  const outline: number[] = [];
  const cos = Math.cos(stroke.turnRad), sin = Math.sin(stroke.turnRad);
  for (let p = 0; p < points; p++) {
    const at = (2 * Math.PI * p) / points;
    const x = (stroke.rx + wider) * Math.cos(at), y = (stroke.ry + wider) * Math.sin(at);
    outline.push(stroke.x + x * cos - y * sin, stroke.y + x * sin + y * cos);
  }
  return outline;
}

function reversed(outline: Outline): Outline {
  const back: number[] = [];
  for (let p = outline.length - 2; p >= 0; p -= 2) back.push(outline[p]!, outline[p + 1]!);
  return back;
}

/** Twice the signed area; positive when it runs clockwise as seen (y down). */
export function area(outline: Outline): number {
  let sum = 0;
  for (let p = 0; p < outline.length; p += 2) {
    const q = (p + 2) % outline.length;
    sum += outline[p]! * outline[q + 1]! - outline[q]! * outline[p + 1]!;
  }
  return sum;
}
