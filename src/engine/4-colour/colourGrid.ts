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

const GRIDS = new WeakMap<Fabric, ColourGrid>();

/** Indexes a fabric for colour. Linear the first time; the same fabric, which never changes, gives the very same grid again. */
export function colourGrid(fabric: Fabric): ColourGrid {
  const known = GRIDS.get(fabric);
  if (known) return known;
  const grid: ColourGrid = { fabric, columns: rowColumns(fabric), rows: colourRows(fabric), meets: sidesMeet(fabric) };
  GRIDS.set(fabric, grid);
  return grid;
}
