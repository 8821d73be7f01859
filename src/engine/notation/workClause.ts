import { mapAmount, readAmount, sameAmount } from './amounts.ts';
import type { Amount, Instruction, Into } from './instruction.ts';
import { readInto } from './intoReading.ts';
import type { ReadInto } from './intoReading.ts';
import type { RowReader } from './rowReader.ts';
import { matchStitch, readLoop, readStitch, strangerFollows } from './stitchReading.ts';
import type { ReadStitch } from './stitchReading.ts';
import { readTimes } from './times.ts';

const NOT_A_COUNT = new Set(['times', 'time', 'x', 'more', 'row', 'rows', 'rnd', 'rnds', 'tog', 'together', '-']);
const NEXT_ONE: Into = { at: 'next', count: 1, what: 'st' };

/**
 * Reads a stitch with its number and its place, in either order: `sc in next 6 sts`, `6 sc`, `sc 6`, `2 sc in next st`,
 * `sc2tog over next 2 sts`. Chains are left to the chain clause. Null, with nothing moved, if no stitch stands there.
 *
 * A number before the stitch goes into each place named (`2 sc in next 3 sts` makes 6), but `6 sc in next 6 sts`, the
 * same number of four or more twice, is one stitch in each: nobody means thirty-six.
 */
export function readWork(reader: RowReader): readonly Instruction[] | null {
  const start = reader.at;
  reader.takeArticles();
  const early = readLoop(reader);
  let made: Amount | null = null;
  let bead = takeBead(reader);
  let stitch = readStitch(reader);
  if (!stitch && bead === null && reader.token().kind === 'number') {
    made = readAmount(reader);
    bead = takeBead(reader);
    const tied = reader.take('-');
    stitch = readStitch(reader);
    // `5-tr bobble`: legs that the bobble can't have are no five stitches and a bobble.
    if (tied && matchStitch(reader)) stitch = null;
  }
  if (!stitch || stitch.call.kind === 'ch') {
    reader.at = start;
    return null;
  }
  made ??= readCountAfter(reader);
  const creeps = stitch.call.kind === 'slst' && made === null && reader.is('to');
  const into = readInto(reader);
  const loop = early ?? into?.loop;
  if (loop) stitch.call.loop = loop.loop;
  if (into && into.post !== 'none') stitch.call.post = into.post;
  if (stitch.call.post !== 'none') stitch.call.loop = 'both';
  if (stitch.spike || (into && into.below > 0)) stitch.call.spike = Math.max(1, into?.below ?? 1);
  const node = !into && made !== null && strangerFollows(reader) ? null : settle(reader, stitch, made, into, start);
  if (!node) {
    reader.at = start;
    return null;
  }
  // "Sl st to next ch-2 sp" goes into it.
  if (creeps && node.kind === 'work' && node.into.at === 'across' && (node.into.word === 'corner' || node.into.word === 'space')) {
    return [node, { ...node, into: { at: 'next', count: 1, what: node.into.word === 'corner' ? 'corner' : 'sp' } }];
  }
  const worked = withTimes(reader, node, start);
  return bead ? [...worked, bead] : worked;
}

const PLAIN = new Set(['plain']);
const BEADED = new Set(['beaded', 'bead']);

/** `6 beaded sc`, `1 plain sc`: the bead is kept beside the stitch, as words; a plain stitch is one without. */
function takeBead(reader: RowReader): Instruction | null {
  if ((!reader.is(PLAIN) && !reader.is(BEADED)) || matchStitch(reader, 1) === null) return null;
  if (reader.take(PLAIN)) return null;
  reader.at++;
  return { kind: 'remark', text: 'beaded', range: reader.range(reader.at - 1) };
}

function readCountAfter(reader: RowReader): Amount | null {
  const start = reader.at;
  const count = readAmount(reader);
  if (count === null) return null;
  if (reader.is(NOT_A_COUNT) || (matchStitch(reader) && reader.at === start + 1)) {
    reader.at = start;
    return null;
  }
  return count;
}

/** Puts number and place together. Null when they contradict each other, as `sc2tog over next 3 sts`. */
function settle(reader: RowReader, stitch: ReadStitch, made: Amount | null, said: ReadInto | null, start: number): Instruction | null {
  const { call } = stitch;
  const range = reader.range(start);
  if (said && !said.place && said.loop?.plural && made === null) {
    return { kind: 'work', stitch: call, each: 1, into: { at: 'across', except: 0, what: 'st', word: 'across' }, range };
  }
  const place = said?.place ?? null;
  if (call.together > 1) return settleTogether(stitch, made, place, range);
  const own = stitch.increase ? 2 : 1;
  if (!place) {
    const into: Into = call.kind === 'picot' ? { at: 'top' } : made === null ? NEXT_ONE : { at: 'next', count: made, what: 'st' };
    return { kind: 'work', stitch: call, each: into.at === 'top' ? (made ?? 1) : own, into, range };
  }
  const { into } = place;
  if (made === null || (stitch.increase && 'count' in into && sameAmount(made, into.count))) return { kind: 'work', stitch: call, each: own, into, range };
  const twice = !place.each && into.at === 'next' && sameAmount(made, into.count) && (typeof made !== 'number' || made >= 4);
  return { kind: 'work', stitch: call, each: twice ? 1 : mapAmount(made, (value) => value * own), into, range };
}

function settleTogether(stitch: ReadStitch, made: Amount | null, place: NonNullable<ReadInto['place']> | null, range: Instruction['range']): Instruction | null {
  const { call } = stitch;
  if (!place) return { kind: 'work', stitch: call, each: 1, into: made === null ? NEXT_ONE : { at: 'next', count: made, what: 'st' }, range };
  const { into } = place;
  if (into.at !== 'next') return made === null ? { kind: 'work', stitch: call, each: 1, into, range } : null;
  if (stitch.decrease && made === null && typeof into.count === 'number' && into.count > 1 && into.count <= 255) {
    call.together = into.count;
    return { kind: 'work', stitch: call, each: 1, into: { ...into, count: 1 }, range };
  }
  if (sameAmount(into.count, 1) && made === null) return { kind: 'work', stitch: call, each: 1, into, range };
  const values = typeof into.count === 'number' ? [into.count] : into.count;
  if (values.some((value) => value % call.together !== 0)) return null;
  const count = mapAmount(into.count, (value) => value / call.together);
  return made === null || sameAmount(made, count) ? { kind: 'work', stitch: call, each: 1, into: { ...into, count }, range } : null;
}

/** `inc 5 times`, `sc in next st twice`: into so many places, or a repeat of the clause where it can't be said so. */
function withTimes(reader: RowReader, node: Instruction, start: number): readonly Instruction[] {
  const times = node.kind === 'work' ? readTimes(reader, 'clause') : null;
  if (!times || node.kind !== 'work') return [node];
  const range = reader.range(start);
  if (times.kind === 'times' && node.into.at === 'next' && node.into.count === 1) {
    return [{ ...node, into: { ...node.into, count: times.times }, range }];
  }
  if (times.kind === 'times' && node.into.at === 'same' && node.each === 1) return [{ ...node, each: times.times, range }];
  return [{ kind: 'repeat', body: [node], times, style: 'paren', range }];
}

/** Reads a further place for the stitch just read: `sc in 2nd ch from hook and in each ch across`. */
export function readFurtherPlace(reader: RowReader, before: Instruction): Instruction | null {
  if (before.kind !== 'work' || before.stitch.together > 1) return null;
  const start = reader.at;
  const into = readInto(reader);
  if (!into?.place || into.loop || into.below > 0 || into.post !== 'none') {
    reader.at = start;
    return null;
  }
  return { ...before, into: into.place.into, range: reader.range(start) };
}
