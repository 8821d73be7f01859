import type { RowKey } from '../../../engine/1-pattern/pattern.ts';
import { sectionShown, type Command } from '../benchState.ts';
import { rowAlone } from './rowAlone.ts';
import { rowOfLine } from './rowOfLine.ts';

/**
 * Gives a row other words: all rows of its line, or with scope `row` this one alone, which then stands on a line of its
 * own. The words are kept as written, sizes and all. `name` is how the row is called in the step's label.
 */
export function editRowText(key: RowKey, text: string, scope: 'row' | 'line', name: string): Command {
  return (state) => {
    const section = sectionShown(state);
    const row = section && rowOfLine(state.pattern, section.id, key, state.size);
    if (!section || !row || row.line.text === text) return null;
    const { edits, line } = scope === 'row' ? rowAlone(state.pattern, row) : { edits: [], line: row.line };
    const label = scope === 'line' && row.rows > 1 ? `Change the words of ${row.rows} rows` : `Change the words of ${name}`;
    return { label, at: state.at, edits: [...edits, { kind: 'setLine', section: section.id, line: { ...line, text } }] };
  };
}
