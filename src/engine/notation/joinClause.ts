import { readOrdinal } from './amounts.ts';
import type { Amount, Instruction } from './instruction.ts';
import { readNoun } from './noun.ts';
import type { RowReader } from './rowReader.ts';
import { matchStitch } from './stitchReading.ts';
import { readLetter } from './yarnClause.ts';

const JOIN = new Set(['join', 'joining', 'rejoin', 'attach']);
const TO = new Set(['in', 'into', 'to', 'at', 'on']);
const FORM = new Set(['form', 'make', 'close']);
const RING = new Set(['ring', 'circle']);
const ST = new Set(['st', 'sts', 'stitch', 'stitches']);
const CH = new Set(['ch', 'chain', 'chs', 'chains']);
const ROUND = new Set(['rnd', 'round', 'row']);
const BEGINNING = new Set(['beg', 'beginning', 'starting', 'turning']);
const FIRST = new Set(['first', '1st']);
const CLAUSE_END = new Set([',', ';', '.', 'and', 'then', '', ')', ']', '}', '(', '[', '*']);

type Where =
  | { readonly at: 'ring' }
  | { readonly at: 'firstChain' }
  | { readonly at: 'first' }
  | { readonly at: 'start'; readonly nth: Amount }
  | { readonly at: 'opening'; readonly nth: Amount }
  | { readonly at: 'seam'; readonly nth: Amount; readonly from: 'beforeSeam' | 'afterSeam' };

/**
 * Reads joins: the round in its first stitch, chains to a ring, or a yarn in a place (`join B with a sl st in the 12th st
 * before the seam`). `onlyChains`: nothing but chains stands before in the row, so that a bare `join` closes them to a ring.
 */
export function readJoin(reader: RowReader, onlyChains: boolean): readonly Instruction[] | null {
  const start = reader.at;
  const node = joinHere(reader, onlyChains, start);
  if (!node) reader.at = start;
  return node && [node];
}

function joinHere(reader: RowReader, onlyChains: boolean, start: number): Instruction | null {
  if (!reader.take(JOIN)) return formRing(reader, start);
  const yarn = readYarnToJoin(reader);
  reader.takeArticles();
  if (reader.take(ROUND) || reader.take('last')) readNoun(reader);
  takeWithSlip(reader);
  let { letter } = yarn;
  if (!yarn.said && reader.is('with')) {
    reader.at++;
    letter = readLetter(reader);
    if (letter === null) return null;
    takeWithSlip(reader);
  }
  const said = yarn.said || letter !== null;
  const where = readWhere(reader);
  if (where) takeWithSlip(reader);
  if (!where && !reader.is(CLAUSE_END)) return null;
  const closing = takeToForm(reader);
  const range = reader.range(start);
  if (closing || where?.at === 'ring' || (where?.at === 'firstChain' && !said)) return { kind: 'joinRing', range };
  if (where?.at === 'seam') return { kind: 'joinAt', nth: where.nth, from: where.from, yarn: letter, range };
  if (where?.at === 'opening') return { kind: 'joinAt', nth: where.nth, from: 'opening', yarn: letter, range };
  if (said) return { kind: 'joinAt', nth: where?.at === 'start' ? where.nth : 1, from: 'start', yarn: letter, range };
  if (where?.at === 'start') return { kind: 'joinAt', nth: where.nth, from: 'start', yarn: null, range };
  return onlyChains && !where ? { kind: 'joinRing', range } : { kind: 'join', at: 'first', range };
}

/** `form a ring`, after chains. */
function formRing(reader: RowReader, start: number): Instruction | null {
  if (!reader.take('form')) return null;
  reader.takeArticles();
  return reader.take(RING) ? { kind: 'joinRing', range: reader.range(start) } : null;
}

function readYarnToJoin(reader: RowReader): { readonly said: boolean; readonly letter: string | null } {
  const start = reader.at;
  const letter = readLetter(reader);
  if (letter !== null) {
    reader.take('yarn');
    return { said: true, letter };
  }
  reader.takeArticles();
  reader.take('new');
  if (reader.take('yarn') || reader.take('colour') || reader.take('color')) return { said: true, letter: readLetter(reader) };
  reader.at = start;
  return { said: false, letter: null };
}

function takeWithSlip(reader: RowReader): void {
  const start = reader.at;
  if (reader.take('with') || reader.take('by')) {
    reader.takeArticles();
    reader.take('a');
    const match = matchStitch(reader);
    if (match?.kind === 'slst') {
      reader.at += match.length;
      return;
    }
  }
  reader.at = start;
}

function takeToForm(reader: RowReader): boolean {
  const start = reader.at;
  if (reader.take('to') && reader.take(FORM)) {
    reader.takeArticles();
    if (reader.take(RING)) return true;
    if (reader.take('round') || reader.take('rnd')) return false;
  }
  reader.at = start;
  return false;
}

function readWhere(reader: RowReader): Where | null {
  const start = reader.at;
  if (takeToForm(reader)) return { at: 'ring' };
  if (reader.take(TO)) {
    reader.takeArticles();
    if (reader.take(RING)) return { at: 'ring' };
    if (reader.take('seam')) return { at: 'seam', nth: 1, from: 'afterSeam' };
    if (reader.take('opening')) return { at: 'opening', nth: 1 };
    if (reader.takeAll('same', ST) || reader.take('same') || reader.takeAll('any', ST)) return { at: 'start', nth: 1 };
    if (reader.takeAll('top', 'of')) {
      reader.takeArticles();
      const first = reader.take(FIRST) || reader.take(BEGINNING) || reader.is(CH);
      reader.take(BEGINNING);
      if ((first && readNoun(reader)) || reader.take('tch')) return { at: 'first' };
    } else if (reader.take(BEGINNING)) {
      if (readNoun(reader)) return { at: 'first' };
    } else {
      const nth = readOrdinal(reader);
      const chain = reader.is(CH);
      if (nth !== null && readNoun(reader)) return ofSeam(reader, nth, chain);
    }
  }
  reader.at = start;
  return null;
}

function ofSeam(reader: RowReader, nth: Amount, chain: boolean): Where {
  const side = reader.is('before') ? 'beforeSeam' : reader.is('after') ? 'afterSeam' : null;
  if (side) {
    const ahead = reader.is('the', 1) ? 2 : 1;
    if (reader.is('seam', ahead)) {
      reader.at += ahead + 1;
      return { at: 'seam', nth, from: side };
    }
  }
  const of = reader.at;
  if (reader.take('of')) {
    reader.takeArticles();
    if (reader.take('opening')) return { at: 'opening', nth };
    reader.at = of;
  }
  if (nth !== 1) return { at: 'start', nth };
  if (reader.take('of')) {
    reader.takeArticles();
    while (reader.take(BEGINNING) || reader.take('last') || reader.take('previous'));
    if (!reader.take(ROUND)) readNoun(reader);
  }
  return { at: chain ? 'firstChain' : 'first' };
}

/**
 * Reads a slip stitch that joins: `sl st to join`, `sl st in first st to join`, `sl st to first sc`. A slip stitch in the
 * first stitch closes a round when something was worked before it in the row. Null, with nothing moved, for any other.
 */
export function readJoiningSlip(reader: RowReader, onlyChains: boolean, workedBefore: boolean): readonly Instruction[] | null {
  const start = reader.at;
  reader.takeArticles();
  if (reader.token().kind === 'number' && reader.token().value === 1) reader.at++;
  const match = matchStitch(reader);
  if (match?.kind === 'slst') {
    reader.at += match.length;
    const joined = takeToJoin(reader);
    const to = reader.is('to');
    const where = joined ? null : readWhere(reader);
    const joining = joined || takeToJoin(reader) || (where !== null && takeToForm(reader));
    const range = reader.range(start);
    if (where?.at === 'ring' && !joining && to) return [{ kind: 'joinRing', range }];
    if (joining && (where?.at === 'firstChain' || where?.at === 'ring' || (onlyChains && !where))) return [{ kind: 'joinRing', range }];
    if (joining && (!where || where.at === 'first')) return [{ kind: 'join', at: 'first', range }];
    if (where?.at === 'firstChain' && onlyChains) return [{ kind: 'joinRing', range }];
    if (where?.at === 'first' && (to || workedBefore)) return [{ kind: 'join', at: 'first', range }];
  }
  reader.at = start;
  return null;
}

function takeToJoin(reader: RowReader): boolean {
  if (!reader.takeAll('to', 'join')) return false;
  reader.takeArticles();
  if (!reader.take(ROUND)) reader.takeAll('in', 'ring');
  takeToForm(reader);
  return true;
}
