import { mapAmount, readAmount } from './amounts.ts';
import type { Instruction, RunChange } from './instruction.ts';
import { readNoun } from './noun.ts';
import type { RowReader } from './rowReader.ts';
import { readTimes } from './times.ts';

const ROW = new Set(['row', 'rnd', 'round', 'rows', 'rnds', 'rounds']);
const RANGE = new Set(['-', '—', 'to', 'through']);
/** Words after a number that counts something else than rows or runs. */
const OTHER_NUMBER = new Set(['more', 'times', 'time', 'fewer', 'less', 'extra', 'st', 'sts', 'additional']);
const LAST = new Set(['last', 'previous', 'prev', 'preceding']);
const BELOW = new Set(['below', 'before', 'above']);
const MORE: Readonly<Record<string, 1 | -1>> = { more: 1, extra: 1, additional: 1, fewer: -1, less: -1 };
const HAVING = new Set(['with', 'having', 'working', 'work', 'but']);
const EACH = new Set(['each', 'every']);
const SHAPING = new Set(['incs', 'decs', 'inc', 'dec', 'increases', 'decreases', 'increase', 'decrease', 'corners', 'shaping', 'shapings']);
const RUN = new Set(['run', 'runs']);
const MANNER = new Set(['manner', 'way', 'fashion']);
/** More runs than this are named by nobody. */
const MOST_RUNS = 40;

type AsRows = Extract<Instruction, { kind: 'asRows' }>;

/**
 * `rep row 4`, `as rows 4 and 5`, `work as for rows 4-5`, `as 2nd row`, `rep rows 2 and 4`, `rep last 2 rows`, `continue, having
 * 1 more st between incs`, `work as row 4, with 1 more st in each run`. How often is the label's affair: `3 more times` is
 * passed over.
 */
export function readAsRows(reader: RowReader): Instruction | null {
  const start = reader.at;
  const rows = readRows(reader);
  if (!rows) return null;
  readTimes(reader, 'clause');
  const changes = readChanges(reader);
  if (rows === 'go on') {
    if (changes.length === 0) return null;
    return { kind: 'asRows', from: 0, to: 0, last: 1, changes, range: reader.range(start) };
  }
  return { kind: 'asRows', ...rows, ...(changes.length > 0 ? { changes } : {}), range: reader.range(start) };
}

function readRows(reader: RowReader): Pick<AsRows, 'from' | 'to' | 'rows' | 'last'> | 'go on' | null {
  if (reader.take('continue') || reader.take('continuing') || reader.take('cont')) {
    reader.take('to');
    reader.take('work');
    if (takeGrowing(reader)) return 'go on';
    if (reader.take('in') || reader.take('as')) {
      if (reader.take('this') || reader.take('the')) reader.take('same');
      if (!reader.take(MANNER) && !reader.take('established') && !reader.take('set') && !reader.take('before')) return null;
    }
    return 'go on';
  }
  if (takeGrowing(reader)) return 'go on';
  const work = reader.take('work');
  if (reader.take('same')) {
    if (!reader.take('as')) return null;
  } else if (!reader.take('rep') && !reader.take('repeat') && !reader.take('repeating') && !reader.take('as') && !reader.take('like') && !work) return null;
  reader.take('for');
  reader.takeArticles();
  return readLastRows(reader) ?? readRowNumbers(reader);
}

/** `inc 6 sts in each rnd`: the shaping that goes on, before how its runs grow. */
function takeGrowing(reader: RowReader): boolean {
  const start = reader.at;
  if (reader.take(SHAPING) || reader.take('increasing') || reader.take('decreasing')) {
    readAmount(reader);
    readNoun(reader);
    reader.take('in');
    if (reader.take(EACH) && reader.take(ROW)) return true;
  }
  reader.at = start;
  return false;
}

/** `last row`, `last 2 rnds`, `previous row`, `row below`. */
function readLastRows(reader: RowReader): Pick<AsRows, 'from' | 'to' | 'last'> | null {
  if (reader.is(ROW) && reader.is(BELOW, 1)) {
    reader.at += 2;
    return { from: 0, to: 0, last: 1 };
  }
  if (!reader.is(LAST)) return null;
  const { kind, value } = reader.token(1);
  if (kind === 'number' && value > 0 && value <= 200 && reader.is(ROW, 2)) {
    reader.at += 3;
    return { from: 0, to: 0, last: value };
  }
  if (!reader.is(ROW, 1)) return null;
  reader.at += 2;
  return { from: 0, to: 0, last: 1 };
}

function readRowNumbers(reader: RowReader): Pick<AsRows, 'from' | 'to' | 'rows'> | null {
  const named = reader.take(ROW);
  const kind = named ? 'number' : 'ordinal';
  if (reader.token().kind !== kind) return null;
  const numbers = [reader.token().value];
  reader.at++;
  if (reader.is(RANGE) && reader.token(1).kind === kind) {
    const from = numbers[0]!;
    const to = reader.token(1).value;
    reader.at += 2;
    if (!named && !reader.take(ROW)) return null;
    return from > 0 && to >= from ? { from, to } : null;
  }
  numbers.push(...readMore(reader, kind));
  if (!named && !reader.take(ROW)) return null;
  if (numbers.some((number) => number < 1)) return null;
  const from = Math.min(...numbers);
  const to = Math.max(...numbers);
  const inOrder = numbers.every((number, index) => number === from + index);
  return inOrder ? { from, to } : { from, to, rows: numbers };
}

/** `, with 1 more st in each run and 2 fewer in the 3rd run`, `, having 1 more st between incs`. */
function readChanges(reader: RowReader): RunChange[] {
  const start = reader.at;
  if (reader.is(',') || reader.is(';')) reader.at++;
  reader.take('but');
  if (!reader.take(HAVING)) {
    reader.at = start;
    return [];
  }
  const changes: RunChange[] = [];
  for (;;) {
    const change = reader.attempt(() => readChange(reader));
    if (!change) break;
    changes.push(change);
    const between = reader.at;
    reader.take(',');
    reader.take('and');
    if (reader.at === between || changes.length >= MOST_RUNS) break;
    if (reader.token().kind !== 'number') {
      reader.at = between;
      break;
    }
  }
  if (changes.length === 0) reader.at = start;
  else if ((reader.is('in') || reader.is('on')) && reader.is(EACH, 1) && reader.is(ROW, 2)) reader.at += 3;
  else if (reader.is(EACH) && (reader.is(ROW, 1) || reader.is('time', 1))) reader.at += 2;
  return changes;
}

function readChange(reader: RowReader): RunChange | null {
  const amount = readAmount(reader);
  if (amount === null) return null;
  let sign = MORE[reader.token().word];
  if (sign !== undefined) reader.at++;
  readNoun(reader);
  if (sign === undefined) {
    sign = MORE[reader.token().word];
    if (sign === undefined) return null;
    reader.at++;
    readNoun(reader);
  }
  const runs = readWhichRuns(reader);
  return runs && { runs, by: sign < 0 ? mapAmount(amount, (value) => -value) : amount };
}

function readWhichRuns(reader: RowReader): RunChange['runs'] | null {
  if (reader.take('between')) {
    reader.takeArticles();
    if (reader.take(EACH)) reader.take('of');
    return reader.take(SHAPING) ? 'between' : null;
  }
  if (reader.take('before')) {
    reader.takeArticles();
    if (reader.take('last')) {
      if (!readNoun(reader)) reader.take(SHAPING);
      return 'last';
    }
    if (reader.take(EACH)) return reader.take(SHAPING) ? 'between' : null;
    return null;
  }
  if (reader.takeAll('at', 'the', 'end') || reader.takeAll('at', 'end')) return 'last';
  if (!reader.take('in')) return null;
  if (reader.take(EACH)) return reader.take(RUN) ? 'each' : reader.take('repeat') || reader.take('section') || reader.take('rep') ? 'between' : null;
  reader.takeArticles();
  const before = reader.take(RUN);
  const kind = before ? 'number' : 'ordinal';
  if (reader.token().kind !== kind) return null;
  const numbers = [reader.token().value];
  reader.at++;
  numbers.push(...readMore(reader, kind));
  if (!before && !reader.take(RUN)) return null;
  return numbers;
}

/**
 * The rest of a list of numbers after its first: `2 and 4`, `2, 4 and 7`. Commas belong to it only before a closing "and",
 * and a number that counts stitches or times begins something else.
 */
function readMore(reader: RowReader, kind: 'number' | 'ordinal'): number[] {
  const start = reader.at;
  const numbers: number[] = [];
  while (numbers.length < MOST_RUNS) {
    const comma = reader.is(',');
    const last = reader.is('and') || reader.is('&') || (comma && reader.is('and', 1));
    const ahead = comma && last ? 2 : 1;
    if ((!comma && !last) || reader.token(ahead).kind !== kind || OTHER_NUMBER.has(reader.token(ahead + 1).word)) break;
    numbers.push(reader.token(ahead).value);
    reader.at += ahead + 1;
    if (last) return numbers;
  }
  reader.at = start;
  return [];
}
