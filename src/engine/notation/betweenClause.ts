import { mapAmount } from './amounts.ts';
import type { Instruction } from './instruction.ts';
import type { RowReader } from './rowReader.ts';
import { readWork } from './workClause.ts';

const BETWEEN = new Set(['between']);

type Work = Extract<Instruction, { kind: 'work' }>;

/**
 * `12 bobbles with 1 sc between`: the stitches between stand one time fewer than those that they part. Null for other words,
 * and where the number is one per size.
 */
export function readWithBetween(reader: RowReader): readonly Instruction[] | null {
  if (!reader.mentions(BETWEEN)) return null;
  const start = reader.at;
  const parted = oneRun(readWork(reader));
  if (!parted || !reader.take('with')) return null;
  const between = oneRun(readWork(reader));
  if (!between || !reader.take('between')) return null;
  if (reader.take('each') || reader.take('them')) reader.take('one');
  const { count } = parted.into as Extract<Work['into'], { at: 'next' }>;
  const range = reader.range(start);
  const one: Work = { ...parted, into: { at: 'next', count: 1, what: 'st' }, range };
  const times = mapAmount(count, (value) => value - 1);
  if (typeof times !== 'number') return null;
  if (times < 1) return [one];
  return [one, { kind: 'repeat', body: [{ ...between, range }, one], times: { kind: 'times', times }, style: 'paren', range }];
}

/** The one run that clauses are: so many stitches, one in each of the next places. */
function oneRun(clauses: readonly Instruction[] | null): Work | null {
  const [only] = clauses ?? [];
  return clauses?.length === 1 && only?.kind === 'work' && only.each === 1 && only.into.at === 'next' ? only : null;
}
