import type { Instruction, Into } from './instruction.ts';
import type { RowReader } from './rowReader.ts';

const LEAD = new Set(['working', 'work', 'making', 'with', 'and', 'having']);
const CORNER = new Set(['corner', 'corners']);
const CLAUSE_END = new Set([',', ';', '.']);
/** Words that a stitch and its place are said in. */
const MOST_WORDS = 12;
const EACH = new Set(['each', 'every', 'ea', 'all']);

/**
 * `sc in each st around, working (sc, ch 2, sc) in each corner sp`: the run before goes to each corner in turn, and after the
 * last one to the end. Null where no corner's space is named.
 */
export function readEachCorner(reader: RowReader, before: Instruction, readOne: (reader: RowReader) => readonly Instruction[] | null): readonly Instruction[] | null {
  if (before.kind !== 'work' || before.into.at !== 'across' || before.into.except !== 0 || before.into.what !== 'st' || before.into.word === 'marker' || before.into.word === 'corner') return null;
  const { word } = before.into;
  while (reader.take(LEAD));
  if (!namesEachCorner(reader)) return null;
  const [corner, more] = readOne(reader) ?? [];
  if (more || (corner?.kind !== 'work' && corner?.kind !== 'group') || corner.into.at !== 'across' || corner.into.what !== 'sp') return null;
  const range = [before.range[0], corner.range[1]] as const;
  const to: Into = { at: 'across', except: 0, what: 'st', word: 'corner' };
  const run: Instruction = { ...before, into: to };
  const one: Instruction = { ...corner, into: { at: 'next', count: 1, what: 'sp' } };
  return [{ kind: 'repeat', body: [run, one], times: { kind: 'toEnd', except: 0, word }, style: 'paren', range }, run];
}

/** Looks whether the clause ahead ends in each corner, so that no other clause is read twice. */
function namesEachCorner(reader: RowReader): boolean {
  const { close } = reader.token();
  let index = close >= 0 && close < reader.end ? close + 1 : reader.at;
  for (const last = Math.min(reader.end - 1, index + MOST_WORDS); index < last; index++) {
    const { word } = reader.tokens[index]!;
    if (CLAUSE_END.has(word)) return false;
    if (EACH.has(word) && CORNER.has(reader.tokens[index + 1]!.word)) return true;
  }
  return false;
}
