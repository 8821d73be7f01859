import { applyTransaction } from '../../../engine/1-pattern/applyTransaction.ts';
import type { Edit } from '../../../engine/1-pattern/edit.ts';
import type { Line, Pattern, RowKey } from '../../../engine/1-pattern/pattern.ts';
import { sectionShown, type Command } from '../benchState.ts';
import { cellsOfRow } from './cellsOfRow.ts';
import { freshIds } from './freshIds.ts';
import { rowOfLine } from './rowOfLine.ts';

/** Most rows that one step may add. */
export const MOST_ROWS = 500;

/**
 * Works rows so many times more, right after the last of them, with their loose cells. `keys` are rows of the section shown that
 * follow one another. None for foundations and steps, and past the most rows that one step may add.
 */
export function repeatRows(keys: readonly RowKey[], times: number, name: string): Command {
  return (state) => {
    const section = sectionShown(state);
    const last = keys.at(-1);
    if (!section || !last || !Number.isInteger(times) || times < 1 || keys.length * times > MOST_ROWS) return null;
    const rows = keys.map((key) => rowOfLine(state.pattern, section.id, key, state.size));
    const after = rows.at(-1);
    if (!after || rows.some((row) => row?.line.kind !== 'row' || row.line.label.word === 'foundation')) return null;
    const inside = after.nth + 1 < after.rows;
    const [cut, ...ids] = freshIds(state.pattern, 'line-', keys.length * times + 1) as [string, ...string[]];
    const lines = ids.map((id, n): Line => {
      const row = rows[n % rows.length]!;
      return { kind: 'row', id, label: { word: row.line.kind === 'row' ? row.line.label.word : 'row', rows: 1, start: null, side: null }, text: row.line.text };
    });
    const edits: Edit[] = [
      ...(inside ? [{ kind: 'splitLine', section: section.id, line: after.line.id, at: after.nth + 1, newId: cut } as const] : []),
      { kind: 'insertLines', section: section.id, at: after.at + 1, lines },
      ...ids.flatMap((id, n) => cellsLike(state.pattern, section.id, keys[n % keys.length]!, id)),
    ];
    const done = applyTransaction(state.pattern, { label: '', at: 0, edits });
    return done.ok ? { label: `Work ${name} ${times === 1 ? 'once more' : `${times} times more`}`, at: state.at, edits } : null;
  };
}

/** The loose cells of one row, on a new one. */
function cellsLike(pattern: Pattern, section: string, key: RowKey, line: string): Edit[] {
  return pattern.sizes.flatMap((_, size): Edit[] => {
    const runs = cellsOfRow(pattern, section, key, size);
    return runs.length === 0 ? [] : [{ kind: 'setCells', section, row: { line, nth: 0 }, size, runs }];
  });
}
