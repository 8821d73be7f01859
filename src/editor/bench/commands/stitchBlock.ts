import type { ColourGrid } from '../../../engine/4-colour/colourGrid.ts';
import { columnCount } from '../../../engine/4-colour/rowColumns.ts';
import type { BenchState, Command } from '../benchState.ts';
import { layYarn } from './layYarn.ts';
import { manySteps } from './manySteps.ts';

/** Yarns of a block of stitches as they are seen: a string of letters a row, the lowest row first, `.` where there is no stitch. */
export interface StitchBlock {
  readonly rows: readonly string[];
}

/** The stitches between two corners, row by row from the lowest, each row from its left column; empty where the corners are in different sections. */
export function blockBetween({ fabric, rows, columns }: ColourGrid, a: number, b: number): readonly (readonly number[])[] {
  const sectionOf = (stitch: number) => fabric.rows[fabric.row[stitch] ?? -1]?.section;
  const section = sectionOf(a);
  if (section === undefined || sectionOf(b) !== section) return [];
  const all = rows.of(fabric.sections[section]!.id);
  const [low, high] = sorted(all.indexOf(fabric.row[a]!), all.indexOf(fabric.row[b]!));
  const [left, right] = sorted(columnOf(a), columnOf(b));
  if (low < 0 || left < 0) return [];
  return all.slice(low, high + 1).map((row) => stitchesOf(row, left, right));

  /** A chain that doesn't count stands for the stitch next to it. */
  function columnOf(stitch: number): number {
    const { first, end } = fabric.rows[fabric.row[stitch]!]!;
    for (let near = 0; near < end - first; near++) {
      for (const other of [stitch + near, stitch - near]) if (other >= first && other < end && columns.columnOf[other]! >= 0) return columns.columnOf[other]!;
    }
    return -1;
  }

  function stitchesOf(row: number, from: number, to: number): number[] {
    const last = Math.min(to, columnCount(columns, row) - 1);
    return Array.from({ length: Math.max(0, last - from + 1) }, (_, n) => columns.stitches[columns.start[row]! + from + n]!);
  }
}

function sorted(a: number, b: number): readonly [number, number] {
  return a < b ? [a, b] : [b, a];
}

/** The yarns of a block as they lie now. */
export function copyBlock({ pattern, colours, grids, size }: BenchState, a: number, b: number): StitchBlock | null {
  const block = blockBetween(grids[size]!, a, b);
  const width = Math.max(0, ...block.map((row) => row.length));
  return width === 0 ? null : { rows: block.map((row) => row.map((stitch) => pattern.yarns[colours.yarn[stitch]!]?.letter ?? '.').join('').padEnd(width, '.')) };
}

/** The stitches that a block would lie on with its lower left corner on a stitch, and the letter for each; what goes beyond the section is left off. */
export function blockAt({ grids, size }: Pick<BenchState, 'grids' | 'size'>, block: StitchBlock, corner: number): readonly { readonly stitch: number; readonly letter: string }[] {
  const { fabric, rows, columns } = grids[size]!;
  const section = fabric.rows[fabric.row[corner] ?? -1]?.section;
  const left = columns.columnOf[corner] ?? -1;
  if (section === undefined || left < 0) return [];
  const all = rows.of(fabric.sections[section]!.id);
  const low = all.indexOf(fabric.row[corner]!);
  return block.rows.flatMap((letters, up) => {
    const row = all[low + up];
    if (low < 0 || row === undefined) return [];
    return [...letters].flatMap((letter, along) => (letter === '.' || left + along >= columnCount(columns, row) ? [] : [{ stitch: columns.stitches[columns.start[row]! + left + along]!, letter }]));
  });
}

/** Lays a copied block with its lower left corner on a stitch, as one step; yarns that the pattern hasn't got are left off. */
export function pasteBlock(block: StitchBlock, corner: number, isEverySize = false): Command {
  return (state) => {
    const laid = blockAt(state, block, corner);
    const letters = [...new Set(laid.map(({ letter }) => letter))].filter((letter) => state.pattern.yarns.some((yarn) => yarn.letter === letter));
    const commands = letters.map((letter) => layYarn(laid.filter((one) => one.letter === letter).map(({ stitch }) => stitch), letter, isEverySize));
    const [wide, high] = [Math.max(0, ...block.rows.map((row) => row.length)), block.rows.length];
    return manySteps(`Lay a block of ${wide} × ${high} stitches`, commands, true)(state);
  };
}
