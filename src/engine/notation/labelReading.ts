import type { Amount } from './instruction.ts';
import { numberOfWords, ordinalOfWord } from './numberWords.ts';
import { readRepeatLabel } from './repeatLabel.ts';
import type { RowLabel } from './written.ts';

/** A label as written: its numbers are not yet followed up, and `textFrom` is where the row's own text begins. */
export interface ReadLabel {
  readonly word: RowLabel['word'];
  /** First and last number as written, one number or one per size written; null for labels without a number. */
  readonly first: readonly number[] | null;
  readonly last: readonly number[] | null;
  /** Rows that the words say without numbers: `Next 4 rows`, `Rep rows 4 and 5 3 times`. */
  readonly rows: readonly number[] | null;
  readonly side: RowLabel['side'];
  /** Only `R` stood for the word: a round where the row before is one. */
  readonly bare: boolean;
  readonly textFrom: number;
  /** Whether a mark ends the label; without one the line may be prose that only begins like a label. */
  readonly marked: boolean;
}

const SPACE = String.raw`[ \t]*`;
const DASH = String.raw`(?:[-–—‐‑−]|to\b|and\b|&|through\b)`;
const NUMBERS = String.raw`(\d{1,9}(?:${SPACE}[([]${SPACE}\d{1,9}(?:${SPACE}[,;:/]${SPACE}\d{1,9})*${SPACE}[)\]])?)`;
const RANGE = String.raw`${NUMBERS}(?:${SPACE}${DASH}${SPACE}${NUMBERS})?`;
const ROW_WORD = String.raw`(rows?|rnds?|rounds?|rds?)`;

const ROW = new RegExp(String.raw`^(?:${ROW_WORD}|r)\.?${SPACE}${RANGE}`, 'i');
const NTH_ROW = new RegExp(String.raw`^(\d{1,6})(?:st|nd|rd|th)(?:${SPACE}${DASH}${SPACE}(\d{1,6})(?:st|nd|rd|th)?)?${SPACE}${ROW_WORD}\b`, 'i');
const WORD_NTH_ROW = new RegExp(String.raw`^([a-z]+)${SPACE}${ROW_WORD}\b`, 'i');
const FOUNDATION = /^(?:foundation|base|starting)(?:[ \t]+(?:chain|ch|row|rnd|round|ring))?(?=[ \t]*[(:.–—-]|[ \t]*$)/i;
const SETUP = /^set[ \t-]?up(?:[ \t]+(?:row|rnd|round))?\b/i;
const NEXT = new RegExp(String.raw`^next(?:${SPACE}(?:${NUMBERS}|([a-z]+(?:-[a-z]+)?)))?${SPACE}${ROW_WORD}\b`, 'i');
const SIDE = /^[ \t]*[([]?[ \t]*(?:(rs|right side)|(ws|wrong side))(?:[ \t]+facing)?[ \t]*(?:[)\]]|(?=[ \t]*[:.–—-]))/i;
const MARK = /^[ \t]*(?:[:.=]|[-–—])[ \t]*/;

function numbersOf(written: string | undefined): number[] | null {
  return written === undefined ? null : (written.match(/\d+/g)?.map(Number) ?? null);
}

function wordOf(row: string | undefined): 'row' | 'round' {
  return row !== undefined && /^r(n|o(u)|d)/i.test(row) ? 'round' : 'row';
}

/**
 * Reads the label at the start of a line (no leading spaces): `Row 4`, `Rows 2-60 (64, 68)`, `Rnd 3 (WS)`, `4th row`,
 * `Foundation`, `Set-up row`, `Next 2 rows`, `Rep row 4` (whose words are the row's text too). Null for any other line.
 */
export function readLabel(line: string): ReadLabel | null {
  const again = readRepeatLabel(line);
  if (again) return { word: 'next', first: null, last: null, rows: again, side: null, bare: false, textFrom: 0, marked: true };
  const begun = labelBegun(line);
  if (!begun) return null;
  let at = begun.length;
  let side: RowLabel['side'] = null;
  const takeSide = () => {
    const match = SIDE.exec(line.slice(at));
    if (!match) return;
    side = match[1] === undefined ? 'WS' : 'RS';
    at += match[0].length;
  };
  takeSide();
  const mark = MARK.exec(line.slice(at));
  if (mark) at += mark[0].length;
  if (side === null) takeSide();
  const space = /^[ \t]*/.exec(line.slice(at))![0].length;
  const bracket = line[at + space] === '(' || line[at + space] === '[';
  const late = side !== null && !mark ? MARK.exec(line.slice(at)) : null;
  at += late ? late[0].length : space;
  return { ...begun.label, side, bare: begun.bare === true, textFrom: at, marked: mark !== null || side !== null || bracket || at >= line.length };
}

function labelBegun(line: string): { readonly length: number; readonly bare?: boolean; readonly label: Omit<ReadLabel, 'side' | 'bare' | 'textFrom' | 'marked'> } | null {
  const row = ROW.exec(line);
  if (row) return { length: row[0].length, bare: row[1] === undefined, label: { word: wordOf(row[1]), first: numbersOf(row[2]), last: numbersOf(row[3]), rows: null } };
  const nth = NTH_ROW.exec(line);
  if (nth) return { length: nth[0].length, label: { word: wordOf(nth[3]), first: [Number(nth[1])], last: nth[2] === undefined ? null : [Number(nth[2])], rows: null } };
  const named = WORD_NTH_ROW.exec(line);
  const ordinal = named && ordinalOfWord(named[1]!.toLowerCase());
  if (named && ordinal) return { length: named[0].length, label: { word: wordOf(named[2]), first: [ordinal], last: null, rows: null } };
  const foundation = FOUNDATION.exec(line);
  if (foundation) return { length: foundation[0].length, label: { word: 'foundation', first: null, last: null, rows: null } };
  const setup = SETUP.exec(line);
  if (setup) return { length: setup[0].length, label: { word: 'setup', first: null, last: null, rows: null } };
  const next = NEXT.exec(line);
  if (!next) return null;
  const rows = numbersOf(next[1]) ?? (next[2] === undefined ? [1] : [numberOfWords(next[2].toLowerCase()) ?? 0]);
  return rows[0] === 0 ? null : { length: next[0].length, label: { word: 'next', first: null, last: null, rows } };
}

/** Numbers as an amount: one number, or one per size. Null when they are neither. */
export function asAmount(values: readonly number[], sizes: number): Amount | null {
  if (values.length === 1) return values[0]!;
  return values.length === sizes ? values : null;
}
