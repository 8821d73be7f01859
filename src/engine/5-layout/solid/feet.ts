import { firstBase, lastBase } from './cornerIds.ts';
import { STANDS } from './standing.ts';
import { lengthOf, plus, pointAt, times, unit } from './vector.ts';
import type { Vector } from './vector.ts';
import type { Web, WebRow } from './web.ts';

/** Distance of stitches that stand in one place, when they are first set side by side. */
const FAN = 0.6;

/** Where the stitches of a row stand, left to right; between and beyond others where one has no base. Null for a row that stands on nothing. */
export function footPoints(web: Web, at: Float64Array, row: WebRow): Vector[] | null {
  const { baseStart, bases, stands } = web;
  const feet: (Vector | null)[] = [];
  for (let i = row.first; i < row.end; i++) {
    const from = baseStart[i]!;
    const end = baseStart[i + 1]!;
    let foot: Vector | null = from === end ? null : [0, 0, 0];
    for (let k = from; k < end; k++) foot = plus(foot!, isAtSide(stands[i]!) ? sideOf(web, at, bases[k]!, stands[i]!) : pointAt(at, bases[k]!), 1 / (end - from));
    feet.push(foot);
  }
  const known = [...feet.keys()].filter((k) => feet[k]);
  const first = known[0];
  const last = known.at(-1);
  if (first === undefined || last === undefined) return null;
  const along = unit(plus(feet[last]!, feet[first]!, -1), [1, 0, 0]);
  const count = feet.length;
  return feet.map((foot, k): Vector => {
    if (foot) return foot;
    // A round goes on from its last stitch to its first.
    const before = known.findLast((other) => other < k) ?? (row.wraps ? last - count : undefined);
    const after = known.find((other) => other > k) ?? (row.wraps ? first + count : undefined);
    if (before !== undefined && after !== undefined) return plus(times(feet[(before + count) % count]!, (after - k) / (after - before)), feet[after % count]!, (k - before) / (after - before));
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

/** Direction in which a row grows, stitch by stitch: of the columns it stands on, out of the side of the fabric, down from a chain; up where there is none yet, zero over what hangs. */
export function walesUnder(web: Web, at: Float64Array, row: WebRow, children: readonly (readonly number[])[]): Vector[] {
  const { baseStart, bases, stands } = web;
  const upOf = (head: number): Vector => {
    let up: Vector = [0, 0, 0];
    for (let k = baseStart[head]!; k < baseStart[head + 1]!; k++) up = plus(up, plus(pointAt(at, head), pointAt(at, bases[k]!), -1));
    return lengthOf(up) < 1e-9 ? seedUp(web, head) : unit(up);
  };
  const wayFrom = (base: number, how: number): Vector => {
    if (isAtSide(how)) return outOf(web, at, base, how);
    if (how !== STANDS.under) return upOf(base);
    return children[base]!.reduce((sum, top) => plus(sum, unit(plus(pointAt(at, base), pointAt(at, top), -1))), [0, 0, 0] as Vector);
  };
  return Array.from({ length: row.end - row.first }, (_, n) => {
    let sum: Vector = [0, 0, 0];
    for (let k = baseStart[row.first + n]!; k < baseStart[row.first + n + 1]!; k++) sum = plus(sum, wayFrom(bases[k]!, stands[row.first + n]!));
    return sum;
  });
}

const isAtSide = (stands: number): boolean => stands === STANDS.leftEnd || stands === STANDS.rightEnd;

/** Out of the side of the fabric at the end of a row. */
function outOf({ left, right }: Web, at: Float64Array, end: number, side: number): Vector {
  const inwards = side === STANDS.leftEnd ? right[end]! : left[end]!;
  return unit(plus(pointAt(at, end), pointAt(at, inwards), -1));
}

/** Middle of the side of a row, half a stitch beyond its last. */
function sideOf(web: Web, at: Float64Array, end: number, side: number): Vector {
  const below = side === STANDS.leftEnd ? firstBase(web, end) : lastBase(web, end);
  return plus(times(plus(pointAt(at, end), pointAt(at, below)), 0.5), outOf(web, at, end, side), web.width[end]! / 2);
}

/** Rings stand on end, chains lie on the table; what hangs goes no way of its own. */
function seedUp({ rows, rowOf, baseStart }: Web, head: number): Vector {
  const row = rows[rowOf[head]!]!;
  if (baseStart[row.first] !== baseStart[row.end]) return [0, 0, 0];
  return row.wraps ? [0, 0, 1] : [0, 1, 0];
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
