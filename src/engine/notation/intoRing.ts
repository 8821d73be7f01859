import type { Instruction } from './instruction.ts';
import type { RowReader } from './rowReader.ts';

/** Words that name a place, if only the next one. */
const IN_PLACE = new Set(['in', 'into', 'next', 'of', 'around', 'over', 'each']);

/** `Magic ring, 6 sc`: a clause, read from token `start` on, that follows a ring without a place of its own goes into it. */
export function intoRing(reader: RowReader, start: number, before: readonly Instruction[], clause: readonly Instruction[] | null): readonly Instruction[] | null {
  const [only, more] = clause ?? [];
  if (more || only?.kind !== 'work' || only.into.at !== 'next' || only.into.what !== 'st' || only.each !== 1 || only.stitch.together > 1) return clause;
  const ring = before.findLast(({ kind }) => kind !== 'chain' && kind !== 'remark');
  if (ring?.kind !== 'ring' || reader.tokens.slice(start, reader.at).some(({ word }) => IN_PLACE.has(word))) return clause;
  return [{ ...only, each: only.into.count, into: { at: 'ring' } }];
}
