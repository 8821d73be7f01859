import type { Instruction, Times } from './instruction.ts';
import { readInto } from './intoReading.ts';
import type { RowReader } from './rowReader.ts';
import { readTimes } from './times.ts';

/** Reads a run of clauses; the sequence reader, passed in because repeats and sequences hold each other. */
export type ReadBody = (reader: RowReader, context: { readonly star: boolean; readonly top: null }) => Instruction[];

const COMMA = new Set([',', ';']);
const REP = new Set(['rep', 'repeat', 'repeating']);
/** Brackets in brackets beyond this are kept unread. */
const DEEPEST = 24;

/** Whether `rep from *` (or `rep *`) stands there. */
export function isRepFrom(reader: RowReader): boolean {
  return reader.is(REP) && (reader.is('*', 1) || (reader.is('from', 1) && reader.is('*', 2)));
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
  const into = reader.is('in') || reader.is('into') || reader.is('over') || reader.is('on') || reader.is('around') ? reader.attempt(() => readInto(reader)) : null;
  if (into?.place && !into.loop && into.below === 0 && body.length > 0) {
    const group: Instruction = { kind: 'group', body: asGroup(body), into: into.place.into, range: reader.range(start) };
    const again = readTimes(reader, 'clause');
    return again ? [{ kind: 'repeat', body: [group], times: again, style, range: reader.range(start) }] : [group];
  }
  if (into) reader.at = open.close + 1;
  const first = body[0];
  if (!first || first.kind === 'unread') {
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
  reader.at++;
  if (reader.depth >= DEEPEST) {
    reader.at = start;
    return null;
  }
  reader.depth++;
  const body = readBody(reader, { star: true, top: null });
  reader.depth--;
  const closed = reader.take('*');
  const times = (closed ? readTimes(reader, 'bracket') : null) ?? reader.attempt(() => readFrom(reader));
  if (times && body.length > 0) return [{ kind: 'repeat', body, times, style: 'star', range: reader.range(start) }];
  const range = reader.range(start, start + 1);
  reader.find('wrong', 'unread', range, { found: '*' });
  return [{ kind: 'unread', text: '*', range }, ...body];
}

function readFrom(reader: RowReader): Times | null {
  reader.take(COMMA);
  if (!reader.take(REP)) return null;
  reader.take('from');
  if (!reader.take('*')) return null;
  if (reader.is('to') && reader.is('*', 1)) reader.at += 2;
  reader.take(',');
  return readTimes(reader, 'from');
}
