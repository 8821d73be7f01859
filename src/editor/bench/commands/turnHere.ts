import { applyTransaction } from '../../../engine/1-pattern/applyTransaction.ts';
import type { Edit } from '../../../engine/1-pattern/edit.ts';
import type { Line, Pattern, RowKey } from '../../../engine/1-pattern/pattern.ts';
import { construct } from '../../../engine/2-construct/construct.ts';
import { readLine } from '../../../engine/2-construct/readLine.ts';
import { sizesText } from '../../../engine/2-construct/recipes/sizesText.ts';
import { FLAG, type Fabric } from '../../../engine/3-fabric/fabric.ts';
import { work } from '../../../engine/3-fabric/work.ts';
import { sectionShown, type BenchState, type Command } from '../benchState.ts';
import { cutClause } from './cutClause.ts';
import { followCounts } from './followCounts.ts';
import { rowAlone } from './rowAlone.ts';
import { rowOfLine } from './rowOfLine.ts';

/**
 * Makes a short row: the row stops after the stitch and says how many it leaves unworked, in every size the same number
 * from its end; the counts of the rows above follow. None in rounds and foundations, after a row's last stitch, and where
 * the row's words can't be cut there in every size.
 */
export function turnHere(stitch: number): Command {
  return (state) => {
    const section = sectionShown(state);
    const worked = state.fabric.rows[state.fabric.row[stitch] ?? -1];
    if (!section || !worked || worked.round || !(state.fabric.flags[stitch]! & FLAG.counts)) return null;
    if (worked.word === 'foundation' || worked.word === 'step' || state.fabric.sections[worked.section]?.id !== section.id) return null;
    const row = rowOfLine(state.pattern, section.id, worked.key, state.size);
    const clause = row && cutClause(state, row, worked, stitch);
    if (!row || clause === null) return null;
    const alone = rowAlone(state.pattern, row);
    const text = shortText(alone.pattern, section.id, alone.line, clause, statedUnit(state, row.line));
    if (text === null) return null;
    const edits: Edit[] = [...alone.edits, { kind: 'setLine', section: section.id, line: { ...alone.line, text } }];
    const cut = applyTransaction(state.pattern, { label: '', at: 0, edits });
    if (!cut.ok) return null;
    const number = worked.number === null ? 'the row' : `row ${worked.number}`;
    return { label: `Turn ${number} early`, at: state.at, edits: [...edits, ...followCounts(cut.pattern, section.id, alone.line.id)] };
  };
}

/** The words of the short row: what is worked, what is left, the count. Null where nothing would be left in any size. */
function shortText(pattern: Pattern, section: string, line: Line, clause: string, unit: string): string | null {
  const trial: Line = { ...line, text: `${clause}.` };
  const tried = applyTransaction(pattern, { label: '', at: 0, edits: [{ kind: 'setLine', section, line: trial }] });
  if (!tried.ok) return null;
  const fabrics = tried.pattern.sizes.map((_, size) => work(construct(tried.pattern, size)));
  const left = fabrics.map((fabric) => Number(fabric.findings.find((each) => each.rule === 'leftUnsaid' && each.where.line === line.id)?.found ?? 0));
  const made = fabrics.map((fabric) => rowOf(fabric, { line: line.id, nth: 0 })?.made ?? 0);
  if (left.every((count) => count === 0)) return null;
  return `${clause}. Leave ${sizesText(left)} unworked. (${sizesText(made)} ${unit})`;
}

function statedUnit(state: BenchState, line: Line): string {
  const unit = readLine(line, state.pattern).stated?.unit;
  if (!unit) return 'sts';
  return /\(([^()]*\d[^a-z]*)([a-z ]+)\)\s*\.?$/i.exec(line.text)?.[2]?.trim() ?? unit;
}

function rowOf(fabric: Fabric, key: RowKey) {
  return fabric.rows.find((row) => row.key.line === key.line && row.key.nth === key.nth);
}
