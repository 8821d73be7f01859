import { firstBase } from './cornerIds.ts';
import { STANDS } from './standing.ts';
import { across, lengthOf, plus, times, unit } from './vector.ts';
import type { Vector } from './vector.ts';
import type { Web, WebRow } from './web.ts';

/** Chains over an opening that something is worked into later: a heel, a thumb. */
export interface Opening {
  /** The chains as places in their row, from left to right; a run may go on over the place where the round begins. */
  readonly places: readonly number[];
  /** How far what is set in holds the two edges apart at most, stitch widths. */
  readonly gape: number;
}

/** The openings over which each row of a web chains, by index of the row. */
export function openingsOf(web: Web, heights: Float64Array): ReadonlyMap<number, readonly Opening[]> {
  const under = new Set<number>();
  for (let i = 0; i < web.count; i++) if (web.stands[i] === STANDS.under) under.add(firstBase(web, i));
  const found = new Map<number, Opening[]>();
  for (const row of web.rows) {
    if (row.setInto < 0) continue;
    const chained = web.rows[row.setInto]!;
    if (found.has(row.setInto)) continue;
    found.set(row.setInto, runs(web, chained, under).map((places) => ({ places, gape: gapeOf(web, heights, row.setInto, places.length) })));
  }
  return found;
}

/** Runs of chains that are worked into from below. */
function runs(web: Web, row: WebRow, under: ReadonlySet<number>): number[][] {
  const found: number[][] = [];
  for (let i = row.first; i < row.end; i++) {
    if (!under.has(i) || (web.left[i]! >= 0 && under.has(web.left[i]!))) continue;
    const places: number[] = [];
    for (let at = i; at >= 0 && under.has(at) && places.length < row.end - row.first; at = web.right[at]!) places.push(at - row.first);
    found.push(places);
  }
  return found;
}

/** Twice as deep as what is set in, but no wider than the two edges can open to a circle. */
function gapeOf(web: Web, heights: Float64Array, chained: number, chains: number): number {
  let deep = 0;
  for (const row of web.rows) {
    if (row.setInto !== chained) continue;
    for (let i = row.first; i < row.end; i++) deep += heights[i]! / (row.end - row.first);
  }
  return Math.min(2 * deep, (2 * chains) / Math.PI);
}

/** Adds to the length of the columns what is set in later below the chains of an opening: most in its middle, nothing at its ends. */
export function deepen(depth: Float64Array, row: WebRow, openings: readonly Opening[]): void {
  for (const { places, gape } of openings) {
    places.forEach((place, k) => (depth[row.first + place]! += gape * Math.sin((Math.PI * (k + 0.5)) / places.length)));
  }
}

/** Feet of a row with the chains of each opening hung in a bow between its ends, to the side where `before`, the way of the work up to there, leads out of the row. */
export function bowed(web: Web, row: WebRow, feet: readonly Vector[], openings: readonly Opening[], before: Vector, axis: Vector): Vector[] {
  const bow = [...feet];
  const out = across(before, axis);
  for (const { places, gape } of openings) {
    const left = web.left[row.first + places[0]!]!;
    const right = web.right[row.first + places.at(-1)!]!;
    if (left < 0 || right < 0 || lengthOf(out) < 0.1) continue;
    const [a, b] = [feet[left - row.first]!, feet[right - row.first]!];
    const middle = times(plus(a, b), 0.5);
    const half = times(plus(b, a, -1), 0.5);
    // A half ellipse as long as its chains.
    const length = places.length + 1;
    const down = Math.sqrt(Math.max(0, 2 * (length / Math.PI) ** 2 - lengthOf(half) ** 2));
    const deep = times(unit(out), Math.min(down, gape));
    places.forEach((place, k) => {
      const angle = (Math.PI * (k + 1)) / length;
      bow[place] = plus(plus(middle, half, -Math.cos(angle)), deep, Math.sin(angle));
    });
  }
  return bow;
}
