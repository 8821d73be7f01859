import { mapAmount, readAmount } from './amounts.ts';
import { readExtent, takeOfRow } from './extent.ts';
import { isEnd, plainCall, type Amount, type Instruction, type Into } from './instruction.ts';
import { readNoun } from './noun.ts';
import type { OpenCall, RowReader } from './rowReader.ts';

const ROW = new Set(['row', 'rnd', 'round', 'rows', 'rnds', 'rounds']);
const INCREASE = new Set(['increasing', 'increase', 'inc']);
const DECREASE = new Set(['decreasing', 'decrease', 'dec']);
const EVERY = new Set(['every', 'each', 'ea']);
const BOTH = new Set(['each', 'both', 'either']);
const END = new Set(['end', 'ends', 'side', 'sides']);
const BEGINNING = new Set(['beg', 'beginning', 'start']);

type Across = Extract<Into, { at: 'across' }>;
type Work = Extract<Instruction, { kind: 'work' }>;

/** By how many a row grows, how far it goes, and which of its ends are meant; `single`: one place at an end, not several along it. */
interface Shaping {
  readonly by: Amount;
  readonly word: Across['word'] | null;
  readonly ends: 'none' | 'both' | 'first' | 'last';
  readonly single: boolean;
}

/** `increasing 6 sts evenly`, `inc 24 in the round`, `dec 1 st at each end`. Null, with nothing moved, for other words. */
function readShaping(reader: RowReader): Shaping | null {
  const sign = reader.is(INCREASE) ? 1 : reader.is(DECREASE) ? -1 : 0;
  if (sign === 0) return null;
  reader.at++;
  const part = readPartOfEnds(reader);
  if (part !== null) return { by: part * sign, word: null, ends: 'both', single: false };
  const amount = readAmount(reader);
  if (amount !== null) readNoun(reader);
  const by = mapAmount(amount ?? 1, (value) => value * sign || 0);
  const evenly = reader.take('evenly');
  const ends = takeEnds(reader);
  if (ends !== 'none') return { by, word: null, ends, single: !evenly };
  if (amount === null) return null;
  if (evenly && !reader.takeAll('(', 'spaced', ')')) reader.take('spaced');
  const extent = evenly ? reader.attempt(() => readExtent(reader)) : null;
  const inRow = !extent && (reader.is('in') || reader.is('over')) ? reader.attempt(() => { reader.at++; reader.takeArticles(); reader.take('each'); return reader.take(ROW) ? true : null; }) : null;
  if (!evenly && !inRow) return null;
  // "evenly along the front" says where, which is more than evenly.
  if (reader.is('at') || reader.is('in') || reader.is('along')) return null;
  return { by, word: extent && extent.except === 0 ? extent.word : null, ends: 'none', single: false };
}

/** `in every other st of the 24 at each end`: how many that is at one end. */
function readPartOfEnds(reader: RowReader): number | null {
  const start = reader.at;
  if (reader.take('in') && reader.take(EVERY)) {
    const nth = reader.take('other') ? 2 : reader.token().kind === 'ordinal' ? reader.token().value : 0;
    if (nth > 2 || (nth === 2 && reader.token().kind === 'ordinal')) reader.at++;
    if (nth >= 2 && readNoun(reader) && reader.take('of')) {
      reader.takeArticles();
      const of = reader.token();
      if (of.kind === 'number') {
        reader.at++;
        readNoun(reader);
        if (takeEnds(reader) === 'both' && of.value >= nth) return Math.floor(of.value / nth);
      }
    }
  }
  reader.at = start;
  return null;
}

/** `at each end`, `at both ends of the row`, `at beg and end of row`, `on each side`, `at beg of row`; 'none', with nothing moved, for other words. */
function takeEnds(reader: RowReader): Shaping['ends'] {
  const start = reader.at;
  const at = reader.take('at') || reader.take('on');
  reader.takeArticles();
  let ends: Shaping['ends'] = 'none';
  if (reader.take(BOTH)) ends = reader.take(END) ? 'both' : 'none';
  else if (at && reader.take(BEGINNING)) ends = (reader.take('and') || reader.take('&')) && reader.take(END) ? 'both' : 'first';
  else if (at && reader.take('end')) ends = 'last';
  if (ends === 'none') reader.at = start;
  else if (!takeOfRow(reader) && reader.is('of') && reader.is(EVERY, 1) && reader.is(ROW, 2)) reader.at += 3;
  return ends;
}

/** `inc 6 sts evenly around`, `dec 1 st at each end` by itself: in the row's own stitch. */
export function readSpread(reader: RowReader): readonly Instruction[] | null {
  const start = reader.at;
  const shaping = readShaping(reader);
  if (!shaping) return null;
  const call: OpenCall = plainCall('sc');
  reader.settle(call);
  const range = reader.range(start);
  // By itself it is that one place; the words around it tell the rest of the row.
  if (shaping.ends === 'first' || shaping.ends === 'last') {
    if (typeof shaping.by !== 'number' || Math.abs(shaping.by) > 8) return null;
    if (shaping.by < 0) call.together = 1 - shaping.by;
    return [{ kind: 'work', stitch: call, each: Math.max(1, 1 + shaping.by), into: { at: 'next', count: 1, what: 'st' }, range }];
  }
  const word = shaping.word === 'around' || shaping.word === 'end' ? shaping.word : 'across';
  return shaped(reader, start, { kind: 'work', stitch: call, each: 1, into: { at: 'across', except: 0, what: 'st', word }, range }, shaping);
}

/** `sc in each st around, increasing 6 evenly`: the clause before with its increases, or null. */
export function readSpreadAfter(reader: RowReader, before: Instruction): readonly Instruction[] | null {
  const start = reader.at;
  const plain = before.kind === 'work' && before.each === 1 && before.stitch.together === 1;
  if (!plain && before.kind !== 'inPattern') return null;
  const { into } = before;
  if (into.at !== 'across' || into.except !== 0 || !isEnd(into.word) || into.what !== 'st') return null;
  const shaping = readShaping(reader);
  if (!shaping) return null;
  return shaped(reader, start, before, shaping);
}

/**
 * The clauses that a row with its shaping is: one place at each end of a flat row is its first and its last; anything else is
 * spread over the whole row, and what is said of the ends is kept beside it.
 */
function shaped(reader: RowReader, start: number, before: Instruction, { by, word, ends, single }: Shaping): readonly Instruction[] | null {
  if (before.kind !== 'work' && before.kind !== 'inPattern') return null;
  const { into } = before;
  if (into.at !== 'across') return null;
  const own = reader.range(start);
  const range = [before.range[1] > 0 && before.range[0] < own[0] ? before.range[0] : own[0], own[1]] as const;
  const far = word ?? into.word;
  if (ends !== 'none' && single && far !== 'around' && typeof by === 'number' && Math.abs(by) <= 8) return atEnds(reader, before, into, by, ends, range);
  if (before.kind !== 'work' || !isEnd(far) || ends === 'first' || ends === 'last') return null;
  const spread: Instruction = { kind: 'spread', stitch: before.stitch, by: ends === 'both' ? mapAmount(by, (value) => value * 2) : by, word: far, range };
  return ends === 'both' ? [spread, { kind: 'remark', text: reader.slice(start + (reader.tokens[start + 1]?.word === 'in' ? 2 : 1)), range: own }] : [spread];
}

function atEnds(reader: RowReader, before: Work | Extract<Instruction, { kind: 'inPattern' }>, into: Across, by: number, ends: Shaping['ends'], range: Instruction['range']): readonly Instruction[] {
  const call: OpenCall = plainCall('sc');
  if (before.kind !== 'work') reader.settle(call);
  const stitch = before.kind === 'work' ? before.stitch : call;
  const end: Work = { kind: 'work', stitch: by < 0 ? { ...stitch, together: 1 - by } : stitch, each: by < 0 ? 1 : 1 + by, into: { at: 'next', count: 1, what: 'st' }, range };
  const except = ends === 'first' ? 0 : by < 0 ? 1 - by : 1;
  const between = { ...before, into: { ...into, except, word: 'end' as const }, range };
  const rest: Instruction = before.kind === 'work' ? (between as Work) : { kind: 'inPattern', even: false, into: { ...into, except, word: 'end' }, range };
  return ends === 'first' ? [end, rest] : ends === 'last' ? [rest, end] : [end, rest, end];
}
