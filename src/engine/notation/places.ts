import { readAmount } from './amounts.ts';
import { readExtent, takeOfRow } from './extent.ts';
import type { Amount, CornerWord, Into, PlaceWord } from './instruction.ts';
import { readNoun } from './noun.ts';
import type { RowReader } from './rowReader.ts';

/** Where a stitch goes, as read. */
export interface ReadPlace {
  readonly into: Into;
  /** `each of next 6 sts`: what is made goes into each one. */
  readonly each: boolean;
}

const ST = new Set(['st', 'sts', 'stitch', 'stitches']);
const LP = new Set(['loop', 'loops', 'lp', 'lps']);
const CH = new Set(['ch', 'chs', 'chain', 'chains']);
const NEXT = new Set(['next', 'nxt', 'following', 'foll']);
const REST = new Set(['rem', 'remaining']);
const EACH = new Set(['each', 'ea', 'every', 'all']);
const OPEN = new Set(['unworked', 'open', 'free', 'unused']);
const ROW = new Set(['row', 'rows', 'rnd', 'rnds', 'round', 'rounds']);
const MARKER = new Set(['marker', 'm']);
const CORNER = new Set(['corner', 'corners']);
const MIDDLE = new Set(['center', 'centre', 'middle']);
const GROUP = new Set(['corner', 'group', 'corners', 'groups', 'inc', 'increase']);
/** Words after "of the" that name no section. */
const NO_SECTION = new Set([...ROW, ...LP, ...CH, 'ring', 'foundation', 'turning', 'beg', 'beginning', 'last', 'previous', 'prev', 'same', 'next', 'first', 'circle', 'tch', 'base', 'starting', 'below', 'following']);
const SECTION_END = new Set(['and', 'then', 'with', 'in', 'as', 'to', 'across', 'around', 'rep', 'turn', 'for']);

/** Reads the place itself, after its preposition. Null, with nothing moved, if it is none of those known. */
export function readPlace(reader: RowReader): ReadPlace | null {
  const start = reader.at;
  const place = readPlaceHere(reader);
  if (!place) reader.at = start;
  return place;
}

function readPlaceHere(reader: RowReader): ReadPlace | null {
  reader.takeArticles();
  if (reader.take('same')) return readSame(reader);
  const middle = reader.is(MIDDLE) ? reader.attempt(() => readMiddle(reader)) : null;
  if (middle) return middle;
  if (reader.take(CORNER)) return { into: { at: 'next', count: 1, ...readCornerNoun(reader) }, each: false };
  if (reader.is(EACH)) return readEach(reader);
  if (reader.take(NEXT)) return readNext(reader, false);
  if (reader.take(REST)) {
    const count = readAmount(reader);
    const noun = readNoun(reader);
    if (!noun) return null;
    return count === null ? acrossRun(noun.what, readExtent(reader)) : { into: { at: 'next', count, ...noun }, each: false };
  }
  if (reader.is('last')) {
    reader.at++;
    const count = readAmount(reader);
    const noun = readNoun(reader);
    if (!noun) return null;
    // "Last sc made" is the one just made.
    if (count === null && reader.take('made')) return { into: { at: 'top' }, each: false };
    takeOfRow(reader);
    return { into: count === null || count === 1 ? { at: 'last', what: noun.what } : { at: 'next', count, ...noun }, each: false };
  }
  if (reader.token().kind === 'ordinal') return readNth(reader);
  if (reader.take('top')) return readTop(reader);
  if (reader.is('base') && reader.is('of', 1)) return readBase(reader);
  if (reader.takeAll('marked', ST) || reader.take(MARKER)) return { into: { at: 'marker' }, each: false };
  reader.take('magic');
  if (reader.take('ring') || reader.take('circle') || reader.take('mr')) return { into: { at: 'ring' }, each: false };
  const made = reader.attempt(() => (readNoun(reader) && reader.takeAll('just', 'made') ? true : null));
  if (made) return { into: { at: 'top' }, each: false };
  const count = reader.is('-', 1) ? null : readAmount(reader);
  const noun = readNoun(reader);
  if (!noun) return null;
  // "In the row ends" is each of them.
  if (count === null && noun.what === 'rowEnd') return acrossRun('rowEnd', readExtent(reader));
  return withOwner(reader, count ?? 1, noun, false);
}

function readSame(reader: RowReader): ReadPlace {
  reader.take(CORNER);
  if (!readNoun(reader)) reader.take('place');
  const start = reader.at;
  if (reader.take('as')) {
    reader.takeArticles();
    if (reader.take('join') || reader.take('joining') || reader.take('joined') || reader.take('last') || reader.take('previous')) readNoun(reader);
    else if (!readNoun(reader)) reader.at = start;
  }
  return { into: { at: 'same' }, each: false };
}

function readEach(reader: RowReader): ReadPlace | null {
  reader.at++;
  if (reader.is('other') || reader.token().kind === 'ordinal') return null;
  if (reader.take('of')) {
    reader.takeArticles();
    if (reader.take(NEXT) || reader.take('first') || reader.take('last') || reader.take(REST)) return readNext(reader, true);
    return reader.token().kind === 'number' ? readNext(reader, true) : null;
  }
  if (reader.is(NEXT) && reader.token(1).kind === 'number') {
    reader.at++;
    return readNext(reader, true);
  }
  reader.take(REST);
  reader.takeArticles();
  const middle = reader.is(MIDDLE) ? reader.attempt(() => readMiddle(reader)) : null;
  if (middle) return acrossRun('cornerSt', readExtent(reader));
  if (reader.take(CORNER)) {
    const noun = readCornerNoun(reader);
    takeOfRow(reader);
    return acrossRun(noun.what, readExtent(reader), noun.loops);
  }
  const noun = readNoun(reader);
  if (!noun) return null;
  takeOfRow(reader);
  return acrossRun(noun.what, readExtent(reader));
}

/** After `corner`: nothing, its chain space with the chains it has, or its stitch, of whatever kind. */
function readCornerNoun(reader: RowReader): { readonly what: CornerWord; readonly loops?: number } {
  const noun = readNoun(reader);
  if (!noun) return { what: 'corner' };
  if (noun.what === 'sp' || noun.what === 'ch') return { what: 'cornerSp', ...(noun.loops === undefined ? {} : { loops: noun.loops }) };
  return { what: 'cornerSt' };
}

/** `center st of next corner`, `middle sc of each 3-sc group`: the stitch of a corner. */
function readMiddle(reader: RowReader): ReadPlace | null {
  reader.at++;
  if (!readNoun(reader)) return null;
  if (!reader.take('of') && !reader.take('at') && !reader.take('in')) return null;
  reader.takeArticles();
  const each = reader.take(EACH);
  if (!each) reader.take(NEXT);
  if (reader.token().kind === 'number') {
    reader.at++;
    reader.take('-');
    if (!readNoun(reader)) return null;
  }
  if (!reader.take(GROUP)) return null;
  return each ? acrossRun('cornerSt', readExtent(reader)) : { into: { at: 'next', count: 1, what: 'cornerSt' }, each: false };
}

/** The run to the end of the row below, or as far as an extent says. */
export function acrossRun(what: PlaceWord, extent: ReturnType<typeof readExtent>, loops?: number): ReadPlace {
  return { into: { at: 'across', except: extent?.except ?? 0, what, word: extent?.word ?? 'across', ...(loops === undefined ? {} : { loops }) }, each: true };
}

/** After `next`: a number, a place, and whose place it is. */
function readNext(reader: RowReader, each: boolean): ReadPlace | null {
  let open = reader.take(OPEN);
  const count = readAmount(reader) ?? 1;
  open = reader.take(OPEN) || open;
  const noun = (reader.take(CORNER) ? readCornerNoun(reader) : readNoun(reader)) ?? (reader.token().kind === 'word' && !SECTION_END.has(reader.token().word) ? null : { what: 'st' as const });
  if (!noun) return null;
  return withOwner(reader, count, noun, each, open);
}

function withOwner(reader: RowReader, count: Amount, noun: { readonly what: PlaceWord; readonly loops?: number }, each: boolean, open = false): ReadPlace {
  const start = reader.at;
  if (reader.take('of')) {
    reader.takeArticles();
    if (reader.takeAll(ROW, 'below')) return { into: { at: 'open', count, word: 'rowBelow' }, each };
    reader.at = start;
    if (!takeOfRow(reader)) {
      const name = readSectionName(reader);
      if (name) return { into: { at: 'section', name, count }, each };
    }
  }
  if (open) return { into: { at: 'open', count, word: 'unworked' }, each };
  return { into: { at: 'next', count, ...noun }, each };
}

/** `of the leg`, `of right leg`: up to four words. */
function readSectionName(reader: RowReader): string | null {
  const start = reader.at;
  reader.at++;
  reader.takeArticles();
  const words: string[] = [];
  while (words.length < 4 && reader.token().kind === 'word' && !SECTION_END.has(reader.token().word)) {
    words.push(reader.token().word);
    reader.at++;
  }
  if (words.length > 0 && !NO_SECTION.has(words[0]!)) return words.join(' ');
  reader.at = start;
  return null;
}

/** `first st`, `2nd ch from hook`. */
function readNth(reader: RowReader): ReadPlace | null {
  const nth = reader.token().value;
  reader.at++;
  const count = nth === 1 ? readAmount(reader) : null;
  const noun = readNoun(reader);
  if (!noun) return null;
  if (noun.what === 'ch' && reader.take('from')) {
    reader.takeArticles();
    return reader.take('hook') ? { into: { at: 'fromHook', nth }, each: false } : null;
  }
  if (nth !== 1) return null;
  if (!takeOfRow(reader) || reader.is('-')) takeOfChain(reader);
  return { into: count === null || count === 1 ? { at: 'first', what: noun.what } : { at: 'next', count, ...noun }, each: false };
}

/** Whose first chain it is: `of ch-3`, `of these chs`, `of the chain just made`. */
function takeOfChain(reader: RowReader): void {
  if (!reader.take('of')) {
    // `of ch` was read as the foundation's.
    if (reader.is('-') && reader.token(1).kind === 'number') reader.at += 2;
    return;
  }
  const start = reader.at - 1;
  reader.takeArticles();
  while (reader.take('these') || reader.take('those') || reader.take('this') || reader.take('picot')) reader.takeArticles();
  const number = reader.token().kind === 'number' && reader.is(CH, 1) ? 1 : 0;
  reader.at += number;
  if (!reader.take(CH) && !reader.is(',') && reader.at < reader.end) {
    reader.at = start;
    return;
  }
  if (reader.is('-') && reader.token(1).kind === 'number') reader.at += 2;
  reader.take('just');
  reader.take('made');
}

/** `base of ch`, `base of ch-3`: the stitch that the chains stand on. */
function readBase(reader: RowReader): ReadPlace | null {
  reader.at += 2;
  reader.takeArticles();
  while (reader.take('these') || reader.take('those') || reader.take('this'));
  if (!reader.take(CH)) return null;
  if (reader.is('-') && reader.token(1).kind === 'number') reader.at += 2;
  return { into: { at: 'top' }, each: false };
}

/** `top of turning ch` is the last place; `top of last sc`, `top of st just made` the stitch just made. */
function readTop(reader: RowReader): ReadPlace | null {
  if (!reader.take('of')) return null;
  reader.takeArticles();
  if (reader.take('tch') || reader.takeAll('t', '-', 'ch') || reader.takeAll('turning', CH)) return { into: { at: 'last', what: 'st' }, each: false };
  if (reader.is('ch') && reader.is('-', 1) && reader.token(2).kind === 'number') {
    reader.at += 3;
    return { into: { at: 'last', what: 'st' }, each: false };
  }
  if (reader.takeAll('beg', CH) || reader.takeAll('beginning', CH)) {
    if (reader.is('-') && reader.token(1).kind === 'number') reader.at += 2;
    return { into: { at: 'last', what: 'st' }, each: false };
  }
  const last = reader.take('last') || reader.take('previous');
  if (!readNoun(reader)) return null;
  const made = reader.takeAll('just', 'made') || reader.takeAll('just', 'worked') || reader.take('made');
  return last || made ? { into: { at: 'top' }, each: false } : null;
}
