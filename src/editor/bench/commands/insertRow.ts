import type { RowKey } from '../../../engine/1-pattern/pattern.ts';
import { stitchOfCode, stitchRow } from '../../../engine/craft/stitches.ts';
import type { BenchState, Command } from '../benchState.ts';
import { sectionShown } from '../benchState.ts';
import { putRow } from './putRow.ts';
import { MOST_ROWS } from './repeatRows.ts';
import { rowOfLine } from './rowOfLine.ts';

/** Puts a plain row after another, or so many: one stitch in each stitch, in the stitch of the row it follows. */
export function insertRow(key: RowKey, name: string, rows = 1): Command {
  return (state) => {
    const section = sectionShown(state);
    const row = section && rowOfLine(state.pattern, section.id, key, state.size);
    if (!section || !row || row.line.kind !== 'row' || !(Number.isInteger(rows) && rows >= 1 && rows <= MOST_ROWS)) return null;
    return putRow(state, row, plainWords(state, section.id, key), rows === 1 ? `Insert a row after ${name}` : `Work ${rows} rows even after ${name}`, rows);
  };
}

function plainWords(state: BenchState, section: string, key: RowKey): string {
  const { fabric } = state;
  const worked = fabric.rows.find((row) => row.key.line === key.line && row.key.nth === key.nth && fabric.sections[row.section]?.id === section);
  const last = worked && worked.word !== 'foundation' && worked.made > 0 ? stitchOfCode(fabric.kind[worked.end - 1]!) : stitchRow('sc');
  const kind = last.counts && last.legs === 0 && last.kind !== 'slst' ? last : stitchRow('sc');
  const word = state.pattern.terms === 'uk' ? kind.uk : kind.us;
  if (worked?.round) return `ch ${kind.turningChains}, ${word} in each st around, join.`;
  return `ch ${kind.turningChains}, turn, ${word} in each st across.`;
}
