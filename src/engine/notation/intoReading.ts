import { readExtent } from './extent.ts';
import { readNoun } from './noun.ts';
import { acrossRun, readPlace } from './places.ts';
import type { ReadPlace } from './places.ts';
import type { RowReader } from './rowReader.ts';
import { readLoop } from './stitchReading.ts';

const NEXT = new Set(['next', 'nxt', 'following', 'foll']);
const EACH = new Set(['each', 'ea', 'every', 'all']);
const ROW = new Set(['row', 'rows', 'rnd', 'rnds', 'round', 'rounds']);
const LOOPS = new Set(['loops', 'lps']);
const INTO = new Set(['in', 'into', 'over', 'on', 'through', 'at']);
const ROUND_PREPOSITION = new Set(['around', 'round', 'about']);
const AFTER_AROUND = new Set(['the', 'each', 'next', 'same', 'first', 'last', 'post', 'front', 'back', 'foll', 'following']);

/** A place with what was said about the way into it. */
export interface ReadInto {
  /** Null when only the loop or the rows below were said. */
  readonly place: ReadPlace | null;
  readonly loop: { readonly loop: 'front' | 'back'; readonly plural: boolean } | null;
  /** Rows below; 0 if not said. */
  readonly below: number;
  /** Places named by their post, which a plain stitch may say too: `dc around front post of next st`. */
  readonly post: 'none' | 'front' | 'back';
}

/**
 * Reads what may follow a stitch: its preposition and place, the loop, the rows below, or how far it is worked. Null,
 * with nothing moved, if nothing of that follows.
 */
export function readInto(reader: RowReader): ReadInto | null {
  const start = reader.at;
  let loop = readLoop(reader);
  let post: ReadInto['post'] = 'none';
  let place: ReadPlace | null = loop ? null : readBeside(reader);
  const before = reader.at;
  // "Across next 3 sts" goes over them, "through both loops" is as usual.
  const over = reader.is('across') && (reader.is(NEXT, 1) || (reader.is('the', 1) && reader.is(NEXT, 2)));
  if (!place && (reader.is('in') || reader.is('through')) && reader.is('both', 1) && reader.is(LOOPS, 2)) {
    reader.at += 3;
    if (!reader.take('of') && !reader.is(INTO)) return { place: null, loop: null, below: 0, post: 'none' };
    if (!reader.is(INTO)) reader.at--;
  }
  if (!place && (over || reader.is(INTO) || (reader.is('of') && reader.at > start) || (reader.is(ROUND_PREPOSITION) && (reader.is(AFTER_AROUND, 1) || reader.token(1).kind === 'ordinal')))) {
    reader.at++;
    const within = loop ? null : readLoop(reader);
    loop ??= within;
    if (within && !reader.take('of')) {
      reader.take('in');
      reader.take('into');
    }
    post = readPost(reader);
    place = readPlace(reader);
    if (!place && !within) reader.at = before;
  }
  place ??= readRun(reader);
  loop ??= readLoopAfter(reader);
  const below = readBelow(reader);
  if (!place && !loop && below === 0) {
    reader.at = start;
    return null;
  }
  return { place, loop, below, post };
}

/** `before picot`, `after next picot`: between the stitches of the row below. */
function readBeside(reader: RowReader): ReadPlace | null {
  const side = reader.is('before') ? 'before' : reader.is('after') ? 'after' : null;
  if (!side) return null;
  const start = reader.at;
  reader.at++;
  reader.takeArticles();
  reader.take(NEXT);
  const noun = readNoun(reader);
  if (noun?.what === 'picot') return { into: { at: 'beside', side, what: 'picot' }, each: false };
  reader.at = start;
  return null;
}

/** A run without its preposition: `across`, `to last 3 sts`, `each st`, `next 3 sts`. */
function readRun(reader: RowReader): ReadPlace | null {
  const start = reader.at;
  const extent = readExtent(reader);
  if (extent) return acrossRun('st', extent);
  if (reader.is(EACH) || reader.is(NEXT)) {
    const place = readPlace(reader);
    if (place) return place;
  }
  reader.at = start;
  return null;
}

function readLoopAfter(reader: RowReader): ReadInto['loop'] {
  const start = reader.at;
  if (reader.is('in') || reader.is('through')) reader.at++;
  const loop = readLoop(reader);
  if (!loop) reader.at = start;
  return loop;
}

function readPost(reader: RowReader): ReadInto['post'] {
  const start = reader.at;
  reader.takeArticles();
  const side = reader.is('front') ? 'front' : reader.is('back') ? 'back' : 'none';
  if (side !== 'none') reader.at++;
  if (reader.take('post') || reader.take('posts')) {
    if (reader.take('of')) return side;
  }
  reader.at = start;
  return 'none';
}

/** `2 rows below`. */
function readBelow(reader: RowReader): number {
  const { kind, value } = reader.token();
  if (kind !== 'number' || value < 1 || value > 255 || !reader.is(ROW, 1) || !reader.is('below', 2)) return 0;
  reader.at += 3;
  return value;
}
