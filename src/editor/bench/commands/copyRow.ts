import type { RowKey } from '../../../engine/1-pattern/pattern.ts';
import type { Command } from '../benchState.ts';
import { sectionShown } from '../benchState.ts';
import { putRow } from './putRow.ts';
import { rowOfLine } from './rowOfLine.ts';

/** Works the same row once more, right after itself. */
export function copyRow(key: RowKey, name: string): Command {
  return (state) => {
    const section = sectionShown(state);
    const row = section && rowOfLine(state.pattern, section.id, key, state.size);
    if (!row || row.line.kind !== 'row' || row.line.label.word === 'foundation') return null;
    return putRow(state, row, row.line.text, `Work ${name} once more`);
  };
}
