import { isCornerWord, type Instruction, type Into } from './instruction.ts';
import type { RowReader } from './rowReader.ts';

const LEAD = new Set(['working', 'work', 'making', 'with', 'and', 'having', 'but']);
const CORNER = new Set(['corner', 'corners']);
const MIDDLE = new Set(['center', 'centre', 'middle']);
const CLAUSE_END = new Set([',', ';', '.']);
/** Words that a stitch and its place are said in. */
const MOST_WORDS = 12;
const EACH = new Set(['each', 'every', 'ea', 'all']);

type Placed = Extract<Instruction, { kind: 'work' | 'group' }>;
type ReadOne = (reader: RowReader) => readonly Instruction[] | null;

/**
 * `sc in each st around, working (sc, ch 2, sc) in each corner sp`, `…, 3 sc in each corner`, or the corners first: the run
 * goes to each corner in turn, and after the last one to the end. Null where no corner is named.
 */
export function readEachCorner(reader: RowReader, before: Instruction, readOne: ReadOne): readonly Instruction[] | null {
  const run = asRun(before);
  const corner = run ? null : asCorner(before);
  if (!run && !corner) return null;
  while (reader.take(LEAD));
  if (run && !namesEachCorner(reader)) return null;
  if (corner && !reader.is(EACH, 2) && !reader.is(EACH, 3)) return null;
  const [read, more] = readOne(reader) ?? [];
  if (!read || more) return null;
  if (corner && !reader.takeAll('between', CORNER)) reader.take('between');
  const [side, at] = run ? [run, asCorner(read)] : [asRun(read), corner];
  if (!side || !at || at.into.at !== 'across' || side.into.at !== 'across') return null;
  const range = [before.range[0], read.range[1]] as const;
  const to: Into = { at: 'across', except: 0, what: 'st', word: 'corner' };
  const { what, loops } = at.into;
  const one: Instruction = { ...at, into: { at: 'next', count: 1, what, ...(loops === undefined ? {} : { loops }) } };
  const word = side.into.word === 'around' || side.into.word === 'end' ? side.into.word : 'across';
  const along: Instruction = { ...side, into: to };
  return [{ kind: 'repeat', body: [along, one], times: { kind: 'toEnd', except: 0, word }, style: 'paren', range }, along];
}

/** A stitch in each stitch to the end. */
function asRun(node: Instruction): Extract<Instruction, { kind: 'work' }> | null {
  if (node.kind !== 'work' || node.into.at !== 'across' || node.into.except !== 0 || isCornerWord(node.into.what) || node.into.what === 'sp' || node.into.what === 'rowEnd') return null;
  return node.into.word === 'across' || node.into.word === 'around' || node.into.word === 'end' ? node : null;
}

/** What is worked in each corner. */
function asCorner(node: Instruction): Placed | null {
  return (node.kind === 'work' || node.kind === 'group') && node.into.at === 'across' && isCornerWord(node.into.what) ? node : null;
}

/** Looks whether the clause ahead ends in each corner, so that no other clause is read twice. */
function namesEachCorner(reader: RowReader): boolean {
  const { close } = reader.token();
  let index = close >= 0 && close < reader.end ? close + 1 : reader.at;
  for (const last = Math.min(reader.end - 1, index + MOST_WORDS); index < last; index++) {
    const { word, close: end } = reader.tokens[index]!;
    if (end > index && end < last) {
      index = end;
      continue;
    }
    if (CLAUSE_END.has(word)) return false;
    if (EACH.has(word) && (CORNER.has(reader.tokens[index + 1]!.word) || MIDDLE.has(reader.tokens[index + 1]!.word))) return true;
    if (MIDDLE.has(word) && EACH.has(reader.tokens[index + 3]?.word ?? '')) return true;
  }
  return false;
}
