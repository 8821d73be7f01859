import type { Flanks, FlankTop } from './flanks.ts';
import type { Ground, IndexedRow } from './ground.ts';
import type { Ghost, Guide } from './layout.ts';
import { bandOver } from './openBands.ts';
import { flankPoint } from './placeFlank.ts';
import type { PlacedFlank } from './placeFlank.ts';

/** Bands round the stitches that were left open, with their counts, and the middle of the piece: its seam or its centre. */
export function turnedGuides(ground: Ground, rows: readonly IndexedRow[], flanks: Flanks, bent: readonly PlacedFlank[], ghosts: readonly Ghost[]): Guide[] {
  const guides: Guide[] = [];
  for (const [tops, side] of [[flanks.left, -1], [flanks.right, 1]] as const) {
    const flank = bent.find((placed) => placed.side === side);
    const runs = runsOfOneRow(ground, tops);
    if (flank) guides.push(...runs.map((run) => bentBand(rows, flank, run)));
    else guides.push(...columnBands(ground, rows, tops, runs, side));
  }
  const middle = middleLine(ground, rows, flanks, ghosts);
  return middle ? [...guides, middle] : guides;
}

/** A run of flank stitches `[from, end)` that one row made. */
interface Run {
  readonly from: number;
  readonly end: number;
  readonly row: number;
}

function runsOfOneRow(ground: Ground, tops: readonly FlankTop[]): Run[] {
  const runs: Run[] = [];
  const own = tops.filter(({ column }) => column.length > 0);
  for (let from = 0; from < own.length; ) {
    const row = ground.fabric.row[own[from]!.stitch]!;
    let end = from + 1;
    while (end < own.length && ground.fabric.row[own[end]!.stitch] === row) end++;
    runs.push({ from, end, row });
    from = end;
  }
  return runs;
}

/** The row that left stitches of `row` open: the next one worked on it. */
function leftBy(rows: readonly IndexedRow[], row: number): number {
  return rows.find(({ below, index }) => below === row && index > row)?.index ?? row;
}

/** Distance of a band's words from the fabric beside it, in row heights. */
const WORDS_CLEAR = 0.9;
/** Distance of words from the outermost column, in stitch widths. */
const COLUMN_CLEAR = 1.05;

function bentBand(rows: readonly IndexedRow[], flank: PlacedFlank, { from, end, row }: Run): Guide {
  const { heads, along, down, side, tops } = flank;
  const [first, last] = [heads[from]!, heads[end - 1]!];
  const deep = Math.max(...tops.slice(from, end).map(({ column }) => column.length)) + 2;
  const at = ([x, y]: readonly [number, number], steps: number, depth: number): readonly [number, number] => [x + along[0] * steps + down[0] * depth, y + along[1] * steps + down[1] * depth];
  const middles = (depth: number): (readonly [number, number])[] => heads.slice(from + 1, end - 1).map((_, t) => flankPoint(flank, from + 1 + t, depth));
  const points = [at(first, -0.42, -0.12), ...middles(-0.12), at(last, 0.42, -0.12), at(last, 0.42, 1), ...middles(1).reverse(), at(first, -0.42, 1)].flat();
  const [textX, textY] = at([(first[0] + last[0]) / 2, (first[1] + last[1]) / 2], 0, deep + WORDS_CLEAR);
  const turn = Math.atan2(along[1], along[0]);
  return { kind: 'open', points, count: end - from, row: leftBy(rows, row), lastRow: leftBy(rows, row), textX, textY, turnRad: side > 0 ? turn : turn + (turn < 0 ? Math.PI : -Math.PI) };
}

/** Bands where columns are kept: one on each run, and the words of the whole side beside the outermost column, reading upwards. */
function columnBands(ground: Ground, rows: readonly IndexedRow[], tops: readonly FlankTop[], runs: readonly Run[], side: -1 | 1): Guide[] {
  if (runs.length === 0) return [];
  const { w, first, corners } = ground;
  const own = tops.filter(({ column }) => column.length > 0).map(({ stitch }) => stitch);
  const leftToRight = (run: Run): number[] => (side > 0 ? own.slice(run.from, run.end) : own.slice(run.from, run.end).reverse());
  const boxes = runs.map((run) => bandOver(ground, leftToRight(run), leftBy(rows, run.row), 0));
  let [outer, low, high] = [-Infinity, -Infinity, Infinity];
  for (const row of rows) {
    for (let c = (row.first - first) * 8; c < (row.end - first) * 8; c += 2) {
      outer = Math.max(outer, side * corners[c]!);
      low = Math.max(low, corners[c + 1]!);
      high = Math.min(high, corners[c + 1]!);
    }
  }
  const numbers = runs.map(({ row }) => leftBy(rows, row));
  const words: Guide = { kind: 'open', points: [], count: own.length, row: Math.min(...numbers), lastRow: Math.max(...numbers), textX: side * (outer + COLUMN_CLEAR * w), textY: (low + high) / 2, turnRad: (side * Math.PI) / 2 };
  return [...boxes, words];
}

/** A line under the middle: the seam that the first row goes over, else the centre of the hinge row. */
function middleLine(ground: Ground, rows: readonly IndexedRow[], { turnRow }: Flanks, ghosts: readonly Ghost[]): Guide | null {
  const { fabric, outside, h, w } = ground;
  if (rows.length === 0) return null;
  const bottom = Math.max(0, ...ghosts.filter(({ angle }) => angle === 0).map(({ headY }) => headY + h)) + 1.2 * h;
  for (const seam of fabric.seams) {
    const [before, after] = [outside.get(seam.before), outside.get(seam.after)];
    if (!before || !after || Math.abs(before[0] - after[0]) > 1.5 * w) continue;
    const x = (before[0] + after[0]) / 2;
    return { kind: 'seam', points: [x, 0, x, bottom] };
  }
  const hinge = rows[Math.max(0, turnRow - 1)]!;
  let [x0, x1] = [Infinity, -Infinity];
  for (let stitch = hinge.first; stitch < hinge.end; stitch++) {
    const i = stitch - ground.first;
    [x0, x1] = [Math.min(x0, ground.headX[i]!), Math.max(x1, ground.headX[i]!)];
  }
  return { kind: 'centre', points: [(x0 + x1) / 2, 0, (x0 + x1) / 2, bottom] };
}
