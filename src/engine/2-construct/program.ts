import type { Instruction, Stated } from '../notation/instruction.ts';
import type { RowKey } from '../1-pattern/pattern.ts';
import type { Finding } from '../notation/finding.ts';

/** One row (or step) to work, for one size. */
export interface ProgramRow {
  readonly key: RowKey;
  /** Index in `Program.sections`. */
  readonly section: number;
  readonly word: 'row' | 'round' | 'foundation' | 'setup' | 'next' | 'step';
  /** Row number within the section; null for foundations and steps. */
  readonly number: number | null;
  /** Side said in the label; null: it follows from the row before. */
  readonly side: 'RS' | 'WS' | null;
  readonly body: readonly Instruction[];
  /** Stated count with its number already that of this row; null if none is said for it. */
  readonly stated: Stated | null;
}

/** The rows of a pattern for one size, in working order. */
export interface Program {
  readonly size: number;
  readonly sections: readonly { readonly id: string; readonly name: string }[];
  readonly rows: readonly ProgramRow[];
  /** Yarn letters in the pattern's order; a stitch keeps an index into them. */
  readonly letters: readonly string[];
  readonly hdcTurningChainCounts: boolean;
  /** What reading the lines found. */
  readonly findings: readonly Finding[];
}
