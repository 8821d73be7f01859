import { measuredIn } from './measureClause.ts';
import { numberOfWords } from './numberWords.ts';

const SPACE = String.raw`[ \t]*`;
const ROWS = String.raw`(?:rows?|rnds?|rounds?)`;
const NUMBERS = String.raw`\d{1,9}(?:${SPACE}[([]${SPACE}\d{1,9}(?:${SPACE}[,;:/]${SPACE}\d{1,9})*${SPACE}[)\]])?`;
/** How often: `3 times`, `3 (4, 5) more times`, `twice more`. */
const TIMES = String.raw`(?:[,;]?${SPACE}(?:(${NUMBERS})|([a-z]+(?:-[a-z]+)?))${SPACE}(?:more${SPACE})?times(?:${SPACE}more)?|[,;]?${SPACE}(once|twice)(?:${SPACE}more)?)?`;
const END = String.raw`${SPACE}(?=$|[.,;([—–=-])`;
const REP = String.raw`^(?:rep(?:eat)?|work as)${SPACE}(?:the${SPACE})?`;

const RANGE = new RegExp(String.raw`${REP}${ROWS}${SPACE}(\d{1,6})(?:${SPACE}(?:[-–—‐‑−]|to\b|through\b)${SPACE}(\d{1,6}))?${TIMES}${END}`, 'i');
const LIST = new RegExp(String.raw`${REP}${ROWS}${SPACE}(\d{1,6}(?:${SPACE},${SPACE}\d{1,6})*)${SPACE},?${SPACE}(?:and\b|&)${SPACE}\d{1,6}${TIMES}${END}`, 'i');
const LAST = new RegExp(String.raw`${REP}(?:last|previous|prev|preceding)(?:${SPACE}(?:(\d{1,3})|([a-z]+(?:-[a-z]+)?)))?${SPACE}${ROWS}${TIMES}${END}`, 'i');
const EVEN = new RegExp(String.raw`^(?:work|continue)[ \t]+(?:even[ \t]+for[ \t]+(${NUMBERS})${SPACE}${ROWS}|(${NUMBERS})${SPACE}${ROWS}[ \t]+even)\b`, 'i');
const REPEATS = /^(?:rep|repeat|work|continue|cont|keep)\b/i;
const GOES_ON = /^(?:work|continue|cont|keep)(?:[ \t]+(?:working|on))?(?:[ \t]+(?:even|straight|without shaping|in (?:the |this )?(?:stitch )?(?:pattern|patt)(?:[ \t]+as (?:established|set))?))+$/i;
const EVEN_IN_WORDS = new RegExp(String.raw`^(?:work|continue)[ \t]+even[ \t]+for[ \t]+([a-z]+(?:-[a-z]+)?)${SPACE}${ROWS}\b`, 'i');

/**
 * How many rows a line without a label of its own stands for, one number or one per size, where its words say so:
 * `Rep row 4`, `Repeat rows 2 and 4 3 times`, `Rep last 2 rnds twice more`, `Work even for 5 rows`. Null for other lines.
 */
export function readRepeatLabel(line: string): readonly number[] | null {
  const measured = REPEATS.test(line) ? measuredIn(line) : null;
  if (measured) {
    const words = line.slice(0, measured.range[0]).replace(/[\s,;]+$/, '');
    // How many rows a length is, the gauge tells.
    return GOES_ON.test(words) ? [1] : readRepeatLabel(words);
  }
  const even = EVEN.exec(line);
  if (even) return positive(numbersOf(even[1] ?? even[2]!), 1);
  const words = EVEN_IN_WORDS.exec(line);
  if (words) return positive([numberOfWords(words[1]!.toLowerCase()) ?? 0], 1);
  const list = LIST.exec(line);
  if (list) return positive(timesOf(list[2], list[3], list[4]), list[1]!.split(',').length + 1);
  const range = RANGE.exec(line);
  if (range) return positive(timesOf(range[3], range[4], range[5]), range[2] === undefined ? 1 : Number(range[2]) - Number(range[1]) + 1);
  const last = LAST.exec(line);
  if (!last) return null;
  const span = last[1] !== undefined ? Number(last[1]) : last[2] !== undefined ? (numberOfWords(last[2].toLowerCase()) ?? 0) : 1;
  return positive(timesOf(last[3], last[4], last[5]), span);
}

function timesOf(numbers: string | undefined, word: string | undefined, once: string | undefined): readonly number[] {
  if (numbers !== undefined) return numbersOf(numbers);
  if (word !== undefined) return [numberOfWords(word.toLowerCase()) ?? 0];
  return [once?.toLowerCase() === 'twice' ? 2 : 1];
}

function positive(times: readonly number[], rows: number): readonly number[] | null {
  return rows > 0 && times.every((value) => value > 0) ? times.map((value) => value * rows) : null;
}

function numbersOf(written: string): number[] {
  return (written.match(/\d+/g) ?? []).map(Number);
}
