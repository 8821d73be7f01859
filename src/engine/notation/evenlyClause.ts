import { readAmount } from './amounts.ts';
import { takeOfRow } from './extent.ts';
import { plainCall, type Amount, type Instruction, type StitchCall } from './instruction.ts';
import type { OpenCall, RowReader } from './rowReader.ts';
import { readStitch } from './stitchReading.ts';

const ST = new Set(['st', 'sts', 'stitch', 'stitches']);
const WORK = new Set(['work', 'crochet', 'make']);
const ALONG = new Set(['along', 'down', 'up', 'across', 'in', 'into', 'over', 'on']);
const SIDE = new Set(['side', 'sides']);
const EDGE = new Set(['edge', 'edges']);
/** Words that say which of two sides it is, or whose, but not that it is another edge than a side. */
const WHICH = new Set(['left', 'right', 'first', 'second', 'next', 'other', 'same', 'long', 'short', 'hand', 'front', 'back', 'heel', 'flap', 'this', 'one', 'each', 'entire', 'whole']);
const OWNERS = new Set(['the', 'flap', 'heel', 'leg', 'panel', 'piece', 'foot', 'sole', 'vamp', 'instep', 'cuff', 'band', 'strip', 'square', 'rows', 'row', 'work', 'front', 'back', 'body']);
const ROW = new Set(['row', 'rnd', 'round']);

/** One of these is in every such clause. */
const NAMED = new Set(['evenly', 'even', 'pick', 'row', 'ends', ...SIDE, ...EDGE]);

type Evenly = Extract<Instruction, { kind: 'evenly' }>;

/**
 * `pick up 10 sc evenly along the side`, `work 10 sc along row ends`, `sc evenly in row ends`, `work 10 sc evenly across`: so
 * many stitches spread over what comes next. Null for other words, and where neither a number nor row ends are named.
 */
export function readEvenly(reader: RowReader): Instruction | null {
  if (!reader.mentions(NAMED)) return null;
  const start = reader.at;
  let picked = reader.takeAll('pick', 'up');
  if (picked) reader.takeAll('and', WORK);
  else reader.take(WORK);
  let evenly = takeEvenly(reader);
  const made = readMade(reader, picked || evenly);
  if (!made) return null;
  evenly = takeEvenly(reader) || evenly;
  picked &&= made.count !== null;
  const along = readAlong(reader);
  if (!along || (along !== 'rowEnds' && (!evenly || made.count === null))) return null;
  // "Sc in row ends" is one in each; a number of them goes into so many.
  if (along === 'rowEnds' && !evenly && !picked) return null;
  reader.attempt(() => (takeEvenly(reader) ? true : null));
  return { kind: 'evenly', stitch: made.stitch, count: made.count, along, range: reader.range(start) };
}

function takeEvenly(reader: RowReader): boolean {
  const bracket = reader.is('(') && reader.is('evenly', 1) ? 1 : 0;
  if (!reader.is('evenly', bracket) && !reader.takeAll('an', 'even', 'number', 'of')) return false;
  reader.at += bracket + 1;
  reader.take('spaced');
  if (bracket === 1) reader.take(')');
  return true;
}

/** The stitch with its number, in either order; `sts` are the row's own stitch where the words ask for a number of them. */
function readMade(reader: RowReader, asked: boolean): { readonly stitch: StitchCall; readonly count: Amount | null } | null {
  const early = reader.token().kind === 'number' ? readAmount(reader) : null;
  if (early !== null && asked && reader.take(ST)) {
    const call: OpenCall = plainCall('sc');
    reader.settle(call);
    return { stitch: call, count: early };
  }
  const stitch = readStitch(reader);
  if (!stitch || stitch.increase || stitch.call.kind === 'ch' || stitch.call.together > 1) return null;
  return { stitch: stitch.call, count: early ?? (reader.token().kind === 'number' ? readAmount(reader) : null) };
}

/** What they are spread over; null for other words. */
function readAlong(reader: RowReader): Evenly['along'] | null {
  const start = reader.at;
  if (reader.take('around')) return ofWholeRow(reader) ? 'around' : null;
  if (reader.takeAll('to', 'end')) return 'end';
  const across = reader.is('across');
  if (!reader.take(ALONG)) return null;
  reader.takeArticles();
  while (reader.take(WHICH));
  const hyphen = reader.is('-', 1) ? 1 : 0;
  if (reader.is('row') && (reader.is('ends', 1 + hyphen) || reader.is('end', 1 + hyphen))) reader.at += 2 + hyphen;
  else if (reader.takeAll('ends', 'of')) {
    reader.takeArticles();
    if (!reader.take('rows')) return null;
  } else if (reader.take(SIDE)) reader.take(EDGE);
  else if (!reader.take(EDGE)) {
    reader.at = start + 1;
    return across && ofWholeRow(reader) ? 'across' : null;
  }
  if (reader.is(ALONG)) {
    reader.at++;
    reader.takeArticles();
    while (reader.take(WHICH));
    if (reader.take(SIDE)) reader.take(EDGE);
    else if (!reader.take(EDGE)) return null;
  }
  if (reader.take('of')) while (reader.take(OWNERS));
  return 'rowEnds';
}

/** After `across` or `around`: nothing more, or the row itself. */
function ofWholeRow(reader: RowReader): boolean {
  if (takeOfRow(reader)) return true;
  reader.takeArticles();
  reader.take(ROW);
  const { kind, word } = reader.token();
  return kind === 'mark' || word === 'and' || word === 'turn' || word === 'join' || word === 'with';
}
