import type { Pattern } from '../1-pattern/pattern.ts';
import { FLAG } from '../3-fabric/fabric.ts';
import type { ColourGrid } from './colourGrid.ts';
import { groundYarns } from './groundYarns.ts';
import { placementInSize } from './placementInSize.ts';
import { cellOnColumn, placementLie, type MotifCell } from './placementLie.ts';

/** One layer of colour at a stitch. `letter` is `.` where a motif lies over the stitch but leaves it. */
export type ColourLayer =
  | { readonly kind: 'cell'; readonly letter: string }
  | { readonly kind: 'placement'; readonly placement: string; readonly motif: string; readonly letter: string; readonly cell: MotifCell }
  | { readonly kind: 'base'; readonly letter: string };

/** What lies over a stitch that counts, top layer first and its ground last. Stitches that don't count have their ground only. */
export function placementsAt(pattern: Pattern, grid: ColourGrid, size: number, stitch: number): readonly ColourLayer[] {
  const { fabric, columns } = grid;
  if (!(stitch >= 0 && stitch < fabric.count)) throw new RangeError(`stitch ${stitch} asked of a fabric of ${fabric.count}`);
  const base: ColourLayer = { kind: 'base', letter: pattern.yarns[groundYarns(pattern, grid)[stitch]!]?.letter ?? '' };
  const row = fabric.row[stitch]!;
  const column = columns.columnOf[stitch]!;
  if (!(fabric.flags[stitch]! & FLAG.counts)) return [base];
  const layers: ColourLayer[] = [];
  for (const run of pattern.cells) {
    const letter = run.letters[column - run.from];
    if (run.size === size && letter && letter !== '.' && grid.rows.indexOf(run.section, run.row) === row) layers.unshift({ kind: 'cell', letter });
  }
  for (const one of [...pattern.placements].reverse()) {
    const placement = placementInSize(one, size);
    if (!placement) continue;
    const motif = pattern.motifs.find((other) => other.id === placement.motif);
    const lie = motif && placementLie(placement, motif, grid, size);
    const cell = lie && cellOnColumn(lie, grid, row, column);
    if (motif && cell) layers.push({ kind: 'placement', placement: placement.id, motif: motif.id, letter: cell.letter, cell });
  }
  return [...layers, base];
}
