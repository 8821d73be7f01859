import type { Motif, Placement } from '../1-pattern/pattern.ts';
import type { ColourGrid } from './colourGrid.ts';
import { columnCount } from './rowColumns.ts';
import { shiftOfRow, spreadRepeats, type Spread } from './spreadRepeats.ts';

/** Where a placement lies in one size: its rows from the bottom up, and its repeats in the bottom row. */
export interface PlacementLie {
  readonly placement: Placement;
  readonly motif: Motif;
  /** Row indices that carry the motif's rows, bottom first; shorter than `rowsWanted` where the section ends before the motif. */
  readonly rows: readonly number[];
  readonly rowsWanted: number;
  /** Stitches of the bottom row. */
  readonly width: number;
  readonly spread: Spread;
}

/** One cell of one repeat. `x` from the motif's left, `y` from its bottom, as the motif is drawn (mirrored repeats count back). */
export interface MotifCell {
  readonly repeat: number;
  readonly repeatUp: number;
  readonly x: number;
  readonly y: number;
  /** Yarn letter, or `.`. */
  readonly letter: string;
}

/** Lays a placement out on the rows of one size; `null` if its bottom row is not there, or is no row or round. */
export function placementLie(placement: Placement, motif: Motif, grid: ColourGrid): PlacementLie | null {
  const bottom = grid.rows.indexOf(placement.section, placement.row);
  const sectionRows = grid.rows.of(placement.section);
  const at = bottom < 0 ? -1 : sectionRows.indexOf(bottom);
  if (at < 0) return null;
  const rowsWanted = motif.cells.length * placement.up;
  const width = columnCount(grid.columns, bottom);
  return { placement, motif, rows: sectionRows.slice(at, at + rowsWanted), rowsWanted, width, spread: spreadRepeats(width, motif.cells[0]!.length, placement) };
}

/** Column of the first repeat's left edge in the row at `position` from the bottom; may be negative. */
export function startInRow(lie: PlacementLie, grid: ColourGrid, position: number): number {
  return lie.spread.start + shiftOfRow(lie.placement.align, lie.width, columnCount(grid.columns, lie.rows[position]!));
}

/** The motif's cells of the row at `position` from the bottom, left to right. */
export function cellsOfRow(lie: PlacementLie, position: number): string {
  const { cells } = lie.motif;
  return cells[cells.length - 1 - (position % cells.length)]!;
}

/** The cell that lies on a column of a row (fabric row index), `null` if none does (beside the repeats, in a gap, another row). */
export function cellOnColumn(lie: PlacementLie, grid: ColourGrid, row: number, column: number): MotifCell | null {
  const position = lie.rows.indexOf(row);
  if (position < 0) return null;
  const motifWidth = lie.motif.cells[0]!.length;
  const along = column - startInRow(lie, grid, position);
  const repeat = Math.floor(along / (motifWidth + lie.placement.gap));
  const inRepeat = along - repeat * (motifWidth + lie.placement.gap);
  if (repeat < 0 || repeat >= lie.spread.repeats || inRepeat >= motifWidth) return null;
  const x = isMirrored(lie.placement, repeat) ? motifWidth - 1 - inRepeat : inRepeat;
  const motifHeight = lie.motif.cells.length;
  return { repeat, repeatUp: Math.floor(position / motifHeight), x, y: position % motifHeight, letter: cellsOfRow(lie, position)[x]! };
}

/** Whether a repeat (from the left, from 0) is mirrored: every second one is, where the placement says so. */
export function isMirrored(placement: Placement, repeat: number): boolean {
  return placement.mirror && repeat % 2 === 1;
}
