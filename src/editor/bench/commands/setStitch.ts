import { applyTransaction } from '../../../engine/1-pattern/applyTransaction.ts';
import type { Edit } from '../../../engine/1-pattern/edit.ts';
import { readLine } from '../../../engine/2-construct/readLine.ts';
import { FLAG } from '../../../engine/3-fabric/fabric.ts';
import { plainCall, type Instruction } from '../../../engine/notation/instruction.ts';
import { writeRow } from '../../../engine/notation/writeRow.ts';
import { stitchRow } from '../../../engine/craft/stitches.ts';
import { sectionShown, type BenchState, type Command } from '../benchState.ts';
import { followCounts } from './followCounts.ts';
import { madeByClause } from './madeByClause.ts';
import { rowAlone } from './rowAlone.ts';
import { rowOfLine } from './rowOfLine.ts';

/** What is made in the place of a plain stitch: two in it, one over it and the next, a bobble. */
export type StitchChange = 'increase' | 'decrease' | 'bobble';

const NAMES: Readonly<Record<StitchChange, string>> = { increase: 'Increase', decrease: 'Decrease', bobble: 'Set a bobble' };

/**
 * Changes one stitch of a plain run: in every size so many stitches after the start of the run as in the size shown. The
 * counts of the row and of the rows above follow. None within repeats and groups, and where a size has too few stitches.
 */
export function setStitch(stitch: number, change: StitchChange): Command {
  return (state) => {
    const section = sectionShown(state);
    const worked = state.fabric.rows[state.fabric.row[stitch] ?? -1];
    if (!section || !worked || !(state.fabric.flags[stitch]! & FLAG.counts) || state.fabric.sections[worked.section]?.id !== section.id) return null;
    const row = rowOfLine(state.pattern, section.id, worked.key, state.size);
    if (!row || row.line.kind !== 'row' || worked.word === 'foundation') return null;
    const { body } = readLine(row.line, state.pattern);
    const index = state.fabric.instruction[stitch]!;
    const clause = body[index];
    const made = madeByClause(state.grids, worked.key, index);
    const at = made[state.size]!.indexOf(stitch);
    const changed = clause && at >= 0 && !body.some((each) => each.kind === 'asRows') ? changedRun(clause, change, at, made.map((own) => own.length)) : null;
    if (!clause || !changed) return null;
    const before = body[index - 1];
    const words = writeRow(changed, null, { terms: state.pattern.terms }).replace(/\.$/, '');
    const text = `${before ? `${row.line.text.slice(0, before.range[1])}, ` : ''}${words}${row.line.text.slice(clause.range[1])}`;
    const edits = editsFor(state, row, text);
    return edits && { label: `${NAMES[change]} in ${worked.number === null ? 'the row' : `${worked.word === 'round' ? 'round' : 'row'} ${worked.number}`}`, at: state.at, edits };
  };
}

function editsFor(state: BenchState, row: NonNullable<ReturnType<typeof rowOfLine>>, text: string): Edit[] | null {
  const alone = rowAlone(state.pattern, row);
  const edits: Edit[] = [...alone.edits, { kind: 'setLine', section: row.section.id, line: { ...alone.line, text } }];
  const set = applyTransaction(state.pattern, { label: '', at: 0, edits });
  return set.ok ? [...edits, ...followCounts(set.pattern, row.section.id, alone.line.id)] : null;
}

/** The run in up to three: what comes before the stitch, the change, the rest. `counts`: stitches of the run by size, 0 where a size has no such row. */
function changedRun(clause: Instruction, change: StitchChange, at: number, counts: readonly number[]): readonly Instruction[] | null {
  if (clause.kind !== 'work' || clause.each !== 1 || clause.stitch.together !== 1) return null;
  const { into } = clause;
  if (into.at !== 'next' && into.at !== 'across') return null;
  const takes = change === 'decrease' ? 2 : 1;
  const rest = counts.map((count) => (count === 0 ? 1 : count - at - takes));
  if (rest.some((count) => count < 0)) return null;
  const next = (count: number | readonly number[]) => ({ at: 'next', count, what: into.what }) as const;
  const one = { ...clause, into: next(1) };
  const set: Instruction =
    change === 'increase' ? { ...one, each: 2 }
    : change === 'decrease' ? { ...one, stitch: { ...clause.stitch, together: 2 } }
    : { ...one, stitch: plainCall('bobble', stitchRow('bobble').legs) };
  const parts: Instruction[] = at > 0 ? [{ ...clause, into: next(at) }, set] : [set];
  if (rest.every((count) => count === 0)) return parts;
  if (rest.some((count) => count === 0)) return null;
  const same = rest.every((count) => count === rest[0]);
  return [...parts, into.at === 'across' ? clause : { ...clause, into: next(same ? rest[0]! : rest) }];
}
