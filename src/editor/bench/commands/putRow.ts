import type { Edit, Transaction } from '../../../engine/1-pattern/edit.ts';
import type { Line } from '../../../engine/1-pattern/pattern.ts';
import type { BenchState } from '../benchState.ts';
import { freshIds } from './freshIds.ts';
import type { RowOfLine } from './rowOfLine.ts';

/** The step that puts a row of the given text (or a line of so many) after another row, cutting that row's line in two where the row is in its middle. */
export function putRow(state: BenchState, after: RowOfLine, text: string, label: string, rows = 1): Transaction {
  const [cut, fresh] = freshIds(state.pattern, 'line-', 2) as [string, string];
  const section = after.section.id;
  const inside = after.nth + 1 < after.rows;
  const edits: Edit[] = inside ? [{ kind: 'splitLine', section, line: after.line.id, at: after.nth + 1, newId: cut }] : [];
  const word = after.line.kind === 'row' && after.line.label.word === 'round' ? 'round' : 'row';
  const line: Line = { kind: 'row', id: fresh, label: { word, rows, start: null, side: null }, text };
  edits.push({ kind: 'insertLines', section, at: after.at + 1, lines: [line] });
  return { label, at: state.at, edits };
}
