import { numberOfWord, numberOfWords, ordinalOfWord } from './numberWords.ts';

/** One word, number or mark of a written row. `word` is lower case; `[from, to)` are characters of the text. */
export interface Token {
  readonly kind: 'word' | 'number' | 'ordinal' | 'mark';
  readonly word: string;
  /** Value of a number or ordinal; 0 for others. */
  readonly value: number;
  readonly from: number;
  readonly to: number;
  /** Follows the token before without a space. */
  readonly glued: boolean;
  /** A single capital letter: may name a yarn. */
  readonly capital: boolean;
  /** For an opening bracket, the index of the token that closes it; for all others, and if none does, -1. */
  close: number;
}

const TOKEN = /([\s\u2060\u00ad\u200b-\u200d\ufeff®™©℠]+)|(\p{L}[\p{L}\p{M}\u2060]*(?:['’]\p{L}+)?)|(\d+)|(\*\*|[\s\S])/gu;
/** Abbreviations of older print with a stop after each letter: d.c., h.tr., sl.st. */
const DOTTED = /(?:d\.c|s\.c|h\.d\.c|h\.t\.r|h\.tr|d\.tr|tr\.tr|s\.s|sl\.st|d\.t\.r)\b\.?/iy;
/** Words that print shortens with a stop, so that the stop ends no clause when a small letter or a number follows. */
const SHORTENED = new Set(['ch', 'sk', 'st', 'sts', 'rep', 'rem', 'tr', 'sl', 'dc', 'sc', 'hdc', 'htr', 'sp', 'sps', 'beg', 'foll', 'rnd', 'chs', 'rnds', 'tog', 'approx', 'prev', 'lp', 'lps', 'inc', 'dec']);
const ALIKE: Readonly<Record<string, string>> = {
  '–': '—', '―': '—', '−': '—', '‐': '-', '‑': '-', '×': 'x', '✕': 'x', '✖': 'x', '∗': '*', '＊': '*', '⁎': '*', '→': '=', '⇒': '=', '“': '"', '”': '"', '‘': "'", '’': "'",
};
type Opening = '(' | '[' | '{';
const CLOSES: Readonly<Record<string, Opening>> = { ')': '(', ']': '[', '}': '{' };
const ORDINAL_ENDINGS = new Set(['st', 'nd', 'rd', 'th']);

/**
 * Takes a written row apart into tokens, in one pass. Curly quotes, dashes (en, em and minus all become `—`) and times
 * signs are made alike, a word joiner inside a word (where a line broke it) is passed over; numbers as words (`twenty-four`, `one hundred and six`) and ordinals (`2nd`, `second`) get their value. Any text is accepted.
 */
export function tokenize(text: string): Token[] {
  const tokens: Token[] = [];
  const open: number[] = [];
  const waiting: Record<Opening, number> = { '(': 0, '[': 0, '{': 0 };
  let glued = false;
  let at = 0;
  while (at < text.length) {
    TOKEN.lastIndex = at;
    const match = TOKEN.exec(text)!;
    const from = at;
    let piece = match[0];
    if (match[1] !== undefined) {
      glued = false;
      at += piece.length;
      continue;
    }
    if (match[2] !== undefined) {
      DOTTED.lastIndex = at;
      const dotted = DOTTED.exec(text);
      if (dotted && dotted[0].length > piece.length) piece = dotted[0];
    }
    at += piece.length;
    if (match[2] !== undefined) {
      const word = piece.toLowerCase().replace(/[.’\u2060]/g, (mark) => (mark === '’' ? "'" : ''));
      const last = tokens.at(-1);
      if (glued && last?.kind === 'number' && ORDINAL_ENDINGS.has(word) && isOrdinalEnding(last.value, word)) {
        tokens[tokens.length - 1] = { ...last, kind: 'ordinal', word: last.word + word, to: at };
      } else {
        tokens.push(wordToken(word, piece, from, at, glued));
        joinNumberWords(tokens);
      }
    } else if (match[3] !== undefined) {
      const fits = piece.length <= 9;
      tokens.push({ kind: fits ? 'number' : 'word', word: piece, value: fits ? Number(piece) : 0, from, to: at, glued, capital: false, close: -1 });
    } else {
      const mark = ALIKE[piece] ?? piece;
      if (mark === '.' && isShortening(tokens, text, at)) {
        glued = false;
        continue;
      }
      const opening = CLOSES[mark];
      const kind = mark === 'x' ? 'word' : 'mark';
      tokens.push({ kind, word: mark, value: 0, from, to: at, glued, capital: false, close: -1 });
      if (mark === '(' || mark === '[' || mark === '{') {
        open.push(tokens.length - 1);
        waiting[mark]++;
      } else if (opening !== undefined && waiting[opening] > 0) closeBracket(tokens, open, waiting, opening);
    }
    glued = true;
  }
  return tokens;
}

/** Ties the closing bracket just read to its opening one; brackets left open inside stay without a partner. */
function closeBracket(tokens: readonly Token[], open: number[], waiting: Record<Opening, number>, opening: Opening): void {
  for (let index = open.pop(); index !== undefined; index = open.pop()) {
    const word = tokens[index]!.word as Opening;
    waiting[word]--;
    if (word !== opening) continue;
    tokens[index]!.close = tokens.length - 1;
    return;
  }
}

function wordToken(word: string, written: string, from: number, to: number, glued: boolean): Token {
  const number = numberOfWord(word);
  if (number !== null) return { kind: 'number', word, value: number, from, to, glued, capital: false, close: -1 };
  const ordinal = ordinalOfWord(word);
  if (ordinal !== null) return { kind: 'ordinal', word, value: ordinal, from, to, glued, capital: false, close: -1 };
  const capital = written.length === 1 && written !== written.toLowerCase();
  return { kind: 'word', word, value: 0, from, to, glued, capital, close: -1 };
}

/** Parts of a number written in words, the last of them just read, become one number: `twenty - four`, `one hundred and six`. */
function joinNumberWords(tokens: Token[]): void {
  const last = tokens.at(-1)!;
  if (last.kind !== 'number' && last.kind !== 'ordinal') return;
  const hyphen = tokens.at(-2)?.word === '-' && last.glued && tokens.at(-2)!.glued;
  const and = last.kind === 'number' && tokens.at(-2)?.word === 'and';
  const at = tokens.length - (hyphen || and ? 3 : 2);
  const before = tokens[at];
  const article = last.word === 'hundred' && (before?.word === 'a' && !before.capital);
  if (!before || (!article && (before.kind !== 'number' || !/[a-z]$/.test(before.word)))) return;
  const hundreds = /hundred$/.test(before.word);
  const fits =
    last.word === 'hundred' || last.word === 'hundredth' ? article || before.value < 10
    : and ? hundreds
    : hundreds || (/ty$/.test(before.word) && last.value < 10 && (hyphen || last.kind === 'number'));
  if (!fits) return;
  const value = article ? 100 : numberOfWords(`${before.word} ${last.kind === 'number' ? last.word : 'one'}`);
  if (value === null) return;
  const whole = last.kind === 'number' ? value : last.value === 100 ? before.value * 100 : before.value + last.value;
  tokens.length = at;
  tokens.push({ ...last, word: `${before.word} ${last.word}`, value: whole, from: before.from, glued: before.glued });
}

function isOrdinalEnding(value: number, ending: string): boolean {
  const teen = value % 100 >= 11 && value % 100 <= 13;
  const expected = teen ? 'th' : (['th', 'st', 'nd', 'rd'][value % 10] ?? 'th');
  return ending === expected;
}

function isShortening(tokens: readonly Token[], text: string, at: number): boolean {
  const last = tokens.at(-1);
  if (last?.kind !== 'word' || !SHORTENED.has(last.word)) return false;
  const capitals = last.to - last.from > 1 && text[last.from + 1] !== text[last.from + 1]!.toLowerCase();
  return (capitals ? /^ ?[\p{L}\d(]/u : /^ ?[\p{Ll}\d(]/u).test(text.slice(at, at + 2));
}
