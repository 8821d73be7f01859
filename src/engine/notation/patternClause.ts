import { mapAmount, readAmount } from './amounts.ts';
import { readExtent } from './extent.ts';
import { isCornerWord, isEnd, type Amount, type Instruction, type Into, type StitchCall } from './instruction.ts';
import { readInto } from './intoReading.ts';
import { readNoun } from './noun.ts';
import type { RowReader } from './rowReader.ts';
import { readStitch } from './stitchReading.ts';

const WORK = new Set(['work', 'working', 'continue', 'cont', 'keep', 'keeping']);
const PATTERN = new Set(['pattern', 'patt', 'pat']);
const SET = new Set(['established', 'set', 'before']);
const ROW = new Set(['row', 'rnd', 'round', 'rows', 'rnds', 'rounds']);
const EVERY = new Set(['every', 'each', 'ea']);
const INTO = new Set(['in', 'into', 'on']);

type Across = Extract<Into, { at: 'across' }>;

/** `work even`, `work in pattern over next 34 sts`, `continue in patt to last 2 sts`, `in pattern across`. */
export function readInPattern(reader: RowReader): Instruction | null {
  const start = reader.at;
  const work = reader.take(WORK);
  if (work && reader.take('even')) {
    const word = evenWord(reader);
    // "For 10 cm" is a length, read by itself.
    reader.attempt(() => (reader.take('for') && readAmount(reader) !== null && reader.take(ROW) ? true : null));
    return { kind: 'inPattern', even: true, into: { at: 'across', except: 0, what: 'st', word }, range: reader.range(start) };
  }
  if (work && reader.token().kind === 'number' && readAmount(reader) !== null && reader.take(ROW) && reader.take('even')) {
    return { kind: 'inPattern', even: true, into: { at: 'across', except: 0, what: 'st', word: 'across' }, range: reader.range(start) };
  }
  reader.at = start;
  reader.take(WORK);
  if (!reader.take('in')) return null;
  reader.take('the');
  reader.take('stitch');
  reader.take('st');
  if (!reader.take(PATTERN)) return null;
  if (reader.is('as') && reader.is(SET, 1)) reader.at += 2;
  const into = reader.attempt(() => readInto(reader));
  if (into?.place && into.place.into.at !== 'next' && (into.place.into.at !== 'across' || into.place.into.word === 'corner' || into.place.into.word === 'space')) return null;
  const place = into?.place?.into;
  return {
    kind: 'inPattern', even: false, range: reader.range(start),
    into: place?.at === 'next' ? { at: 'next', count: place.count, what: 'st' } : { at: 'across', except: place?.at === 'across' ? place.except : 0, what: 'st', word: place?.at === 'across' ? place.word : 'end' },
  };
}

function evenWord(reader: RowReader): Across['word'] {
  const extent = reader.attempt(() => readExtent(reader));
  return extent?.word === 'around' ? 'around' : 'across';
}

/**
 * `2 sc in every other st around`, `inc in every 3rd st`: the stitches between are worked plain; with one stitch,
 * `sc in every other st`, they are skipped.
 */
export function readEveryOther(reader: RowReader): readonly Instruction[] | null {
  if (!reader.mentions(EVERY)) return null;
  const start = reader.at;
  const early = reader.token().kind === 'number' ? readAmount(reader) : null;
  const stitch = readStitch(reader);
  if (!stitch || stitch.call.kind === 'ch' || stitch.call.together > 1) return null;
  if (!reader.take(INTO) || !reader.take(EVERY)) return null;
  const other = reader.take('other');
  const nth = other ? 2 : reader.token().kind === 'ordinal' ? reader.token().value : 0;
  if (!other) reader.at++;
  if (nth < 2 || nth > 200) return null;
  const noun = readNoun(reader);
  if (!noun) return null;
  const extent = reader.attempt(() => readExtent(reader)) ?? { word: 'across' as const, except: 0 };
  if (!isEnd(extent.word)) return null;
  const each = mapAmount(early ?? 1, (value) => value * (stitch.increase ? 2 : 1));
  const range = reader.range(start);
  const work = (call: StitchCall, made: Amount, count: number): Instruction => ({ kind: 'work', stitch: call, each: made, into: { at: 'next', count, what: noun.what }, range });
  const between: Instruction = each === 1 ? { kind: 'skip', count: nth - 1, what: noun.what, range } : work(stitch.call, 1, nth - 1);
  const body = each === 1 ? [work(stitch.call, 1, 1), between] : [between, work(stitch.call, each, 1)];
  return [{ kind: 'repeat', body, times: { kind: 'toEnd', except: extent.except, word: extent.word }, style: 'paren', range }];
}

/** Places of the row below that clauses take; null where only working tells. */
export function placesTaken(body: readonly Instruction[]): Amount | null {
  let sum: Amount = 0;
  for (const node of body) {
    const own = takenBy(node);
    if (own === null) return null;
    sum = plus(sum, own);
  }
  return sum;
}

function takenBy(node: Instruction): Amount | null {
  switch (node.kind) {
    case 'skip':
      return node.count;
    case 'work':
    case 'group':
      // What lies before a corner is passed over with it.
      if (node.into.at === 'next' && isCornerWord(node.into.what)) return null;
      if (node.into.at === 'next') return node.kind === 'work' ? mapAmount(node.into.count, (count) => count * node.stitch.together) : node.into.count;
      if (node.into.at === 'first' || node.into.at === 'last') return 1;
      return node.into.at === 'same' || node.into.at === 'top' ? 0 : null;
    case 'inPattern':
      return node.into.at === 'next' ? node.into.count : null;
    case 'mesh':
      return mapAmount(node.count, (count) => count * 3);
    case 'repeat': {
      const { times } = node;
      const inside = times.kind === 'times' ? placesTaken(node.body) : null;
      return times.kind === 'times' && inside !== null ? product(inside, times.times) : null;
    }
    case 'chain':
    case 'yarn':
    case 'remark':
    case 'marker':
      return 0;
    default:
      return null;
  }
}

function plus(a: Amount, b: Amount): Amount {
  if (typeof a === 'number') return mapAmount(b, (value) => a + value);
  return a.map((value, size) => value + (typeof b === 'number' ? b : (b[size] ?? 0)));
}

function product(a: Amount, b: Amount): Amount {
  if (typeof a === 'number') return mapAmount(b, (value) => a * value);
  return a.map((value, size) => value * (typeof b === 'number' ? b : (b[size] ?? 1)));
}
