import type { ColourGrid } from './colourGrid.ts';
import type { PlacementFit } from './colours.ts';
import { fillWidth } from './fillWidth.ts';
import type { PlacementLie } from './placementLie.ts';

/** How a placement came out in one size; `beyond` are the cells of each of its rows that found no column. */
export function fitPlacement(lie: PlacementLie, grid: ColourGrid, beyond: readonly number[]): PlacementFit {
  const { placement, motif, rows, rowsWanted, width, spread } = lie;
  const gapUp = placement.gapUp ?? 0;
  return {
    placement: placement.id,
    width,
    across: spread.whole,
    up: Math.min(Math.floor((rows.length + gapUp) / (motif.cells.length + gapUp)), placement.up),
    leftOver: { left: spread.left, right: spread.right },
    rowsCut: rowsWanted - rows.length,
    cellsCut: beyond.reduce((sum, cut) => sum + cut, 0),
    cutAtSeam: beyond.some((cut, position) => cut > 0 && (grid.meets[rows[position]!] ?? false)),
    nearest: fillWidth(width, motif.cells[0]!.length, placement.gap, grid.meets[rows[0]!] ?? false).nearest,
  };
}

/** The fit of a placement whose row or motif is not there in this size. */
export function noFit(placement: string, rowsWanted: number): PlacementFit {
  return { placement, width: 0, across: 0, up: 0, leftOver: { left: 0, right: 0 }, rowsCut: rowsWanted, cellsCut: 0, cutAtSeam: false, nearest: { down: 0, up: 0 } };
}
