import type { Line } from '../../1-pattern/pattern.ts';
import type { Instruction, Stated } from '../../notation/instruction.ts';
import { printedRow, saysItself } from './printedRow.ts';
import type { PrintedRow, WorkedSize } from './printedRow.ts';
import { rowCount } from './rowCount.ts';

/** The rows of one line in one size. */
export interface SizeRows {
  readonly worked: WorkedSize;
  /** Row indices in the fabric, in order of nth. */
  readonly rows: readonly number[];
}

/** A row or step line of the pattern with what it made in each size. */
export interface PatternLine {
  readonly line: Exclude<Line, { readonly kind: 'note' }>;
  /** As read: numbers of all sizes. */
  readonly body: readonly Instruction[];
  readonly stated: Stated | null;
  readonly sizes: readonly SizeRows[];
}

/** Equal rows of one size, one after another. */
export interface Group {
  readonly body: readonly Instruction[];
  readonly runs: boolean;
  /** Rows [from, to] of the line, from 0. */
  readonly from: number;
  to: number;
  /** Number of the first row; null for foundations and steps. */
  readonly number: number | null;
  readonly made: number[];
  readonly unit: string | null;
}

/** The rows of a line in one size, those with the same clauses and counts that move evenly in one group. */
export function groupRows(line: PatternLine, { worked, rows }: SizeRows): Group[] {
  const groups: Group[] = [];
  const asRows = line.body.some(({ kind }) => kind === 'asRows') && worked.fabric.sections.some(({ firstRow, endRow }) => firstRow <= rows[0]! && rows[0]! < endRow && allSay(worked, firstRow, endRow));
  const known = new Map<readonly Instruction[], string>();
  rows.forEach((row, nth) => {
    const printed = asRows ? { body: line.body, runs: false } : ownWords(line, printedRow(worked, row), worked, row);
    const count = rowCount(worked.fabric, row, line.stated);
    const group = groups.at(-1);
    if (group && group.unit === (count?.unit ?? null) && group.runs === printed.runs && sameBody(group.body, printed.body, known) && (asRows || evenly(group.made, count?.made ?? 0))) {
      group.to = nth;
      group.made.push(count?.made ?? 0);
    } else {
      groups.push({ ...printed, from: nth, to: nth, number: worked.fabric.rows[row]!.number, made: [count?.made ?? 0], unit: count?.unit ?? null });
    }
  });
  return groups;
}

/** The line's own words, with all sizes' numbers, where the row is worked just by them. */
function ownWords(line: PatternLine, printed: PrintedRow, worked: WorkedSize, row: number): PrintedRow {
  return printed.body === worked.program.rows[row]!.body && !line.body.some(({ kind }) => kind === 'asRows') ? { body: line.body, runs: printed.runs } : printed;
}

function allSay(worked: WorkedSize, from: number, to: number): boolean {
  for (let row = from; row < to; row++) if (!saysItself(worked, row)) return false;
  return true;
}

/** Whether two bodies are the same clauses, ranges aside; `known` keeps what was compared before. */
export function sameBody(a: readonly Instruction[], b: readonly Instruction[], known: Map<readonly Instruction[], string>): boolean {
  return a === b || keyOf(a, known) === keyOf(b, known);
}

function keyOf(body: readonly Instruction[], known: Map<readonly Instruction[], string>): string {
  const key = known.get(body) ?? JSON.stringify(body, (name, value: unknown) => (name === 'range' ? undefined : value));
  known.set(body, key);
  return key;
}

/** Whether one more count keeps the counts of a group moving by the same step. */
function evenly(made: readonly number[], next: number): boolean {
  return made.length === 1 || next - made.at(-1)! === made[1]! - made[0]!;
}
