type Point = readonly [x: number, y: number];

/**
 * A line with fewer bends that strays at most `toleranceMm` from the one given (Ramer 1972, Douglas and Peucker 1973): steps of
 * single stitches become slanting edges, as schematics show shaping. Ends stay. Quadratic at worst, in rows.
 */
export function straightened(points: readonly Point[], toleranceMm: number): readonly Point[] {
  if (points.length < 3) return points;
  const first = points[0]!;
  const last = points.at(-1)!;
  let worst = 0;
  let at = 0;
  for (let i = 1; i < points.length - 1; i++) {
    const off = distance(points[i]!, first, last);
    if (off > worst) [worst, at] = [off, i];
  }
  if (worst <= toleranceMm) return [first, last];
  return [...straightened(points.slice(0, at + 1), toleranceMm).slice(0, -1), ...straightened(points.slice(at), toleranceMm)];
}

/** Distance of a point from the line through two others; from their common point where they are the same. */
function distance([px, py]: Point, [ax, ay]: Point, [bx, by]: Point): number {
  const [dx, dy] = [bx - ax, by - ay];
  const length = Math.hypot(dx, dy);
  return length === 0 ? Math.hypot(px - ax, py - ay) : Math.abs(dx * (py - ay) - dy * (px - ax)) / length;
}
