import { mapAmount } from './amounts.ts';
import type { Instruction, Times } from './instruction.ts';
import { readInto } from './intoReading.ts';
import { placesTaken } from './patternClause.ts';
import type { RowReader } from './rowReader.ts';
import { readTimes } from './times.ts';

/** Reads a run of clauses; the sequence reader, passed in because repeats and sequences hold each other. */
export type ReadBody = (reader: RowReader, context: { readonly star: boolean; readonly top: null }) => Instruction[];

const COMMA = new Set([',', ';', '.']);
const STAR = new Set(['*', '**']);
const REP = new Set(['rep', 'repeat', 'repeating']);
/** Words that point at a stitch rather than ask for one: `skip 1 st [the sl st]`. */
const POINTS = new Set(['the', 'this', 'that', 'these', 'those']);
/** Brackets in brackets beyond this are kept unread. */
const DEEPEST = 24;

/** Whether `rep from *` (or `rep *`) stands there. */
export function isRepFrom(reader: RowReader): boolean {
  return reader.is(REP) && (reader.is(STAR, 1) || (reader.is('from', 1) && reader.is(STAR, 2)));
}

/** Stitches of a group are made in its one place: their own places become "the same". */
export function asGroup(body: readonly Instruction[]): Instruction[] {
  return body.map((node) => {
    if (node.kind === 'repeat') return { ...node, body: asGroup(node.body) };
    if (node.kind !== 'work' || node.stitch.together > 1 || node.into.at !== 'next') return node;
    return { ...node, each: node.each === 1 ? node.into.count : node.each, into: { at: 'same' } };
  });
}

/**
 * Reads what a bracket holds and what it is: a repeat (`(…) 6 times`), a group in one place (`(…) in next st`), a remark
 * when it holds no instruction, else just its clauses. Null for a bracket that is not closed or nested too deep.
 */
export function readBracket(reader: RowReader, readBody: ReadBody, before?: Times): readonly Instruction[] | null {
  const start = reader.at;
  const open = reader.token();
  if (open.close < 0 || open.close >= reader.end || reader.depth >= DEEPEST) return null;
  const outer = reader.end;
  const found = reader.findings.length;
  reader.at++;
  reader.end = open.close;
  reader.depth++;
  const body = readBody(reader, { star: false, top: null });
  reader.depth--;
  reader.end = outer;
  reader.at = open.close + 1;
  const style = open.word === '(' ? 'paren' : 'bracket';
  const times = before ?? readTimes(reader, 'bracket');
  if (times && body.length > 0) return [{ kind: 'repeat', body, times, style, range: reader.range(start) }];
  if (reader.is('all') && (reader.is('in', 1) || reader.is('into', 1))) reader.at++;
  const into = reader.is('in') || reader.is('into') || reader.is('over') || reader.is('on') || reader.is('around') ? reader.attempt(() => readInto(reader)) : null;
  if (into?.place && !into.loop && into.below === 0 && body.length > 0) {
    const group: Instruction = { kind: 'group', body: asGroup(body), into: into.place.into, range: reader.range(start) };
    const again = readTimes(reader, 'clause');
    return again ? [{ kind: 'repeat', body: [group], times: again, style, range: reader.range(start) }] : [group];
  }
  if (into) reader.at = open.close + 1;
  const first = body[0];
  if (!first || first.kind === 'unread' || POINTS.has(reader.tokens[start + 1]!.word)) {
    reader.findings.length = found;
    const range = reader.range(start);
    return [{ kind: 'remark', text: reader.text.slice(range[0] + 1, range[1] - 1), range }];
  }
  return body;
}

/**
 * Reads `*…; rep from * …`, `*…*, rep from * to * …` and `*…* 6 times`. A star that nothing refers to is kept unread and
 * what follows it is read once.
 */
export function readStar(reader: RowReader, readBody: ReadBody): readonly Instruction[] | null {
  const start = reader.at;
  const open = reader.token().word;
  reader.at++;
  if (reader.depth >= DEEPEST) {
    reader.at = start;
    return null;
  }
  reader.depth++;
  const body = readBody(reader, { star: true, top: null });
  reader.depth--;
  if (open === '*' && reader.is('**')) {
    const split = reader.attempt(() => readToDoubleStar(reader, readBody, body, start));
    if (split) return split;
  }
  const closed = reader.take(open);
  const times = (closed ? readTimes(reader, 'bracket') : null) ?? reader.attempt(() => readFrom(reader));
  if (times && body.length > 0) return [{ kind: 'repeat', body, times, style: 'star', range: reader.range(start) }];
  const range = reader.range(start, start + 1);
  reader.find('wrong', 'unread', range, { found: open });
  return [{ kind: 'unread', text: open, range }, ...body];
}

function readFrom(reader: RowReader): Times | null {
  reader.take(COMMA);
  if (!reader.take(REP)) return null;
  if (reader.takeAll('between', STAR, 'and', STAR) || reader.takeAll('between', STAR, STAR)) return readTimes(reader, 'from');
  reader.take('from');
  if (!reader.take(STAR)) return null;
  if (reader.is('to') && reader.is(STAR, 1)) reader.at += 2;
  reader.take(',');
  return readTimes(reader, 'from');
}

/** `*…, **…; rep from * around, ending last repeat at **`: the last time stops at the double star. */
function readToDoubleStar(reader: RowReader, readBody: ReadBody, first: readonly Instruction[], start: number): readonly Instruction[] | null {
  reader.at++;
  reader.depth++;
  const second = readBody(reader, { star: true, top: null });
  reader.depth--;
  const times = readFrom(reader);
  if (!times || first.length === 0) return null;
  reader.take(COMMA);
  if (!reader.take('ending') && !reader.take('end') && !reader.take('ends')) return null;
  if (reader.take('last')) {
    if (!reader.take(REP) && !reader.take('time')) return null;
  }
  if (!reader.take('at') || !reader.take('**')) return null;
  const style = 'star';
  const range = reader.range(start);
  const body = [...first, ...second];
  if (times.kind === 'times') return [{ kind: 'repeat', body, style, range, times: { kind: 'times', times: mapAmount(times.times, (count) => Math.max(0, count - 1)) } }, ...first];
  const taken = placesTaken(first);
  if (taken === null) return null;
  const except = typeof times.except === 'number' ? mapAmount(taken, (count) => count + (times.except as number)) : taken;
  return [{ kind: 'repeat', body, style, range, times: { kind: 'toEnd', word: 'end', except } }, ...first];
}

/** `…; rep from * across, ending with sc in last st`: the repeat leaves as many places as the ending takes. */
export function readEnding(reader: RowReader, before: Instruction, readOne: (reader: RowReader) => readonly Instruction[] | null): readonly Instruction[] | null {
  if (before.kind !== 'repeat' || before.times.kind !== 'toEnd' || before.times.except !== 0) return null;
  if (!reader.take('ending') && !reader.take('end') && !reader.take('ends')) return null;
  if (!reader.take('with')) reader.take('in');
  const clauses: Instruction[] = [];
  do {
    const read = readOne(reader);
    if (!read) return null;
    clauses.push(...read);
  } while (reader.is('and') && clauses.length < 12 && reader.take('and'));
  const except = placesTaken(clauses);
  if (except === null || clauses.some(({ kind }) => kind === 'unread')) return null;
  return [{ ...before, times: { kind: 'toEnd', word: except === 0 ? before.times.word : 'end', except } }, ...clauses];
}
