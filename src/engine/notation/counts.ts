import { stitchRow } from '../craft/stitches.ts';
import { mapAmount, readAmount, readBareList } from './amounts.ts';
import type { Amount, Stated } from './instruction.ts';
import { readNoun } from './noun.ts';
import type { RowReader } from './rowReader.ts';

const TAIL = new Set(['made', 'total', 'left', 'rem', 'remain', 'remaining', 'now', 'worked', 'altogether']);
const MORE: Readonly<Record<string, 1 | -1>> = { more: 1, extra: 1, fewer: -1, less: -1 };
const ROW = new Set(['row', 'rnd', 'round']);
const IN_ALL = new Set(['all', 'total']);
const COMMA = new Set([',', ';']);
const FURTHER = new Set([',', ';', 'and', '&', '+']);
const MAKING = new Set(['making', 'makes', 'made']);
/** Longer lists of counts are not written by people. */
const MOST_LISTED = 200;
const EACH = new Set(['each', 'every']);

/**
 * Reads a stated count up to token `end`, which must close it: `26 sts`, `26 sc`, `40 (44, 48) sc`, `26`, `ending with 24
 * sts`, `1 st more in each row, ending with 24 sts`. Null, with nothing moved or found, if the words are not a count.
 */
export function readCount(reader: RowReader, end: number): Omit<Stated, 'range'> | null {
  const outer = reader.end;
  reader.end = end;
  const count = reader.attempt(() => {
    const read = reader.attempt(() => readList(reader)) ?? reader.attempt(() => readEnding(reader)) ?? readPlainCount(reader);
    return read && reader.at === end ? read : null;
  });
  reader.end = outer;
  return count;
}

function readPlainCount(reader: RowReader): Omit<Stated, 'range'> | null {
  if (reader.is(MAKING)) reader.at++;
  reader.takeAll('a', 'total', 'of');
  if (reader.take('total')) reader.take('of');
  const count = readBareList(reader) ?? readAmount(reader);
  if (count === null) return null;
  const unit = readUnit(reader);
  if (reader.is('in') && reader.is(IN_ALL, 1)) reader.at += 2;
  while (reader.take(TAIL));
  const also = unit === '' ? [] : readFurther(reader);
  return { count, unit, of: 'row', step: null, ...(also.length > 0 ? { also } : {}) };
}

/** `…, 6 ch-1 sps and 2 hdc`: further counts of the same row, each with its unit. */
function readFurther(reader: RowReader): { readonly count: Amount; readonly unit: string }[] {
  const also: { readonly count: Amount; readonly unit: string }[] = [];
  for (;;) {
    const start = reader.at;
    while (reader.is(FURTHER)) reader.at++;
    const count = reader.at > start ? readAmount(reader) : null;
    const unit = count === null ? '' : readUnit(reader);
    if (count === null || unit === '' || also.length >= MOST_LISTED) {
      reader.at = start;
      return also;
    }
    also.push({ count, unit });
  }
}

/** `counts 36, 36, 32, 32 sts`: the count of each row of a range; `counts 8, 9, … 22` moves by its first step. */
function readList(reader: RowReader): Omit<Stated, 'range'> | null {
  const start = reader.at;
  const list: Amount[] = [];
  let step: Amount | null = null;
  if (reader.take('counts')) {
    reader.take(':');
    for (;;) {
      const count = readAmount(reader);
      if (count === null) break;
      list.push(count);
      if (list.length > MOST_LISTED || !reader.take(COMMA)) break;
      if (takeElision(reader) && list.length >= 2) step = minus(list[1]!, list[0]!);
    }
  }
  if (list.length < 2 || list.length > MOST_LISTED) {
    reader.at = start;
    return null;
  }
  const unit = readUnit(reader);
  const count = list.at(-1)!;
  return step === null ? { count, unit, of: 'last', step: null, list } : { count, unit, of: 'last', step };
}

function takeElision(reader: RowReader): boolean {
  let dots = false;
  while (reader.is('…') || reader.is('.')) {
    dots = true;
    reader.at++;
  }
  if (dots) reader.take(COMMA);
  return dots;
}

function minus(a: Amount, b: Amount): Amount {
  if (typeof a === 'number') return mapAmount(b, (value) => a - value);
  return a.map((value, size) => value - (typeof b === 'number' ? b : (b[size] ?? 0)));
}

/** The unit in US terms: `sts`, a stitch's abbreviation, `sps`, or one plain word as it is. */
function readUnit(reader: RowReader): string {
  const start = reader.at;
  if (reader.token().kind === 'mark') return '';
  const noun = readNoun(reader);
  if (noun && noun.what !== 'rowEnd') {
    if (noun.what === 'st') return 'sts';
    if (noun.what === 'ch') return 'chs';
    if (noun.what === 'sp') return noun.loops === undefined ? 'sps' : `ch-${noun.loops} sps`;
    return stitchRow(noun.what).us;
  }
  reader.at = start;
  if (reader.token().kind === 'word' && !TAIL.has(reader.token().word) && reader.token().word !== 'x' && reader.token().word !== 'times' && reader.at + 1 >= reader.end) {
    const { word } = reader.token();
    reader.at++;
    return word;
  }
  return '';
}

/** Counts that move over a range of rows. */
function readEnding(reader: RowReader): Omit<Stated, 'range'> | null {
  const start = reader.at;
  let step: Amount | null = null;
  if (reader.token().kind === 'number') {
    step = readAmount(reader);
    const early = MORE[reader.token().word];
    if (early !== undefined) reader.at++;
    readNoun(reader);
    const late = MORE[reader.token().word];
    if (late !== undefined) reader.at++;
    const sign = early ?? late;
    if (step !== null && sign !== undefined && (reader.take('in') || reader.take('on') || reader.is(EACH)) && reader.take(EACH) && reader.take(ROW)) {
      if (sign < 0) step = mapAmount(step, (value) => -value);
      reader.take(COMMA);
    } else {
      reader.at = start;
      return null;
    }
  }
  if (reader.take('ending') || reader.take('ends')) {
    if (reader.take('with') || reader.take('at')) {
      const count = readAmount(reader);
      if (count !== null) return { count, unit: readUnit(reader), of: 'last', step };
    }
  }
  reader.at = start;
  return null;
}
