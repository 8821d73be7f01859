import { readAmount } from './amounts.ts';
import type { Amount, Instruction } from './instruction.ts';
import type { RowReader } from './rowReader.ts';
import { matchStitch } from './stitchReading.ts';

const CH = new Set(['ch', 'chs', 'chain', 'chains']);
const ST = new Set(['st', 'sts', 'stitch', 'stitches']);
const SPACE = new Set(['sp', 'sps', 'space', 'spaces', 'loop', 'loops', 'lp', 'lps']);
const OPENING = new Set(['(', '[']);
const COUNTS_START = new Set(['counts', 'count', 'counted', 'does', "doesn't", 'do', "don't", 'not', 'which', 'always', 'each', 'new', 'here', 'now', 'will']);

interface Counting {
  readonly counts: 'stitch' | 'no' | 'each';
  /** Chains beyond the counted stitch: `counts as dc and ch 2`. */
  readonly spare: number;
}

/** What words say about a chain: `counts as dc`, `does not count as a st`, `new sts`. Null if they say nothing of that. */
function countingOf(words: string): Counting | null {
  if (/^(which )?(each (ch )?counts?|new (sts|st|stitches|ch|chs))\b/.test(words)) return { counts: 'each', spare: 0 };
  if (/\bnot( be)? count(ed)?\b|n't count\b|^not counted\b/.test(words)) return { counts: 'no', spare: 0 };
  const as = /^(?:here |now |always |which |will )*(?:counts?|counted)(?: always)?( as.*)?$/.exec(words);
  if (!as) return null;
  const said = as[1] ?? '';
  const number = /^ as (\d+) (sts|stitches)/.exec(said);
  if (number && Number(number[1]) > 1) return { counts: 'each', spare: 0 };
  const spare = /(?:and|plus|,|\+) (?:a )?ch -? ?(\d+)/.exec(said);
  return { counts: 'stitch', spare: spare ? Number(spare[1]) : 0 };
}

/**
 * Reads chains: `ch 3`, `chain three`, `3 ch`, `ch 41 (45, 49)`, with what is said of their counting in parentheses or
 * after a comma. `ch 5 (counts as dc and ch 2)` gives a counted chain of 3 and a plain one of 2.
 */
export function readChain(reader: RowReader): readonly Instruction[] | null {
  const start = reader.at;
  reader.takeArticles();
  let count: Amount | null = null;
  if (reader.token().kind === 'number') {
    count = readAmount(reader);
    reader.take('-');
  }
  if (!reader.take(CH) || (count === null && reader.is('-') && reader.token(1).kind !== 'number')) {
    reader.at = start;
    return null;
  }
  reader.take('st');
  if (count === null) {
    reader.take('-');
    const number = reader.at;
    count = readAmount(reader);
    if (count !== null) reader.take(ST);
    if (reader.is('times') || reader.is('x')) {
      reader.at = number;
      count = 1;
    }
    reader.take(CH);
  }
  if (reader.is(SPACE) || (reader.is('-') && reader.is(SPACE, 1))) {
    reader.at = start;
    return null;
  }
  count ??= 1;
  const counting = readCounting(reader);
  const range = reader.range(start);
  if (counting && counting.spare > 0 && typeof count === 'number' && counting.spare < count) {
    return [
      { kind: 'chain', count: count - counting.spare, counts: counting.counts, range },
      { kind: 'chain', count: counting.spare, counts: null, range },
    ];
  }
  return [{ kind: 'chain', count, counts: counting?.counts ?? null, range }];
}

function readCounting(reader: RowReader): Counting | null {
  const open = reader.token();
  if (reader.is(OPENING) && open.close > 0 && open.close < reader.end && open.close - reader.at <= 24) {
    const counting = countingOf(wordsOf(reader, reader.at + 1, open.close));
    if (counting) reader.at = open.close + 1;
    return counting;
  }
  const ahead = reader.is(',') ? 1 : 0;
  if (!reader.is(COUNTS_START, ahead)) return null;
  const start = reader.at + ahead;
  let end = start;
  while (end < reader.end && end - start < 16 && !endsCounting(reader, end)) end++;
  const counting = countingOf(wordsOf(reader, start, end));
  if (counting) reader.at = end;
  return counting;
}

function wordsOf(reader: RowReader, from: number, to: number): string {
  return reader.tokens
    .slice(from, to)
    .map((token) => token.word)
    .join(' ');
}

/** A counting phrase without parentheses ends at a mark, or where the next stitch begins. */
function endsCounting(reader: RowReader, index: number): boolean {
  const token = reader.tokens[index]!;
  if (token.kind === 'mark') return token.word !== '-';
  if (token.word === 'turn' || token.word === 'then' || token.word === 'and') return true;
  const before = reader.tokens[index - 1]?.word;
  const stitch = matchStitch(reader, index - reader.at);
  return stitch !== null && before !== 'as' && before !== 'a' && before !== 'first' && before !== 'the' && before !== 'an' && before !== '1';
}
