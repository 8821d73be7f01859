import { lengthOf, plus, pointAt, times, unit } from './vector.ts';
import type { Vector } from './vector.ts';
import type { Web, WebRow } from './web.ts';

/** Distance of stitches that stand in one place, when they are first set side by side. */
const FAN = 0.6;

/** Where the stitches of a row stand, left to right; between and beyond others where one has no base. Null for a row that stands on nothing. */
export function footPoints(web: Web, at: Float64Array, row: WebRow): Vector[] | null {
  const { baseStart, bases } = web;
  const feet: (Vector | null)[] = [];
  for (let i = row.first; i < row.end; i++) {
    const from = baseStart[i]!;
    const end = baseStart[i + 1]!;
    let foot: Vector | null = from === end ? null : [0, 0, 0];
    for (let k = from; k < end; k++) foot = plus(foot!, pointAt(at, bases[k]!), 1 / (end - from));
    feet.push(foot);
  }
  const known = [...feet.keys()].filter((k) => feet[k]);
  const first = known[0];
  const last = known.at(-1);
  if (first === undefined || last === undefined) return null;
  const along = unit(plus(feet[last]!, feet[first]!, -1), [1, 0, 0]);
  return feet.map((foot, k): Vector => {
    if (foot) return foot;
    const before = known.findLast((other) => other < k);
    const after = known.find((other) => other > k);
    if (before !== undefined && after !== undefined) return plus(times(feet[before]!, (after - k) / (after - before)), feet[after]!, (k - before) / (after - before));
    return before === undefined ? plus(feet[first]!, along, k - first) : plus(feet[last]!, along, k - last);
  });
}

/** Feet that share a point are set side by side along the row, so that no two heads start in the same place. */
export function fanned(feet: readonly Vector[], wraps: boolean): Vector[] {
  const count = feet.length;
  const shares = (a: number, b: number): boolean => lengthOf(plus(feet[a]!, feet[b]!, -1)) < 1e-9;
  const beside = (k: number, step: number): number => (wraps ? (k + step + count) % count : Math.max(0, Math.min(count - 1, k + step)));
  return feet.map((foot, k) => {
    const reach = [-1, 1].map((step) => {
      let steps = 0;
      while (steps < count && beside(k, step * (steps + 1)) !== beside(k, step * steps) && shares(k, beside(k, step * (steps + 1)))) steps++;
      return steps;
    });
    const [before, after] = reach as [number, number];
    if (before + after === 0) return foot;
    const along = unit(plus(feet[beside(k, after + 1)]!, feet[beside(k, -before - 1)]!, -1), [1, 0, 0]);
    return plus(foot, along, FAN * (before - after) / 2);
  });
}

/** Direction of the columns that a row stands on, stitch by stitch; up where there is none yet. */
export function walesUnder(web: Web, at: Float64Array, row: WebRow): Vector[] {
  const { baseStart, bases } = web;
  const upOf = (head: number): Vector => {
    let up: Vector = [0, 0, 0];
    for (let k = baseStart[head]!; k < baseStart[head + 1]!; k++) up = plus(up, plus(pointAt(at, head), pointAt(at, bases[k]!), -1));
    return lengthOf(up) < 1e-9 ? seedUp(web, head) : unit(up);
  };
  return Array.from({ length: row.end - row.first }, (_, n) => {
    let sum: Vector = [0, 0, 0];
    for (let k = baseStart[row.first + n]!; k < baseStart[row.first + n + 1]!; k++) sum = plus(sum, upOf(bases[k]!));
    return sum;
  });
}

/** Rings stand on end, chains lie on the table. */
function seedUp(web: Web, head: number): Vector {
  return web.rows[web.rowOf[head]!]!.wraps ? [0, 0, 1] : [0, 1, 0];
}

/** Directions evened out along a row; a whole round meets its own start. */
export function smoothed(wales: readonly Vector[], wraps: boolean): Vector[] {
  let now = [...wales];
  const count = now.length;
  for (let pass = 0; pass < 3; pass++) {
    const before = now;
    now = before.map((own, k) => {
      const left = before[k - 1] ?? (wraps ? before[count - 1]! : own);
      const right = before[k + 1] ?? (wraps ? before[0]! : own);
      return plus(plus(own, left), right);
    });
  }
  return now.map((wale) => unit(wale, [0, 0, 0]));
}

/** Mean of some points. */
export function meanOf(points: readonly Vector[]): Vector {
  return points.reduce((sum, point) => plus(sum, point, 1 / points.length), [0, 0, 0] as Vector);
}
