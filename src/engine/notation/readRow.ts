import { finding } from './finding.ts';
import type { Finding } from './finding.ts';
import type { Instruction, Stated } from './instruction.ts';
import { RowReader } from './rowReader.ts';
import type { ReadOptions } from './rowReader.ts';
import { readSequence } from './sequence.ts';
import type { Counted } from './sequence.ts';
import { settleSkippedFirst } from './skippedFirst.ts';

/** The most characters that are read at once; longer texts are refused with a finding. */
export const LONGEST_TEXT = 2_000_000;

/** A written row, read. */
export interface ReadRow {
  readonly body: readonly Instruction[];
  /** The count the row says it has, in US terms. */
  readonly stated: Stated | null;
  readonly findings: readonly Finding[];
}

/** Clauses that may follow a count: they make no stitch. */
const AFTER_COUNT = new Set<Instruction['kind']>(['turn', 'join', 'joinRing', 'noJoin', 'fastenOff', 'remark', 'marker', 'leave', 'seam', 'drawThrough', 'yarn']);

/**
 * Reads one written row (without its label) to instructions in US terms, each with the characters it was read from.
 * Never throws on text: what can't be read is kept as `unread` and found, and reading goes on with the next clause. Time
 * and space grow linearly with the text. Refuses `sizes` below 1 as a programmer's slip.
 */
export function readRow(text: string, options: ReadOptions): ReadRow {
  if (!Number.isInteger(options.sizes) || options.sizes < 1) throw new RangeError(`a pattern has 1 size or more, not ${options.sizes}`);
  if (text.length > LONGEST_TEXT) {
    const range = [0, text.length] as const;
    const tooLong = finding('wrong', 'tooLong', { text: range }, { found: text.length, expected: LONGEST_TEXT });
    return { body: [{ kind: 'unread', text, range }], stated: null, findings: [tooLong] };
  }
  const reader = new RowReader(text, options);
  const top: Counted = { stated: null, nodesBefore: 0 };
  const body = settleSkippedFirst(readSequence(reader, { star: false, top }), text);
  if (!top.stated || body.slice(top.nodesBefore).every(({ kind }) => AFTER_COUNT.has(kind))) return { body, stated: top.stated, findings: reader.findings };
  const { range } = top.stated;
  const remark: Instruction = { kind: 'remark', text: text.slice(range[0], range[1]).replace(/^[([{]|[)\]}]$/g, ''), range };
  return { body: body.toSpliced(top.nodesBefore, 0, remark), stated: null, findings: reader.findings };
}
