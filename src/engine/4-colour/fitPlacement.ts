import type { ColourGrid } from './colourGrid.ts';
import type { PlacementFit } from './colours.ts';
import { fillWidth } from './fillWidth.ts';
import { cellsOfRow, isMirrored, startInRow, type PlacementLie } from './placementLie.ts';
import { columnCount } from './rowColumns.ts';

/** How a placement came out in one size. Linear in the rows it covers. */
export function fitPlacement(lie: PlacementLie, grid: ColourGrid): PlacementFit {
  const { placement, motif, rows, rowsWanted, width, spread } = lie;
  let cellsCut = 0;
  let cutAtSeam = false;
  for (let position = 0; position < rows.length; position++) {
    const cut = cellsBeyond(lie, grid, position);
    cellsCut += cut;
    if (cut > 0 && grid.meets[rows[position]!]) cutAtSeam = true;
  }
  return {
    placement: placement.id,
    width,
    across: spread.whole,
    up: Math.floor(rows.length / motif.cells.length),
    leftOver: { left: spread.left, right: spread.right },
    rowsCut: rowsWanted - rows.length,
    cellsCut,
    cutAtSeam,
    nearest: fillWidth(width, motif.cells[0]!.length, placement.gap, grid.meets[rows[0]!] ?? false).nearest,
  };
}

/** The fit of a placement whose row or motif is not there in this size. */
export function noFit(placement: string, rowsWanted: number): PlacementFit {
  return { placement, width: 0, across: 0, up: 0, leftOver: { left: 0, right: 0 }, rowsCut: rowsWanted, cellsCut: 0, cutAtSeam: false, nearest: { down: 0, up: 0 } };
}

function cellsBeyond(lie: PlacementLie, grid: ColourGrid, position: number): number {
  const { placement, spread } = lie;
  const cells = cellsOfRow(lie, position);
  const width = columnCount(grid.columns, lie.rows[position]!);
  const step = cells.length + placement.gap;
  const start = startInRow(lie, grid, position);
  const ofRepeat = [...cells].filter((letter) => letter !== '.').length;
  let beyond = 0;
  for (let repeat = 0; repeat < spread.repeats; repeat++) {
    const left = start + repeat * step;
    if (left >= 0 && left + cells.length <= width) {
      // Whole ones follow one another: go on to the first that may hang over the right edge.
      repeat += Math.floor((width - cells.length - left) / step);
      continue;
    }
    if (left >= width) return beyond + (spread.repeats - repeat) * ofRepeat;
    for (let i = 0; i < cells.length; i++) {
      const letter = cells[isMirrored(placement, repeat) ? cells.length - 1 - i : i];
      if (letter !== '.' && (left + i < 0 || left + i >= width)) beyond++;
    }
  }
  return beyond;
}
