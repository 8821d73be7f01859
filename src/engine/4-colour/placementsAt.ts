import type { Pattern } from '../1-pattern/pattern.ts';
import { FLAG } from '../3-fabric/fabric.ts';
import type { ColourGrid } from './colourGrid.ts';
import { cellOnColumn, placementLie, type MotifCell } from './placementLie.ts';

/** One layer of colour at a stitch. `letter` is `.` where a motif lies over the stitch but leaves it. */
export type ColourLayer =
  | { readonly kind: 'cell'; readonly letter: string }
  | { readonly kind: 'placement'; readonly placement: string; readonly motif: string; readonly letter: string; readonly cell: MotifCell }
  | { readonly kind: 'base'; readonly letter: string };

/** What lies over a stitch that counts, top layer first and the yarn of the row last. Stitches that don't count have their base only. */
export function placementsAt(pattern: Pattern, grid: ColourGrid, size: number, stitch: number): readonly ColourLayer[] {
  const { fabric, columns } = grid;
  if (!(stitch >= 0 && stitch < fabric.count)) throw new RangeError(`stitch ${stitch} asked of a fabric of ${fabric.count}`);
  const base: ColourLayer = { kind: 'base', letter: pattern.yarns[fabric.yarn[stitch]!]?.letter ?? '' };
  const row = fabric.row[stitch]!;
  const column = columns.columnOf[stitch]!;
  if (!(fabric.flags[stitch]! & FLAG.counts)) return [base];
  const layers: ColourLayer[] = [];
  for (const run of pattern.cells) {
    const letter = run.letters[column - run.from];
    if (run.size === size && letter && letter !== '.' && grid.rows.indexOf(run.section, run.row) === row) layers.unshift({ kind: 'cell', letter });
  }
  for (const placement of [...pattern.placements].reverse()) {
    const motif = pattern.motifs.find((one) => one.id === placement.motif);
    const lie = motif && placementLie(placement, motif, grid);
    const cell = lie && cellOnColumn(lie, grid, row, column);
    if (motif && cell) layers.push({ kind: 'placement', placement: placement.id, motif: motif.id, letter: cell.letter, cell });
  }
  return [...layers, base];
}
