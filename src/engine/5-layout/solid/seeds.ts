import { pointAt, setPoint } from './vector.ts';
import type { Web, WebRow } from './web.ts';

/** Places a row that stands on nothing: a closed chain as a ring on end, an open one as a line, a ring as a point; each further one beside what is there. */
export function placeSeed(at: Float64Array, row: WebRow): void {
  const count = row.end - row.first;
  let side = 0;
  for (let i = 0; i < row.first; i++) side = Math.max(side, at[i * 3]!);
  const radius = count / (2 * Math.PI);
  const fromX = row.first === 0 ? 0 : side + 2 + (row.wraps ? radius : 0);
  for (let i = row.first; i < row.end; i++) {
    const k = i - row.first;
    const angle = (2 * Math.PI * k) / count;
    setPoint(at, i, row.wraps ? [fromX + radius * Math.cos(angle), radius * Math.sin(angle), 0] : [fromX + k, 0, 0]);
  }
}

/**
 * Places a first round that goes all round a point or a chain, as wide as its stitches ask, else as a cone. Returns false for
 * any other round.
 */
export function placeFirstRound(web: Web, at: Float64Array, row: WebRow, heights: Float64Array): boolean {
  const below = rowUnder(web, row);
  if (!below) return false;
  if (below.centre) placeAboutPoint(at, row, below, heights);
  else if (!below.wraps && !below.partial && standsOnNothing(web, below)) placeAboutChain(web, at, row, below, heights);
  else return false;
  return true;
}

/** The one row that all stitches of a round stand on. */
function rowUnder({ rows, rowOf, baseStart, bases }: Web, row: WebRow): WebRow | null {
  let only = -1;
  for (let k = baseStart[row.first]!; k < baseStart[row.end]!; k++) {
    const below = rowOf[bases[k]!]!;
    if (only >= 0 && below !== only) return null;
    only = below;
  }
  return rows[only] ?? null;
}

function standsOnNothing({ baseStart }: Web, row: WebRow): boolean {
  return baseStart[row.first] === baseStart[row.end];
}

function placeAboutPoint(at: Float64Array, row: WebRow, below: WebRow, heights: Float64Array): void {
  const middle = pointAt(at, below.first);
  const count = row.end - row.first;
  for (let i = row.first; i < row.end; i++) {
    const sine = Math.min(1, count / (2 * Math.PI) / heights[i]!);
    const angle = (2 * Math.PI * (i - row.first)) / count;
    const out = heights[i]! * sine;
    setPoint(at, i, [middle[0] + out * Math.cos(angle), middle[1] + out * Math.sin(angle), middle[2] + heights[i]! * Math.sqrt(1 - sine * sine)]);
  }
}

/**
 * Round both sides of a chain that lies along x: stitches above it stand up, those of its other side down, and stitches that
 * share an end chain fan round it. Left of the chain the ring runs on downwards, since it runs from left to right above.
 */
function placeAboutChain(web: Web, at: Float64Array, row: WebRow, below: WebRow, heights: Float64Array): void {
  const { baseStart, bases, right } = web;
  const count = row.end - row.first;
  const baseOf = (i: number): number => (baseStart[i]! < baseStart[i + 1]! ? bases[baseStart[i]!]! : -1);
  // Start where the ring enters the left end chain from below: the group that shares it.
  const groups: number[][] = [];
  let start = row.first;
  for (let k = 0; k < count && baseOf(web.left[start]!) === baseOf(start); k++) start = web.left[start]!;
  for (let k = 0, i = start; k < count; k++, i = right[i]!) {
    const group = groups.at(-1);
    if (group && baseOf(group[0]!) === baseOf(i)) group.push(i);
    else groups.push([i]);
  }
  const leftEnd = below.first;
  const rightEnd = below.end - 1;
  const fromLeft = groups.findIndex((group) => baseOf(group[0]!) === leftEnd);
  let upper = true;
  for (let g = 0; g < groups.length; g++) {
    const group = groups[(g + Math.max(0, fromLeft)) % groups.length]!;
    const base = baseOf(group[0]!);
    const middle = base < 0 ? pointAt(at, below.first) : pointAt(at, base);
    group.forEach((i, k) => {
      const share = group.length > 1 ? k / (group.length - 1) : 0.5;
      const angle = base === leftEnd ? Math.PI * (1.5 - share) : base === rightEnd ? Math.PI * (0.5 - share) : upper ? Math.PI / 2 : -Math.PI / 2;
      const nudge = base === leftEnd || base === rightEnd ? 0 : (share - 0.5) * (group.length > 1 ? 0.6 : 0) * (upper ? 1 : -1);
      setPoint(at, i, [middle[0] + nudge + heights[i]! * Math.cos(angle), middle[1] + heights[i]! * Math.sin(angle), middle[2]]);
    });
    if (base === rightEnd) upper = false;
  }
}
