import { finding } from './finding.ts';
import type { Finding } from './finding.ts';
import { changeAmounts } from './changeAmounts.ts';
import { foldPicots } from './foldPicots.ts';
import type { Amount, Instruction, Stated } from './instruction.ts';
import { RowReader } from './rowReader.ts';
import type { ReadOptions } from './rowReader.ts';
import { readSequence } from './sequence.ts';
import type { Counted } from './sequence.ts';
import { sizeParts } from './sizeParts.ts';
import type { SizePart } from './sizeParts.ts';
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
  const parts = options.sizeNames ? sizeParts(text, options.sizeNames) : null;
  return parts ? readParts(text, parts, options) : readWhole(text, options);
}

function readWhole(text: string, options: ReadOptions): ReadRow {
  const reader = new RowReader(text, options);
  const top: Counted = { stated: null, nodesBefore: 0 };
  const body = settleSkippedFirst(readSequence(reader, { star: false, top }), text);
  if (!top.stated || body.slice(top.nodesBefore).every(({ kind }) => AFTER_COUNT.has(kind))) return { body: foldPicots(body), stated: top.stated, findings: reader.findings };
  const { range } = top.stated;
  const remark: Instruction = { kind: 'remark', text: text.slice(range[0], range[1]).replace(/^[([{]|[)\]}]$/g, ''), range };
  return { body: foldPicots(body.toSpliced(top.nodesBefore, 0, remark)), stated: null, findings: reader.findings };
}

/** Reads the parts of a row that differ by size each by itself; what is outside a part stands as white space, so that places stay. */
function readParts(text: string, parts: readonly SizePart[], options: ReadOptions): ReadRow {
  const body: Instruction[] = [];
  const findings: Finding[] = [];
  let stated: Stated | null = null;
  for (const { range, sizes } of parts) {
    const alone = text.slice(0, range[0]).replace(/\S/g, ' ') + text.slice(...range);
    const all = readWhole(alone, options);
    const own = sizes && sizes.length !== options.sizes ? readWhole(alone, { ...options, sizes: sizes.length }) : all;
    // A part may give one number for each of its own sizes, or for each size of the pattern.
    const read = own.findings.length <= all.findings.length ? own : all;
    const inSizes = (amount: Amount): Amount => (typeof amount === 'number' || read === all || !sizes ? amount : Array.from({ length: options.sizes }, (_, size) => amount[sizes.indexOf(size)] ?? 0));
    findings.push(...read.findings);
    if (sizes) body.push({ kind: 'forSizes', sizes, body: changeAmounts(read.body, inSizes), range });
    else body.push(...read.body);
    // The count at the row's end stands for all sizes, and is read with all.
    if (all.stated) stated = all.stated;
  }
  return { body, stated, findings };
}
