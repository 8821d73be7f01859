import { columnCount } from '../../../engine/4-colour/rowColumns.ts';
import type { Command } from '../benchState.ts';

/** Moves a placed motif by rows up and stitches to the right. None where there is no row to go to. */
export function movePlacement(id: string, rowsUp: number, stitchesRight: number): Command {
  return (state) => {
    const placement = state.pattern.placements.find((each) => each.id === id);
    const grid = state.grids[state.size]!;
    if (!placement) return null;
    const rows = grid.rows.of(placement.section);
    const next = rows[rows.indexOf(grid.rows.indexOf(placement.section, placement.row)) + rowsUp];
    const worked = next === undefined ? undefined : grid.fabric.rows[next];
    if (!worked || worked.word === 'foundation') return null;
    const offset = placement.offset + (placement.align === 'right' ? -stitchesRight : stitchesRight);
    if (Math.abs(offset) > columnCount(grid.columns, next!)) return null;
    if (rowsUp === 0 && stitchesRight === 0) return null;
    const name = state.pattern.motifs.find((motif) => motif.id === placement.motif)?.name ?? 'motif';
    return { label: `Move ${name}`, at: state.at, edits: [{ kind: 'setPlacement', placement: { ...placement, row: worked.key, offset } }] };
  };
}
