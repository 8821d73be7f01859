import type { Ground, IndexedRow } from './ground.ts';
import { PLACED, SETTLED } from './ground.ts';
import type { RowStart } from './labelRows.ts';
import type { Box, Ghost } from './layout.ts';
import type { RowSlots } from './rowSlots.ts';

/** Where the stitches of one row stand, in arrays of a ground; y counts from the drawing's zero as it was when the row was placed. The very same object wherever the row is kept. */
export interface RowPlaces extends Pick<Ground, 'headX' | 'headY' | 'footX' | 'footY' | 'corners'> {
  /** Index of the row's first stitch in the arrays, and how many stitches it has. */
  readonly at: number;
  readonly count: number;
  /** The y that the row was placed from. */
  readonly laidY: number;
  /** Round the row's cells. */
  readonly box: Box;
}

/** What the row above stands on: the middle of a flat row, or the edges of a tube; and the height to begin from. */
export interface Level {
  readonly left: number;
  readonly right: number;
  readonly topY: number;
  /** Whether any row below has a stitch to stand on. */
  readonly isBegun: boolean;
}

export const NO_LEVEL: Level = { left: 0, right: 0, topY: 0, isBegun: false };

/** What stands beside a row and is worked out from it alone; stitch numbers from the row's own first. */
export interface RowMarks {
  /** Its number's side and the point that it belongs to. */
  readonly start: RowStart | null;
  /** Corners along the cut of a tube: two points of the left edge, two of the right. */
  readonly cut: readonly number[];
  /** Its stitches once more on the other side of the cut. */
  readonly repeats: readonly Ghost[];
  /** Where a round begins that is not joined. */
  readonly begin: { readonly x: number; readonly y: number } | null;
}

/** A row that has been placed, with all that rows above and marks need of it. */
export interface StoodRow {
  readonly places: RowPlaces;
  /** The y that it stands on now. */
  readonly originY: number;
  readonly level: Level;
  readonly marks: RowMarks;
  /** How many stitches before its own first it reaches down to. */
  readonly reach: number;
  /** Every stitch has its place, and none is where it is for want of something to stand on. */
  readonly isWhole: boolean;
}

/** How rows stand one on another: what rows back and forth and tubes differ in. */
export interface Stacking {
  readonly place: (ground: Ground, row: IndexedRow, slots: RowSlots, r: number, on: Level) => void;
  readonly level: (ground: Ground, slots: RowSlots, r: number, on: Level) => Level;
  readonly marks: (ground: Ground, row: IndexedRow, slots: RowSlots, level: Level) => RowMarks;
}

/** First stitch of a row: chains left out at a foundation's end belong to the row but were made before it. */
export function startOfRow({ fabric }: Pick<Ground, 'fabric'>, row: IndexedRow): number {
  let start = row.first;
  while (start > 0 && fabric.row[start - 1] === row.index) start--;
  return start;
}

/**
 * Places one row of a piece on the level below and settles it. Its own y are worked out from the height that it stands on and are then
 * put on a grid of 2⁻³⁰ mm, on which sums are exact: so a row comes out the same to the last bit wherever it stands.
 */
export function standRow(ground: Ground, row: IndexedRow, slots: RowSlots, r: number, on: Level, stacking: Stacking): StoodRow {
  const { frame } = ground;
  [frame.originY, frame.isAdrift] = [on.topY, false];
  stacking.place(ground, row, slots, r, on);
  frame.originY = 0;
  const start = startOfRow(ground, row);
  const at = start - ground.first;
  const count = row.end - start;
  const { headX, headY, footX, footY, corners } = ground;
  const { box, placed } = settle(ground, at, at + count, on.topY);
  const level = stacking.level(ground, slots, r, on);
  return {
    places: { headX, headY, footX, footY, corners, at, count, laidY: on.topY, box }, originY: on.topY, level, marks: stacking.marks(ground, row, slots, level),
    reach: reachOf(ground, row, start, slots), isWhole: placed === count && !frame.isAdrift,
  };
}

/** Adding and taking it away again rounds to multiples of 2⁻³⁰ (numbers under 2²¹). */
const TO_GRID = 1.5 * 2 ** 22;

function settle({ headY, footY, corners, placed }: Ground, from: number, end: number, originY: number): { readonly box: Box; readonly placed: number } {
  let [x0, y0, x1, y1, settled] = [Infinity, Infinity, -Infinity, -Infinity, 0];
  for (let i = from; i < end; i++) {
    if (placed[i] !== PLACED) continue;
    placed[i] = SETTLED;
    settled++;
    headY[i] = headY[i]! + TO_GRID - TO_GRID + originY;
    footY[i] = footY[i]! + TO_GRID - TO_GRID + originY;
    for (let c = i * 8; c < i * 8 + 8; c += 2) {
      const [x, y] = [corners[c]!, corners[c + 1]! + TO_GRID - TO_GRID + originY];
      corners[c + 1] = y;
      if (x < x0) x0 = x;
      if (x > x1) x1 = x;
      if (y < y0) y0 = y;
      if (y > y1) y1 = y;
    }
  }
  return { box: { x0, y0, x1, y1 }, placed: settled };
}

/** How many stitches before its own first a row reaches down to. */
export function reachOf({ fabric }: Ground, row: IndexedRow, start: number, { turning, leading }: RowSlots): number {
  let lowest = start;
  const end = fabric.baseStart[row.end]!;
  for (let b = fabric.baseStart[start]!; b < end; b++) if (fabric.bases[b]! < lowest) lowest = fabric.bases[b]!;
  // An arch of leading chains rises from the stitch made before them.
  const before = leading.length > 0 ? fabric.previous[turning[0] ?? leading[0]!]! : -1;
  return start - (before >= 0 && before < lowest ? before : lowest);
}

/** The row where it stands now, moved by `byMm`. Exact on the grid. */
export function movedRow(row: StoodRow, byMm: number): StoodRow {
  if (byMm === 0) return row;
  const { start, cut, repeats, begin } = row.marks;
  return {
    ...row, originY: row.originY + byMm, level: { ...row.level, topY: row.level.topY + byMm },
    marks: {
      start: start && { ...start, startY: start.startY + byMm }, cut: cut.map((value, i) => (i % 2 === 0 ? value : value + byMm)),
      repeats: repeats.map((ghost) => ({ ...ghost, headY: ghost.headY + byMm })), begin: begin && { ...begin, y: begin.y + byMm },
    },
  };
}

/** Whether two rows stand alike but for the height that they stand at: places to the last bit, and what the next row stands on. */
export function standAlike(one: StoodRow, other: StoodRow): boolean {
  const [a, b] = [one.places, other.places];
  return (
    a === b || (a.count === b.count && one.level.left === other.level.left && one.level.right === other.level.right && one.level.isBegun === other.level.isBegun &&
      one.level.topY - one.originY === other.level.topY - other.originY && sameY(a.headY, b.headY, a, b) && sameX(a.headX, b.headX, a, b) && sameX(a.footX, b.footX, a, b) && sameY(a.footY, b.footY, a, b) && sameCorners(a, b))
  );
}

function sameX(one: Float64Array, other: Float64Array, a: RowPlaces, b: RowPlaces): boolean {
  for (let i = 0; i < a.count; i++) if (one[a.at + i] !== other[b.at + i]) return false;
  return true;
}

function sameY(one: Float64Array, other: Float64Array, a: RowPlaces, b: RowPlaces): boolean {
  for (let i = 0; i < a.count; i++) if (one[a.at + i]! - a.laidY !== other[b.at + i]! - b.laidY) return false;
  return true;
}

function sameCorners(a: RowPlaces, b: RowPlaces): boolean {
  for (let i = 0; i < a.count * 8; i += 2) {
    if (a.corners[a.at * 8 + i] !== b.corners[b.at * 8 + i] || a.corners[a.at * 8 + i + 1]! - a.laidY !== b.corners[b.at * 8 + i + 1]! - b.laidY) return false;
  }
  return true;
}

/** The row's places in arrays of their own, as long as the row. */
export function ownPlaces(row: StoodRow): StoodRow {
  const { at, count, headX, headY, footX, footY, corners } = row.places;
  const cut = (numbers: Float64Array): Float64Array => numbers.slice(at, at + count);
  return { ...row, places: { ...row.places, at: 0, headX: cut(headX), headY: cut(headY), footX: cut(footX), footY: cut(footY), corners: corners.slice(at * 8, (at + count) * 8) } };
}
