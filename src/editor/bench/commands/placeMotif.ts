import type { Motif, Placement } from '../../../engine/1-pattern/pattern.ts';
import type { Edit } from '../../../engine/1-pattern/edit.ts';
import { fillWidth } from '../../../engine/4-colour/fillWidth.ts';
import { columnCount } from '../../../engine/4-colour/rowColumns.ts';
import type { MotifLie } from '../../touch/choice.ts';
import type { BenchState, Command } from '../benchState.ts';
import { freshIds } from './freshIds.ts';

/**
 * Places a motif with its bottom row on the row of a stitch. A motif that the pattern hasn't got yet is taken in with
 * the same step. A stitch that doesn't count (a turning chain) stands for the nearest one that does. None where the motif does
 * not go into the row once.
 */
export function placeMotif(motif: Motif, stitch: number, lie: MotifLie, mirror: boolean): Command {
  return (state) => {
    const placement = placementAt(state, motif, stitch, lie, mirror);
    if (!placement) return null;
    const known = state.pattern.motifs.some((each) => each.id === motif.id);
    const edits: Edit[] = known ? [] : [{ kind: 'insertMotif', at: state.pattern.motifs.length, motif }];
    edits.push({ kind: 'insertPlacement', at: state.pattern.placements.length, placement });
    return { label: `Place ${motif.name}`, at: state.at, edits };
  };
}

function placementAt(state: BenchState, motif: Motif, stitch: number, lie: MotifLie, mirror: boolean): Placement | null {
  const { fabric, columns, meets } = state.grids[state.size]!;
  const row = fabric.row[stitch] ?? -1;
  const worked = fabric.rows[row];
  const column = worked ? columnNear(columns.columnOf, worked, stitch) : -1;
  const cells = motif.cells[0]?.length ?? 0;
  if (!worked || column < 0 || cells === 0 || worked.word === 'foundation') return null;
  const width = columnCount(columns, row);
  const { repeats, leftOver } = fillWidth(width, cells, 0, meets[row] ?? false);
  if (repeats === 0) return null;
  const common = { id: freshIds(state.pattern, 'placement-', 1)[0]!, section: fabric.sections[worked.section]!.id, motif: motif.id, row: worked.key, up: 1, mirror };
  switch (lie) {
    case 'centre':
    case 'left':
    case 'right':
      return { ...common, align: lie, offset: 0, across: 'fill', gap: 0 };
    case 'spread':
      return { ...common, align: 'centre', offset: 0, across: repeats, gap: Math.floor(leftOver / Math.max(1, meets[row] ? repeats : repeats - 1)) };
    case 'once':
      return { ...common, align: 'left', offset: Math.max(0, Math.min(width - cells, column - Math.floor(cells / 2))), across: 1, gap: 0 };
  }
}

/** Column of a stitch, or of the nearest one in its row that has one; -1 where none has. */
function columnNear(columnOf: Int32Array, { first, end }: { readonly first: number; readonly end: number }, stitch: number): number {
  for (let off = 0; off < end - first; off++) {
    for (const near of [stitch - off, stitch + off]) if (near >= first && near < end && columnOf[near]! >= 0) return columnOf[near]!;
  }
  return -1;
}
