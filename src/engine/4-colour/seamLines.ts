import type { Fabric } from '../3-fabric/fabric.ts';
import type { ColourGrid } from './colourGrid.ts';
import { columnCount } from './rowColumns.ts';

const KNOWN = new WeakMap<Fabric, Float64Array>();

/**
 * Where the seam (or, in a piece worked in the round, the start of the rounds) meets each row, in columns from the row's
 * left edge as seen on the right side: 3 lies between columns 2 and 3, 3.5 in the middle of column 3. Rows whose sides
 * meet have it at 0; in rows worked over a closed seam it is followed from stitch to stitch. NaN in rows that it doesn't
 * meet: flat rows without a seam. Linear in stitches, remembered by fabric.
 */
export function seamLines(grid: ColourGrid): Float64Array {
  const { fabric } = grid;
  const known = KNOWN.get(fabric);
  if (known) return known;
  const lines = Float64Array.from(fabric.rows, (_, row) => (grid.meets[row] ? 0 : Number.NaN));
  for (const seam of fabric.seams) followSeam(grid, lines, seam.before, seam.after);
  KNOWN.set(fabric, lines);
  return lines;
}

/** Follows the two stitches beside a seam upwards through the rows that are worked into them. */
function followSeam(grid: ColourGrid, lines: Float64Array, before: number, after: number): void {
  const { fabric, columns } = grid;
  let sides = [before, after] as const;
  const firstRow = Math.max(fabric.row[before] ?? 0, fabric.row[after] ?? 0) + 1;
  for (let row = firstRow; row < fabric.rows.length; row++) {
    const [left, right] = [0, 1].map((side) => workedInto(fabric, row, sides[side]!).map((stitch) => columns.columnOf[stitch]!).filter((column) => column >= 0));
    const width = columnCount(columns, row);
    const offset = columns.start[row]!;
    const stitch = (column: number) => columns.stitches[offset + column]!;
    const isRing = grid.meets[row] ?? false;
    const pair = nearestPair(left!, right!, isRing ? width : null);
    if (pair) {
      lines[row] = pair.line;
      sides = [stitch(pair.before), stitch(pair.after)];
    } else {
      // A row that reaches one side only: the other is still open below it.
      if (left![0] !== undefined) sides = [stitch(left![0]), sides[1]];
      if (right![0] !== undefined) sides = [sides[0], stitch(right![0])];
    }
  }
}

function workedInto(fabric: Fabric, row: number, base: number): readonly number[] {
  const { first, end } = fabric.rows[row]!;
  const found: number[] = [];
  for (let stitch = first; stitch < end; stitch++) {
    for (let i = fabric.baseStart[stitch]!; i < fabric.baseStart[stitch + 1]!; i++) {
      if (fabric.bases[i] === base) {
        found.push(stitch);
        break;
      }
    }
  }
  return found;
}

/** The two columns, one of each side, that lie nearest to one another, and the line midway between them; `ring`: the width of a row that goes round. */
function nearestPair(befores: readonly number[], afters: readonly number[], ring: number | null): { readonly before: number; readonly after: number; readonly line: number } | null {
  let best: { before: number; after: number; line: number } | null = null;
  let least = Number.POSITIVE_INFINITY;
  for (const before of befores) {
    for (const after of afters) {
      const apart = Math.abs(before - after);
      const isAround = ring !== null && ring - apart < apart;
      const distance = isAround ? ring - apart : apart;
      if (distance >= least) continue;
      least = distance;
      const middle = (before + after + 1) / 2;
      best = { before, after, line: isAround ? (middle + ring / 2) % ring : middle };
    }
  }
  return best;
}
