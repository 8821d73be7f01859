import type { Fabric } from '../3-fabric/fabric.ts';
import { colourRows, type ColourRows } from './colourRows.ts';
import { rowColumns, type RowColumns } from './rowColumns.ts';
import { sidesMeet } from './sidesMeet.ts';

/** A fabric as colour sees it: rows and columns of stitches, and which rows meet themselves at their ends. */
export interface ColourGrid {
  readonly fabric: Fabric;
  readonly columns: RowColumns;
  readonly rows: ColourRows;
  readonly meets: readonly boolean[];
}

/** Indexes a fabric for colour. Linear; worth keeping while the fabric stays the same. */
export function colourGrid(fabric: Fabric): ColourGrid {
  return { fabric, columns: rowColumns(fabric), rows: colourRows(fabric), meets: sidesMeet(fabric) };
}
