import type { LaidRow } from '../../../engine/4-colour/layCells.ts';
import { layCells } from '../../../engine/4-colour/layCells.ts';
import type { BenchState, Command } from '../benchState.ts';

/** Lays a yarn on stitches, in the size shown or in every size; `letter` null takes loose cells off again. No step where nothing would change. */
export function layYarn(stitches: readonly number[], letter: string | null, isEverySize = false): Command {
  return (state) => {
    const rows = rowsOf(state, stitches);
    const count = rows.reduce((sum, row) => sum + row.columns.length, 0);
    const edits = layCells(state.pattern, state.grids, state.size, rows, letter, isEverySize);
    if (edits.length === 0) return null;
    const yarn = state.pattern.yarns.find((each) => each.letter === letter);
    const many = `${count} ${count === 1 ? 'stitch' : 'stitches'}`;
    return { label: letter === null ? `Take loose cells off ${many}` : `Lay ${letter}${yarn?.name ? ` ${yarn.name}` : ''} on ${many}`, at: state.at, edits };
  };
}

/** The stitches by row and column; those that don't count have no column and are left out. */
function rowsOf(state: BenchState, stitches: readonly number[]): LaidRow[] {
  const { fabric, columns } = state.grids[state.size]!;
  const byRow = new Map<number, number[]>();
  for (const stitch of new Set(stitches)) {
    const column = columns.columnOf[stitch] ?? -1;
    if (column < 0) continue;
    const row = fabric.row[stitch]!;
    const known = byRow.get(row);
    if (known) known.push(column);
    else byRow.set(row, [column]);
  }
  return [...byRow].map(([row, at]) => ({
    section: fabric.sections[fabric.rows[row]!.section]!.id,
    row: fabric.rows[row]!.key,
    columns: at.sort((a, b) => a - b),
  }));
}
