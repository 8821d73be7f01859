import { readAsRows } from './asRowsClause.ts';
import { readChain } from './chainClause.ts';
import { readCount } from './counts.ts';
import {
  readDrawThrough, readFastenOff, readLeave, readMarker, readNoJoin, readOtherSide, readRing, readSeam, readSkip, readTurn,
} from './edgeClauses.ts';
import type { Instruction, Stated } from './instruction.ts';
import { intoRing } from './intoRing.ts';
import { reachesEnd, splitsPlaces } from './reachesEnd.ts';
import { readJoin, readJoiningSlip } from './joinClause.ts';
import { readCloseUp } from './closeClause.ts';
import { readInto } from './intoReading.ts';
import { readWithBetween } from './betweenClause.ts';
import { readEachCorner } from './cornerClause.ts';
import { readEvenly } from './evenlyClause.ts';
import { readMeasure } from './measureClause.ts';
import { readMesh } from './meshClause.ts';
import { readEveryOther, readInPattern } from './patternClause.ts';
import { readSpread, readSpreadAfter } from './spreadClause.ts';
import { readPlace } from './places.ts';
import { readMade, readRemark } from './remarkClause.ts';
import { asGroup, isRepFrom, readBracket, readEnding, readStar } from './repeats.ts';
import type { RowReader } from './rowReader.ts';
import { matchSpecial, matchStitch, readLoop } from './stitchReading.ts';
import { readFurtherPlace, readWork } from './workClause.ts';
import { readYarn, readYarnAfter } from './yarnClause.ts';

const SEPARATOR = new Set([',', ';', '.', ':', 'then', 'and', '&', '+', '—', '-', '=']);
const CLAUSE_END = new Set([',', ';', '.', 'then']);
/** A word after a read clause that would change what it says: then the whole clause is not read. */
const CHANGES = new Set([
  'in', 'into', 'over', 'on', 'around', 'round', 'through', 'under', 'between', 'along', 'before', 'after', 'of', 'to', 'from', 'until', 'per', 'beside', 'behind',
  'for', 'across', 'at', 'without', 'above', 'by', 'within', 'every', 'each', 'next', 'tog', 'together', 'times', 'x', '/', '-',
]);
/** Manner, not matter. */
const MANNER = new Set(['loosely', 'tightly', 'carefully', 'again', 'alternately', 'neatly', 'firmly', 'now', 'also']);
const STOPS = new Set(['.', ';']);
const COUNT_MARK = new Set(['—', '-', '=', ':']);
/** Tokens that a count without brackets may have. */
const LONGEST_COUNT = 60;
const OPENING = new Set(['(', '[', '{']);
const BRACKET = new Set(['(', '[', '{', ')', ']', '}']);
const COMMA = new Set([',', ':']);
const WORK = new Set(['work', 'make', 'crochet', 'working']);
const REP = new Set(['rep', 'repeat']);
const GO_ON = new Set(['keep', 'go', 'continue', 'continuing', 'cont']);

/** Reads clauses up to the reader's end; inside a star, up to its closing star or `rep from *`. */
export function readSequence(reader: RowReader, context: { readonly star: boolean; readonly top: Counted | null }): Instruction[] {
  const nodes: Instruction[] = [];
  const done: Done = { chains: false, others: false, worked: false, ring: false };
  const push = (...read: readonly Instruction[]) => {
    for (const node of read) {
      note(done, node);
      nodes.push(node);
    }
  };
  let joined = false;
  while (reader.at < reader.end) {
    if (context.star && (reader.is('*') || reader.is('**') || isRepFrom(reader))) break;
    if (reader.is(SEPARATOR)) {
      if (context.top && reader.is(COUNT_MARK) && readMarkedCount(reader, context.top)) break;
      joined = reader.is('and') || reader.is('&') || (joined && reader.is(','));
      reader.at++;
      continue;
    }
    const start = reader.at;
    const found = reader.findings.length;
    if (context.top && readStatedCount(reader, context.top, nodes)) continue;
    const before = nodes.at(-1);
    const instead = before ? (reader.attempt(() => readSpreadAfter(reader, before)) ?? reader.attempt(() => readEachCorner(reader, before, (inner) => readClause(inner, done)))) : null;
    if (instead) {
      nodes.pop();
      push(...instead);
      continue;
    }
    const ended = before ? reader.attempt(() => readEnding(reader, before, (inner) => readClause(inner, done))) : null;
    if (ended) {
      nodes.pop();
      push(...ended);
      continue;
    }
    const also = joined;
    const further = joined && before ? reader.attempt(() => readFurtherPlace(reader, before)) : null;
    const clause = intoRing(reader, start, nodes, further ? [further] : readClause(reader, done));
    joined = false;
    if (!clause) {
      push(unreadClause(reader, start));
      continue;
    }
    if (also && before && before.range[1] > 0 && splitsPlaces(before, clause)) {
      nodes.pop();
      reader.findings.length = found;
      let from = start;
      while (from > 0 && reader.tokens[from]!.from > before.range[0]) from--;
      push(reader.unread(from));
      continue;
    }
    const yarn = clause.some(({ kind }) => kind === 'work' || kind === 'group') ? reader.attempt(() => readYarnAfter(reader)) : null;
    while (reader.take(MANNER));
    const match = reader.is('to') && reader.is('correspond', 1) ? reader.attempt(() => readRemark(reader)) : null;
    const measured = reader.is('until') || reader.is('for') ? reader.attempt(() => readMeasure(reader)) : null;
    if (reader.is(CHANGES) && changesMeaning(clause)) {
      reader.findings.length = found;
      push(unreadClause(reader, start));
      continue;
    }
    if (yarn) push(yarn);
    push(...clause);
    if (match) push(match);
    if (measured) push(measured);
  }
  return nodes;
}

/** What the clauses before have done, kept up as they are read: some words mean different things after them. */
interface Done {
  chains: boolean;
  /** Anything but chains, yarns and remarks. */
  others: boolean;
  worked: boolean;
  ring: boolean;
}

function note(done: Done, { kind }: Instruction): void {
  if (kind === 'chain') done.chains = true;
  else if (kind !== 'yarn' && kind !== 'remark') done.others = true;
  if (kind === 'work' || kind === 'repeat' || kind === 'group' || kind === 'spread' || kind === 'evenly' || kind === 'inPattern' || kind === 'mesh') done.worked = true;
  if (kind === 'ring') done.ring = true;
}

/** The row's count, and where in the row's nodes it stood. */
export interface Counted {
  stated: Stated | null;
  nodesBefore: number;
}

/** `(26 sts)` or `[26]` with nothing after it that would make it a group or a repeat; `26 sts.` as the last words. */
function readStatedCount(reader: RowReader, top: Counted, nodes: readonly Instruction[]): boolean {
  const nodesBefore = nodes.length;
  const open = reader.token();
  const start = reader.at;
  if (OPENING.has(open.word) && open.close > 0) {
    const count = reader.attempt(() => {
      reader.at++;
      const read = readCount(reader, open.close);
      if (!read || !endsClause(reader, open.close + 1)) return null;
      reader.at = open.close + 1;
      return read;
    });
    if (!count) return false;
    top.stated = { ...count, range: reader.range(start) };
    top.nodesBefore = nodesBefore;
    return true;
  }
  const making = open.word === 'making';
  if ((open.kind !== 'number' && !making) || start === 0) return false;
  const last = reader.tokens[reader.end - 1]!.word === '.' ? reader.end - 1 : reader.end;
  // "Around. 36 sc.": the row was worked to its end, so that this is what it has.
  const ended = STOPS.has(reader.tokens[start - 1]!.word) && reachesEnd(nodes.at(-1));
  if (last - start > (making ? LONGEST_COUNT : 12) || (!making && !ended && !/^st(s|itch|itches)?$/.test(reader.tokens[last - 1]!.word))) return false;
  const count = readCount(reader, last);
  if (!count || (count.unit !== 'sts' && !making && (!ended || count.unit === ''))) return false;
  top.stated = { ...count, range: reader.range(start) };
  top.nodesBefore = nodesBefore;
  return true;
}

/** Whether the clause is over at token `index`: a mark, the end, or a word that begins another clause. */
function endsClause(reader: RowReader, index: number): boolean {
  if (index >= reader.end) return true;
  const { word, kind } = reader.tokens[index]!;
  return kind === 'mark' ? !OPENING.has(word) : word === 'turn' || word === 'then' || word === 'and' || word === 'fasten' || word === 'join' || word === 'do';
}

/** `— 26 sts`, `= 26`, `: 26 sts` as the last words. */
function readMarkedCount(reader: RowReader, top: Counted): boolean {
  const start = reader.at;
  if (reader.is('-') && (reader.token().glued || reader.token(1).glued)) return false;
  const last = reader.tokens[reader.end - 1]!.word === '.' ? reader.end - 1 : reader.end;
  if (last - start > LONGEST_COUNT || reader.token(1).kind === 'mark') return false;
  const count = reader.attempt(() => {
    reader.at++;
    return readCount(reader, last);
  });
  if (!count) return false;
  top.stated = { ...count, range: reader.range(start) };
  top.nodesBefore = Infinity;
  reader.at = reader.end;
  return true;
}

function changesMeaning(clause: readonly Instruction[]): boolean {
  const kind = clause.at(-1)?.kind;
  return kind === 'work' || kind === 'group' || kind === 'skip' || kind === 'repeat' || kind === 'leave' || kind === 'inPattern' || kind === 'evenly' || kind === 'mesh';
}

/** Keeps the words of a clause that can't be read (a bracket without a partner by itself): to its next comma, stop or `then`, or to an `and` that begins a stitch. */
function unreadClause(reader: RowReader, start: number): Instruction {
  reader.at = start;
  const first = reader.token();
  if (BRACKET.has(first.word) && first.close < 0) {
    reader.at++;
    return reader.unread(start);
  }
  const stray = isRepFrom(reader);
  do {
    const { close } = reader.token();
    reader.at = close > 0 && close < reader.end ? close + 1 : reader.at + 1;
  } while (reader.at < reader.end && !reader.is(CLAUSE_END) && (stray || !(reader.is('*') || reader.is('**'))) && !(reader.is('and') && startsStitch(reader, 1)));
  return reader.unread(start);
}

function startsStitch(reader: RowReader, ahead: number): boolean {
  return matchStitch(reader, ahead) !== null || (reader.token(ahead).kind === 'number' && matchStitch(reader, ahead + 1) !== null) || reader.is('turn', ahead);
}

function readClause(reader: RowReader, done: Done): readonly Instruction[] | null {
  if (reader.is(GO_ON)) {
    const spiral = reader.attempt(() => readSpiral(reader));
    if (spiral) return spiral;
  }
  if (reader.is('*') || reader.is('**')) return readStar(reader, readSequence);
  if (OPENING.has(reader.token().word)) {
    return readWay(reader) ?? readYarnInBrackets(reader) ?? reader.attempt(() => readWork(reader)) ?? readBracket(reader, readSequence);
  }
  if ((reader.is(WORK) || (reader.is(REP) && !isRepFrom(reader))) && OPENING.has(reader.token(1).word)) {
    const bracket = reader.attempt(() => { reader.at++; return readBracket(reader, readSequence); });
    if (bracket) return bracket;
  }
  return readWords(reader, done) ?? (reader.is(WORK) ? reader.attempt(() => { reader.at++; return readWords(reader, done) ?? leadingBracket(reader); }) : null) ?? leadingBracket(reader);
}

/** `(A) 5 sc, (B) 3 sc`: the yarn in brackets before its run. */
function readYarnInBrackets(reader: RowReader): readonly Instruction[] | null {
  const { close } = reader.token();
  const { word, capital } = reader.token(1);
  if (close !== reader.at + 2 || !capital || !reader.options.letters?.includes(word.toUpperCase())) return null;
  const start = reader.at;
  reader.at += 3;
  return [{ kind: 'yarn', letter: word.toUpperCase(), word: 'with', range: reader.range(start) }];
}

/** `keep on (sc in next 10 sts, skip 1) in a spiral`: over and over round the work, whose end the count says. */
function readSpiral(reader: RowReader): readonly Instruction[] | null {
  const start = reader.at;
  reader.at++;
  reader.take('on');
  reader.take(WORK);
  const { word, close } = reader.token();
  if (!OPENING.has(word) || close < 0 || reader.tokens[close + 1]?.word !== 'in' || reader.tokens[close + 3]?.word !== 'spiral') return null;
  const body = readBracket(reader, readSequence, { kind: 'toEnd', word: 'around', except: 0 });
  const [repeat] = body ?? [];
  const at = reader.at;
  if (repeat?.kind !== 'repeat' || !reader.takeAll('in', 'a', 'spiral')) return null;
  return [{ ...repeat, range: reader.range(start, at) }, { kind: 'noJoin', range: reader.range(at) }];
}

/** `6 times (…)`, `6 x (…)`. */
function leadingBracket(reader: RowReader): readonly Instruction[] | null {
  return reader.attempt(() => {
    const { kind, value } = reader.token();
    if (kind !== 'number' || (!reader.is('x', 1) && !reader.is('times', 1)) || !OPENING.has(reader.token(2).word)) return null;
    const start = reader.at;
    reader.at += 2;
    const body = readBracket(reader, readSequence, { kind: 'times', times: value });
    return body && body.map((node) => (node.kind === 'repeat' ? { ...node, range: reader.range(start) } : node));
  });
}

function readWords(reader: RowReader, done: Done): readonly Instruction[] | null {
  const onlyChains = done.chains && !done.others;
  return (
    one(reader, readMade) ??
    one(reader, readNoJoin) ??
    one(reader, readOtherSide) ??
    one(reader, readCloseUp) ??
    one(reader, readMesh) ??
    one(reader, readInPattern) ??
    one(reader, readAsRows) ??
    reader.attempt(() => readSpread(reader)) ??
    one(reader, readEvenly) ??
    reader.attempt(() => readEveryOther(reader)) ??
    reader.attempt(() => readWithBetween(reader)) ??
    one(reader, readYarn) ??
    reader.attempt(() => readJoiningSlip(reader, onlyChains, done.worked)) ??
    reader.attempt(() => readSpecial(reader)) ??
    reader.attempt(() => readWorkOrRing(reader, done)) ??
    reader.attempt(() => readChain(reader)) ??
    one(reader, readTurn) ??
    one(reader, readSkip) ??
    one(reader, readLeave) ??
    one(reader, readRing) ??
    reader.attempt(() => readJoin(reader, onlyChains)) ??
    one(reader, readSeam) ??
    one(reader, readFastenOff) ??
    one(reader, readDrawThrough) ??
    one(reader, readMarker) ??
    one(reader, readRemark) ??
    one(reader, readMeasure) ??
    readWay(reader) ??
    reader.attempt(() => readPlaceFirst(reader))
  );
}

function one(reader: RowReader, read: (reader: RowReader) => Instruction | null): readonly Instruction[] | null {
  const node = reader.attempt(() => read(reader));
  return node && [node];
}

/** `6 sc in a magic ring`: the ring is made first, unless the row has made it. */
function readWorkOrRing(reader: RowReader, done: Done): readonly Instruction[] | null {
  const start = reader.at;
  const nodes = readWork(reader);
  const first = nodes?.[0];
  if (first?.kind !== 'work' || first.into.at !== 'ring' || done.ring) return nodes;
  const magic = reader.tokens.slice(start, reader.at).find(({ word }) => word === 'magic' || word === 'mr');
  return magic ? [{ kind: 'ring', range: [magic.from, first.range[1]] }, ...nodes!] : nodes;
}

/** A stitch that the pattern explains as several in one place: `shell in next sc`. */
function readSpecial(reader: RowReader): readonly Instruction[] | null {
  const start = reader.at;
  reader.takeArticles();
  if (reader.token().kind === 'number' && reader.token().value === 1) reader.at++;
  const special = matchSpecial(reader);
  if (!special?.special.body) return null;
  reader.at += special.length;
  const into = readInto(reader);
  return [{ kind: 'group', body: special.special.body, into: into?.place?.into ?? { at: 'next', count: 1, what: 'st' }, range: reader.range(start) }];
}

/** `Working in back loops only, …`, `BLO: …`: holds for the rest of the row. The words themselves are kept as a remark. */
function readWay(reader: RowReader): readonly Instruction[] | null {
  return reader.attempt(() => {
    const start = reader.at;
    reader.take(WORK);
    reader.take('in');
    reader.take('through');
    const loop = readLoop(reader);
    if (!loop || !(reader.is(',') || reader.is(':') || reader.is(';'))) return null;
    reader.loop = loop.loop;
    return [{ kind: 'remark' as const, text: reader.slice(start), range: reader.range(start) }];
  });
}

/** `In next st, work (2 dc, ch 2, 2 dc)`: the place before what is worked there. */
function readPlaceFirst(reader: RowReader): readonly Instruction[] | null {
  const start = reader.at;
  if (!reader.take('in') && !reader.take('into')) return null;
  const place = readPlace(reader);
  if (!place) return null;
  reader.take(COMMA);
  reader.take(WORK);
  if (place.into.at === 'ring') {
    const magic = reader.tokens.slice(start, reader.at).some(({ word }) => word === 'magic' || word === 'mr');
    const made = readWork(reader);
    const node = made?.[0];
    if (made?.length !== 1 || node?.kind !== 'work' || node.into.at !== 'next') return null;
    const work: Instruction = { ...node, each: node.into.count, into: place.into, range: reader.range(start) };
    return magic ? [{ kind: 'ring', range: reader.range(start) }, work] : [work];
  }
  const open = reader.token();
  if (!OPENING.has(open.word) || open.close < 0 || open.close >= reader.end) return null;
  const outer = reader.end;
  reader.at++;
  reader.end = open.close;
  const body = readSequence(reader, { star: false, top: null });
  reader.end = outer;
  reader.at = open.close + 1;
  if (readInto(reader) || body.length === 0) return null;
  return [{ kind: 'group', body: asGroup(body), into: place.into, range: reader.range(start) }];
}
