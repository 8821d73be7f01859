/** A cell of a motif: column from the left, row from the top. */
export interface MotifPoint {
  readonly x: number;
  readonly y: number;
}

/** Cells of a straight line between two cells, both included, one for each step along its longer side. Algorithm: J. E. Bresenham, 1965. */
export function linePoints(from: MotifPoint, to: MotifPoint): readonly MotifPoint[] {
  const points: MotifPoint[] = [];
  const [across, down] = [Math.abs(to.x - from.x), Math.abs(to.y - from.y)];
  const [stepX, stepY] = [Math.sign(to.x - from.x), Math.sign(to.y - from.y)];
  let { x, y } = from;
  let error = across - down;
  for (let left = Math.max(across, down); ; left--) {
    points.push({ x, y });
    if (left === 0) return points;
    const twice = 2 * error;
    if (twice > -down) {
      error -= down;
      x += stepX;
    }
    if (twice < across) {
      error += across;
      y += stepY;
    }
  }
}

/** Cells of the rectangle that has two cells as opposite corners: its border, or all of it. */
export function rectanglePoints(one: MotifPoint, other: MotifPoint, isFilled: boolean): readonly MotifPoint[] {
  const [left, right] = [Math.min(one.x, other.x), Math.max(one.x, other.x)];
  const [top, bottom] = [Math.min(one.y, other.y), Math.max(one.y, other.y)];
  const points: MotifPoint[] = [];
  for (let y = top; y <= bottom; y++) {
    for (let x = left; x <= right; x++) if (isFilled || x === left || x === right || y === top || y === bottom) points.push({ x, y });
  }
  return points;
}

/**
 * The cells that hang together with a cell and have its letter, side by side or one above another (not by corners).
 * `isRepeating`: what goes out on the left or right comes in on the other side, as in a row of repeats. None for a cell
 * outside. Linear in cells.
 */
export function areaPoints(rows: readonly string[], from: MotifPoint, isRepeating = false): readonly MotifPoint[] {
  const letter = rows[from.y]?.[from.x];
  if (letter === undefined) return [];
  const across = rows[0]!.length;
  const seen = new Set<number>([from.y * across + from.x]);
  const points: MotifPoint[] = [];
  const open: MotifPoint[] = [from];
  for (let point = open.pop(); point; point = open.pop()) {
    points.push(point);
    for (const [stepX, stepY] of [[1, 0], [-1, 0], [0, 1], [0, -1]] as const) {
      const x = isRepeating ? (point.x + stepX + across) % across : point.x + stepX;
      const y = point.y + stepY;
      if (rows[y]?.[x] !== letter || seen.has(y * across + x)) continue;
      seen.add(y * across + x);
      open.push({ x, y });
    }
  }
  return points;
}
