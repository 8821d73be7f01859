import { FLAG, type Fabric } from '../3-fabric/fabric.ts';

/**
 * The columns of every row: the stitches that count, as seen on the right side from the left. In a row worked from right
 * to left the first stitch is the last column, in a row worked from left to right it is column 0.
 */
export interface RowColumns {
  /** Stitch numbers of all rows one after another, each row from its column 0 on. */
  readonly stitches: Int32Array;
  /** Row r holds `stitches[start[r]] … stitches[start[r + 1] - 1]`. */
  readonly start: Int32Array;
  /** Column of each stitch in its row; -1 for stitches that don't count. */
  readonly columnOf: Int32Array;
}

/** Numbers the columns of a fabric's rows. Linear. */
export function rowColumns(fabric: Fabric): RowColumns {
  const start = new Int32Array(fabric.rows.length + 1);
  const columnOf = new Int32Array(fabric.count).fill(-1);
  let total = 0;
  for (const [r, row] of fabric.rows.entries()) {
    start[r] = total;
    for (let i = row.first; i < row.end; i++) if (fabric.flags[i]! & FLAG.counts) total++;
  }
  start[fabric.rows.length] = total;
  const stitches = new Int32Array(total);
  for (const [r, row] of fabric.rows.entries()) {
    const step = row.direction;
    let column = step === 1 ? 0 : start[r + 1]! - start[r]! - 1;
    for (let i = row.first; i < row.end; i++) {
      if (!(fabric.flags[i]! & FLAG.counts)) continue;
      stitches[start[r]! + column] = i;
      columnOf[i] = column;
      column += step;
    }
  }
  return { stitches, start, columnOf };
}

/** Stitches that count in a row. */
export function columnCount(columns: RowColumns, row: number): number {
  return columns.start[row + 1]! - columns.start[row]!;
}
