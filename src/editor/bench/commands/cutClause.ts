import { readLine } from '../../../engine/2-construct/readLine.ts';
import type { WorkedRow } from '../../../engine/3-fabric/fabric.ts';
import type { Instruction } from '../../../engine/notation/instruction.ts';
import { writeRow } from '../../../engine/notation/writeRow.ts';
import type { BenchState } from '../benchState.ts';
import { madeByClause } from './madeByClause.ts';
import type { RowOfLine } from './rowOfLine.ts';

/**
 * The words of a row up to and including one of its stitches, good for every size, without their full stop. A plain run is
 * cut to so many stitches, in every size as far from its end; after the last stitch of any clause the words end there.
 * Null where the stitch is within a repeat or a group.
 */
export function cutClause(state: BenchState, row: RowOfLine, worked: WorkedRow, stitch: number): string | null {
  const { body } = readLine(row.line, state.pattern);
  const index = state.fabric.instruction[stitch]!;
  const clause = body[index];
  if (!clause || body.some((each) => each.kind === 'asRows')) return null;
  const made = madeByClause(state.grids, worked.key, index);
  const own = made[state.size]!;
  const upTo = own.filter((each) => each <= stitch).length;
  if (upTo === own.length) return row.line.text.slice(0, clause.range[1]);
  const beyond = own.length - upTo;
  // A size that has no such row takes the number of the size shown.
  const sound = made.map((each) => (each.length === 0 ? upTo : each.length - beyond));
  if (sound.some((count) => count < 1)) return null;
  const run = runOf(clause, sound);
  if (!run) return null;
  const before = body[index - 1];
  const words = writeRow([run], null, { terms: state.pattern.terms }).replace(/\.$/, '');
  return `${before ? `${row.line.text.slice(0, before.range[1])}, ` : ''}${words}`;
}

/** The run with another count for each size; null for what is no run of stitches of one kind. */
function runOf(clause: Instruction, counts: readonly number[]): Instruction | null {
  if (clause.kind !== 'work' || clause.each !== 1) return null;
  const { into } = clause;
  if (into.at !== 'next' && into.at !== 'across') return null;
  const count = counts.every((one) => one === counts[0]) ? counts[0]! : counts;
  return { ...clause, into: { at: 'next', count, what: into.what } };
}
