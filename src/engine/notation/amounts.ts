import type { Amount } from './instruction.ts';
import type { RowReader } from './rowReader.ts';

const BETWEEN = new Set([',', ';', ':', '/', '—']);
const OPENING = new Set(['(', '[']);

/** Amounts with the same numbers. */
export function sameAmount(a: Amount, b: Amount): boolean {
  if (typeof a === 'number' || typeof b === 'number') return a === b;
  return a.length === b.length && a.every((value, index) => value === b[index]);
}

/** An amount with a whole number added or multiplied in each size. */
export function mapAmount(amount: Amount, change: (value: number) => number): Amount {
  return typeof amount === 'number' ? change(amount) : amount.map(change);
}

/**
 * Reads a number, or one number per size: `20`, `20 (24, 28)`, `20 [24, 28]`, `20/24/28`. Vectors that are neither one
 * number nor one per size are found and read as their first number. Null if no number stands there.
 */
export function readAmount(reader: RowReader): Amount | null {
  return readNumbers(reader, 'number');
}

/** Reads an ordinal, or one per size: `12th`, `12th (13th, 14th)`. */
export function readOrdinal(reader: RowReader): Amount | null {
  return readNumbers(reader, 'ordinal');
}

function readNumbers(reader: RowReader, kind: 'number' | 'ordinal'): Amount | null {
  const first = reader.token();
  if (first.kind !== kind) return null;
  const start = reader.at;
  reader.at++;
  const values = [first.value];
  const listed = listedSizes(reader) ?? slashedSizes(reader);
  if (listed === null) return first.value;
  values.push(...listed);
  return checkSizes(reader, values, start);
}

/** A list of bare numbers as the whole content of a bracket, `(40, 44, 48)`: one per size. Null if it is not that. */
export function readBareList(reader: RowReader): Amount | null {
  const start = reader.at;
  const values: number[] = [];
  for (;;) {
    const token = reader.token();
    if (token.kind !== 'number') break;
    values.push(token.value);
    reader.at++;
    if (!reader.is(BETWEEN) || reader.token(1).kind !== 'number') break;
    reader.at++;
  }
  if (values.length < 2) {
    reader.at = start;
    return null;
  }
  return checkSizes(reader, values, start);
}

function checkSizes(reader: RowReader, values: readonly number[], start: number): Amount {
  const { sizes } = reader.options;
  if (values.length === sizes) return values;
  reader.find('wrong', 'sizesMismatch', reader.range(start), { found: values.length, expected: sizes });
  return values[0]!;
}

/** The numbers in the bracket after a number. A single one is a size only with two sizes, or when a unit follows it. */
function listedSizes(reader: RowReader): number[] | null {
  const open = reader.token();
  if (!reader.is(OPENING) || open.close < 0 || open.close >= reader.end) return null;
  const values: number[] = [];
  for (let index = reader.at + 1; index < open.close; index++) {
    const token = reader.tokens[index]!;
    const expected = (index - reader.at) % 2 === 1;
    if (expected && (token.kind === 'number' || token.kind === 'ordinal')) values.push(token.value);
    else if (expected || !BETWEEN.has(token.word)) return null;
  }
  if (values.length !== (open.close - reader.at) / 2) return null;
  if (values.length === 1 && reader.options.sizes !== 2) {
    const after = reader.tokens[open.close + 1];
    if (open.close + 1 >= reader.end || after?.kind !== 'word') return null;
    if (after.word === 'times' || after.word === 'turn' || after.word === 'and' || after.word === 'then') return null;
  }
  reader.at = open.close + 1;
  return values;
}

function slashedSizes(reader: RowReader): number[] | null {
  const values: number[] = [];
  while (reader.is('/') && reader.token(1).kind === 'number' && reader.token().glued) {
    values.push(reader.token(1).value);
    reader.at += 2;
  }
  return values.length > 0 ? values : null;
}
