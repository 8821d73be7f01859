import { readAmount } from './amounts.ts';
import type { Instruction } from './instruction.ts';
import { readNoun } from './noun.ts';
import type { RowReader } from './rowReader.ts';
import { strangerFollows } from './stitchReading.ts';

const SKIP = new Set(['skip', 'sk', 'miss', 'skipping', 'missing']);
const LEAVE = new Set(['leave', 'leaving']);
const NEXT = new Set(['next', 'nxt', 'following', 'foll', 'first', 'last']);
const REST = new Set(['rem', 'remaining', 'remainder', 'rest']);
const OPEN = new Set(['unworked', 'open', 'unused', 'free']);
const ROW = new Set(['row', 'rnd', 'round', 'rows', 'rnds', 'rounds']);
const ST = new Set(['st', 'sts', 'stitch', 'stitches']);
const CH = new Set(['ch', 'chain', 'chs', 'chains']);
const LP = new Set(['loop', 'loops', 'lp', 'lps']);

/** `turn`, `turn the work`. */
export function readTurn(reader: RowReader): Instruction | null {
  const start = reader.at;
  if (!reader.take('turn') && !reader.take('turning')) return null;
  const save = reader.at;
  reader.take('your');
  reader.takeArticles();
  if (!reader.take('work') && !reader.take('piece')) reader.at = save;
  return { kind: 'turn', range: reader.range(start) };
}

/** `skip next 2 sts`, `sk 2`, `miss 2 dc`, `skip the seam`. */
export function readSkip(reader: RowReader): Instruction | null {
  const start = reader.at;
  if (!reader.take(SKIP)) return null;
  reader.takeArticles();
  if (reader.take('seam')) return { kind: 'skipSeam', range: reader.range(start) };
  if (reader.is('next') && readNextToLast(reader)) return { kind: 'skip', count: 1, what: 'st', range: reader.range(start) };
  if (reader.is(NEXT) || (reader.token().kind === 'ordinal' && reader.token().value === 1)) reader.at++;
  const count = readAmount(reader);
  const noun = readNoun(reader);
  if (!noun && (reader.at === start + 1 || strangerFollows(reader))) return null;
  return { kind: 'skip', count: count ?? 1, what: noun?.what ?? 'st', range: reader.range(start) };
}

/** `skip next to last st`: the one before the last, which is the next where the words before it stop two short of the end. */
function readNextToLast(reader: RowReader): boolean {
  const ahead = reader.is('-', 1) ? 1 : 0;
  if (!reader.is('to', 1 + ahead)) return false;
  const second = reader.is('-', 2 + ahead) ? 1 : 0;
  if (!reader.is('last', 2 + ahead + second)) return false;
  reader.at += 3 + ahead + second;
  readNoun(reader);
  return true;
}

/** `Leave the rest unworked`, `leave 8 unworked`, `leave rem 9 sts unworked`. */
export function readLeave(reader: RowReader): Instruction | null {
  const start = reader.at;
  if (!reader.take(LEAVE)) return null;
  reader.takeArticles();
  reader.take(NEXT);
  const rest = reader.take(REST);
  if (rest && reader.take('of')) {
    reader.takeArticles();
    reader.take(ROW);
  }
  const count = readAmount(reader);
  reader.take(REST);
  const noun = readNoun(reader);
  const open = reader.take(OPEN);
  if (!open && !(rest && (noun || count === null)) && !(count !== null && noun)) return null;
  if (count === null && !rest && !noun) return null;
  return { kind: 'leave', count: count ?? (rest ? 'rest' : 1), ...(noun?.what === 'picot' ? { what: noun.what } : {}), range: reader.range(start) };
}

/** `magic ring`, `make an adjustable ring`. */
export function readRing(reader: RowReader): Instruction | null {
  const start = reader.at;
  if (reader.take('make') || reader.take('form') || reader.take('start') || reader.take('begin')) reader.take('with');
  reader.takeArticles();
  const named = reader.take('mr') || (reader.take('magic') || reader.take('adjustable') ? reader.take('ring') || reader.take('circle') || reader.take('loop') : false);
  return named ? { kind: 'ring', range: reader.range(start) } : null;
}

/** `place marker`, `pm`, `place a marker in last st made`. */
export function readMarker(reader: RowReader): Instruction | null {
  const start = reader.at;
  if (!reader.take('pm')) {
    if (!reader.take('place') && !reader.take('put')) return null;
    reader.takeArticles();
    if (!reader.take('marker') && !reader.take('m')) return null;
  }
  const save = reader.at;
  if (reader.take('in') || reader.take('on')) {
    reader.takeArticles();
    const just = reader.take('last') || reader.take('this');
    const noun = just || reader.is(ST) ? readNoun(reader) : null;
    const made = reader.takeAll('just', 'made') || reader.take('made') || reader.takeAll('just', 'worked');
    if (!noun || (!just && !made)) reader.at = save;
  }
  return { kind: 'marker', range: reader.range(start) };
}

/** `working along the other side of the chain`, `on the opposite side of foundation ch`. */
export function readOtherSide(reader: RowReader): Instruction | null {
  const start = reader.at;
  if (!reader.take('working') && !reader.take('work')) reader.take('continue');
  if (!reader.take('along') && !reader.take('on') && !reader.take('across') && !reader.take('down') && !reader.take('in')) return null;
  reader.takeArticles();
  if (reader.take('other') || reader.take('opposite') || reader.take('second')) {
    if (!reader.take('side')) return null;
  } else if (!(reader.take('free') && reader.take(LP))) return null;
  const save = reader.at;
  if (reader.take('of')) {
    reader.takeArticles();
    if (reader.is('foundation') || reader.is('starting') || reader.is('beginning') || reader.is('beg')) reader.at++;
    if (!reader.take(CH)) reader.at = save;
  }
  return { kind: 'otherSide', range: reader.range(start) };
}

const SEAM_END = new Set([',', ';', '.', '*']);
const SEWN = new Set(['seam', 'sides', 'side', 'edges', 'edge', 'seams']);

/** `Seam the side edges`, `Sew the sides together`: the rest of the clause belongs to it. */
export function readSeam(reader: RowReader): Instruction | null {
  const start = reader.at;
  const seam = reader.take('seam');
  if (!seam && !reader.take('sew') && !reader.take('whipstitch') && !reader.take('join')) return null;
  let sewn = seam;
  while (reader.at < reader.end && reader.at - start < 16 && !reader.is(SEAM_END) && reader.token().close < 0) {
    sewn ||= reader.is(SEWN);
    if (reader.is('in') || reader.is('ends')) return null;
    reader.at++;
  }
  return sewn ? { kind: 'seam', range: reader.range(start) } : null;
}

/** `Fasten off`, `fasten off A`, `cut yarn`; not before drawing it through the last stitches, which ends the yarn itself. */
export function readFastenOff(reader: RowReader): Instruction | null {
  const start = reader.at;
  const off = reader.takeAll('fasten', 'off') || reader.takeAll('finish', 'off') || reader.takeAll('end', 'off') || reader.take('fo');
  if (!off) {
    if (!reader.take('cut') && !reader.take('break')) return null;
    reader.take('off');
  }
  const save = reader.at;
  reader.takeArticles();
  const yarn = reader.take('yarn') || reader.take('yarns') || reader.takeAll('all', 'yarns');
  if (reader.token().kind === 'word' && reader.token().capital) reader.at++;
  else if (!yarn) reader.at = save;
  if (!off && reader.at === save) return null;
  return off || !drawsThrough(reader) ? { kind: 'fastenOff', range: reader.range(start) } : { kind: 'remark', text: reader.slice(start), range: reader.range(start) };
}

function drawsThrough(reader: RowReader): boolean {
  for (let ahead = 0; ahead < 14; ahead++) if (reader.is('through', ahead)) return true;
  return false;
}

const DRAW = new Set(['draw', 'thread', 'pull', 'run', 'weave', 'pass']);
const TIGHT = new Set(['tight', 'tightly', 'up', 'closed', 'close', 'to', 'firmly', 'shut', 'together']);

/** `Draw the yarn through the remaining 8 sts and pull tight`. */
export function readDrawThrough(reader: RowReader): Instruction | null {
  const start = reader.at;
  if (!reader.take(DRAW)) return null;
  reader.takeArticles();
  if (reader.take('yarn') || reader.take('tail') || reader.take('end') || reader.take('it')) reader.take('end');
  if (!reader.take('through')) return null;
  reader.takeAll('top', 'of');
  reader.takeArticles();
  if (reader.take('all')) reader.take('of');
  reader.takeArticles();
  reader.take('last');
  reader.take(REST);
  readAmount(reader);
  reader.take(REST);
  if (!readNoun(reader) && !reader.take(LP)) return null;
  for (;;) {
    const save = reader.at;
    reader.take(',');
    reader.take('and');
    if (!reader.take('pull') && !reader.take('draw')) reader.take('gather');
    if (!reader.take(TIGHT)) {
      reader.at = save;
      break;
    }
    while (reader.take(TIGHT));
  }
  return { kind: 'drawThrough', range: reader.range(start) };
}

/** `do not join`, `without joining`, `work in a spiral`. */
export function readNoJoin(reader: RowReader): Instruction | null {
  const start = reader.at;
  const not = reader.takeAll('do', 'not') || reader.take("don't") || reader.take('without');
  if (not && (reader.take('join') || reader.take('joining'))) return { kind: 'noJoin', range: reader.range(start) };
  reader.at = start;
  if (!reader.take('work')) reader.take('working');
  reader.take('in');
  reader.takeArticles();
  if (reader.take('continuous')) {
    if (!reader.take('spiral') && !reader.take('spirals') && !reader.take('rounds')) return null;
  } else if (!reader.take('spiral')) return null;
  return { kind: 'noJoin', range: reader.range(start) };
}
