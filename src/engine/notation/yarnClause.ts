import type { Instruction } from './instruction.ts';
import type { RowReader } from './rowReader.ts';
import { matchStitch } from './stitchReading.ts';

const WITH = new Set(['with', 'using', 'in']);
const CHANGE = new Set(['change', 'changing', 'switch', 'switching']);
const YARN = new Set(['yarn', 'colour', 'color']);
const LAST = new Set(['last', 'final', 'this']);
const STEP = new Set(['st', 'stitch', 'yo', 'pull', 'step', 'loop', 'yoh', 'yrh']);

/** In text set in capitals only, A before one of these is the article. */
const AFTER_ARTICLE = new Set(['ring', 'round', 'circle', 'spiral', 'magic', 'marker', 'total', 'long', 'tail']);

/** Print's names for a main colour and its contrasts, and the letters that stand for them here. */
const CONTRASTS = ['C', 'D', 'E', 'F', 'G'] as const;

/** The letter that stands for MC, CC, CC1 …, and the tokens it takes; null for other words. */
function colourName(reader: RowReader, ahead: number): { readonly letter: string; readonly length: number } | null {
  if (reader.is('mc', ahead)) return { letter: 'M', length: 1 };
  if (!reader.is('cc', ahead)) return null;
  const number = reader.token(ahead + 1);
  if (number.kind !== 'number' || !number.glued) return { letter: CONTRASTS[0], length: 1 };
  const letter = CONTRASTS[number.value - 1];
  return letter ? { letter, length: 2 } : null;
}

/** Whether the token there names a yarn: one of the pattern's letters, or any capital letter where none are known. */
function isLetter(reader: RowReader, ahead: number): boolean {
  const token = reader.token(ahead);
  if (colourName(reader, ahead)) return true;
  if (token.kind !== 'word' || token.word.length !== 1) return false;
  const letters = reader.options.letters;
  if (token.word === 'a' && reader.is(AFTER_ARTICLE, ahead + 1)) return false;
  if (token.capital) return letters === undefined || token.word !== 'a' || letters.includes('A') || !matchStitch(reader, ahead + 1);
  return letters !== undefined && token.word !== 'a' && letters.includes(token.word.toUpperCase());
}

/** Reads a yarn's letter and says so when the pattern has no such yarn. */
export function readLetter(reader: RowReader): string | null {
  const start = reader.at;
  reader.take(YARN);
  if (!isLetter(reader, 0)) {
    reader.at = start;
    return null;
  }
  const named = colourName(reader, 0);
  const letter = named?.letter ?? reader.token().word.toUpperCase();
  reader.at += named?.length ?? 1;
  const { letters } = reader.options;
  if (letters && !letters.includes(letter)) reader.find('wrong', 'unknownYarn', reader.range(start), { found: letter, expected: letters.join(', ') });
  return letter;
}

/** Reads a change of yarn before the stitches: `with B`, `change to B`, `in A`, and the bare letter of `A sc 3, B sc 2`. */
export function readYarn(reader: RowReader): Instruction | null {
  const start = reader.at;
  const node = yarnHere(reader, start);
  if (!node) reader.at = start;
  return node;
}

function yarnHere(reader: RowReader, start: number): Instruction | null {
  if (reader.take(CHANGE)) {
    reader.take(YARN);
    if (!reader.take('to')) return null;
    const letter = readLetter(reader);
    if (letter === null) return null;
    takeLastStep(reader);
    return { kind: 'yarn', letter, word: 'change', range: reader.range(start) };
  }
  if (reader.take(WITH)) {
    const letter = readLetter(reader) ?? lowerA(reader);
    if (letter === null) return null;
    reader.take('only');
    return { kind: 'yarn', letter, word: 'with', range: reader.range(start) };
  }
  if (!isLetter(reader, 0)) return null;
  const own = colourName(reader, 0)?.length ?? 1;
  const ahead = reader.is(':', own) ? own + 1 : own;
  if (!startsStitch(reader, ahead)) return null;
  const letter = readLetter(reader);
  if (letter === null) return null;
  const range = reader.range(start);
  reader.take(':');
  return { kind: 'yarn', letter, word: 'with', range };
}

const BEFORE_STITCH = new Set(['inc', 'dec', 'blo', 'flo', 'spike']);

/** Whether a stitch stands there, with or without a number (or two: `2 5-dc bobbles`) and a way into it. */
function startsStitch(reader: RowReader, ahead: number, numbers = 2): boolean {
  if (numbers < 0) return false;
  if (reader.token(ahead).kind === 'number') {
    const after = reader.token(ahead + 1);
    if (after.word === '(' && after.close > 0) return startsStitch(reader, after.close + 1 - reader.at, numbers - 1);
    return startsStitch(reader, after.word === '-' ? ahead + 2 : ahead + 1, numbers - 1);
  }
  return reader.is(BEFORE_STITCH, ahead) || matchStitch(reader, ahead) !== null;
}

/** `with a, ch 41`: a small a alone before a mark is the yarn, not the article. */
function lowerA(reader: RowReader): string | null {
  if (!reader.is('a') || (!reader.is(',', 1) && !reader.is(';', 1) && !reader.is('.', 1) && reader.token(1).word !== '')) return null;
  reader.at++;
  return 'A';
}

/** `change to B in last st`, `on the last pull-through`: the way a change is always made, so the words add nothing. */
function takeLastStep(reader: RowReader): void {
  const start = reader.at;
  if (reader.take('in') || reader.take('on') || reader.take('at') || reader.take('with')) {
    reader.takeArticles();
    if (reader.take(LAST) && reader.take(STEP)) {
      reader.take('-');
      reader.take('through');
      return;
    }
  }
  reader.at = start;
}

/** Reads the yarn said after the stitches: `sc in next 3 sts [B]`, `6 sc in B`, `6 sc with B` with nothing after it in its clause. */
export function readYarnAfter(reader: RowReader): Instruction | null {
  return reader.attempt(() => yarnAfterHere(reader, reader.at));
}

function yarnAfterHere(reader: RowReader, start: number): Instruction | null {
  const open = reader.token();
  if ((open.word === '[' || open.word === '(') && isLetter(reader, 1) && open.close === reader.at + 1 + (colourName(reader, 1)?.length ?? 1)) {
    reader.at++;
    const letter = readLetter(reader)!;
    reader.at++;
    return { kind: 'yarn', letter, word: 'with', range: reader.range(start) };
  }
  if ((reader.is('in') || reader.is('with')) && (isLetter(reader, 1) || (reader.is(YARN, 1) && isLetter(reader, 2)))) {
    reader.at++;
    const letter = readLetter(reader)!;
    const after = reader.token().word;
    if (after === ',' || after === ';' || after === '.' || after === '' || after === 'and' || after === 'then') {
      return { kind: 'yarn', letter, word: 'with', range: reader.range(start) };
    }
  }
  return null;
}
