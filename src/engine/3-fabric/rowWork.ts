import type { Amount, Instruction, TextRange } from '../notation/instruction.ts';
import { amountFor } from '../notation/instruction.ts';
import { finding, type Degree, type Finding, type Rule } from '../notation/finding.ts';
import type { Program, ProgramRow } from '../2-construct/program.ts';
import type { Hook } from './hook.ts';
import type { ChainReading } from './turningChain.ts';

/** A number in a pattern that is larger than any piece of crochet is taken for a slip. */
export const MOST_STITCHES = 200_000;

/** Everything that working one row needs: the hook, the row, and where findings go. */
export interface RowWork {
  readonly hook: Hook;
  readonly program: Program;
  readonly row: ProgramRow;
  readonly reading: ChainReading;
  readonly findings: Finding[];
  /** Whether chains made first in this row begin a new piece. */
  startsPiece: boolean;
  /** Set when the row is to stop (leave the rest unworked, too many stitches). */
  stopped: boolean;
  /** Whether words said that stitches stay unworked. */
  leftSaid: boolean;
  /** Base that everything inside a group goes into; null outside groups. */
  group: { readonly bases: readonly number[]; readonly inSpace: boolean; count: number } | null;
  /** The join this row stands on, when it came just before: it is made anew if the row's side asks for the other direction. */
  readonly join: Extract<Instruction, { kind: 'joinAt' }> | null;
}

/** The number that holds in this size, never below 0. */
export function amountOf(work: RowWork, amount: Amount): number {
  return Math.max(0, amountFor(amount, work.program.size));
}

/** Keeps a finding of this row; each rule speaks once a row, so that one slip in a repeat is one finding. */
export function report(work: RowWork, degree: Degree, rule: Rule, range: TextRange, more: Partial<Omit<Finding, 'degree' | 'rule' | 'where'>> = {}): void {
  if (work.findings.some((known) => known.rule === rule)) return;
  work.findings.push(
    finding(degree, rule, {
      section: work.program.sections[work.row.section]!.id,
      line: work.row.key.line,
      nth: work.row.key.nth,
      text: range,
      stitch: work.hook.stitches.count > 0 ? work.hook.stitches.count - 1 : null,
    }, more),
  );
}
