import type { Edit } from '../../../engine/1-pattern/edit.ts';
import type { RowKey } from '../../../engine/1-pattern/pattern.ts';
import { sectionShown, type Command } from '../benchState.ts';
import { rowAlone } from './rowAlone.ts';
import { rowOfLine } from './rowOfLine.ts';

/**
 * Takes one row out of the section with its loose cells. A motif that begins on it begins on the row after it instead.
 * None where that motif would have no row left. `name` is how the row is called in the step's label.
 */
export function removeRow(key: RowKey, name: string): Command {
  return (state) => {
    const section = sectionShown(state);
    const row = section && rowOfLine(state.pattern, section.id, key, state.size);
    if (!section || !row) return null;
    const { edits, line, pattern } = rowAlone(state.pattern, row);
    const lines = pattern.sections.find((each) => each.id === section.id)!.lines;
    const next = lines.slice(lines.findIndex((each) => each.id === line.id) + 1).find((each) => each.kind === 'row');
    const onRow = (each: { readonly section: string; readonly row: RowKey }) => each.section === section.id && each.row.line === line.id;
    const placed = pattern.placements.filter(onRow);
    if (placed.length > 0 && !next) return null;
    const cleared: Edit[] = pattern.cells.filter(onRow).map((run) => ({ kind: 'setCells', section: section.id, row: run.row, size: run.size, runs: [] }));
    const once = cleared.filter((edit, i) => cleared.findIndex((other) => JSON.stringify(other) === JSON.stringify(edit)) === i);
    const moved: Edit[] = placed.map((placement) => ({ kind: 'setPlacement', placement: { ...placement, row: { line: next!.id, nth: 0 } } }));
    return { label: `Remove ${name}`, at: state.at, edits: [...edits, ...once, ...moved, { kind: 'removeLines', section: section.id, lines: [line.id] }] };
  };
}
