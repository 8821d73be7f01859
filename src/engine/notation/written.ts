import type { Terms } from '../craft/terms.ts';
import type { Amount, TextRange } from './instruction.ts';
import type { Finding } from './finding.ts';
import type { GuessedTerms } from './guessTerms.ts';
import type { Measured } from './measureClause.ts';

/** The label of a row line: its word, how many rows the line stands for and, where said, its first number and its side. */
export interface RowLabel {
  readonly word: 'row' | 'round' | 'foundation' | 'setup' | 'next';
  /** Rows this line stands for; a vector where sizes differ. */
  readonly rows: Amount;
  /** First number if it does not simply follow the row before; else null. */
  readonly start: Amount | null;
  readonly side: 'RS' | 'WS' | null;
}

/** The text says its terms, they were asked for, or they were guessed: by words, by turning chains, from words of both, or by nothing. */
export interface TermsFrom {
  readonly by: 'said' | 'asked' | GuessedTerms['by'];
  readonly words: string;
}

/** A line of a written section: label and text apart. `range` places `text` in the whole file, `lineNumber` counts from 1. */
export type WrittenLine = { readonly text: string; readonly range: TextRange; readonly lineNumber: number } & (
  | { readonly kind: 'row'; readonly label: RowLabel; /** A length said in the place of a number of rows. */ readonly measured?: Measured }
  | { readonly kind: 'step' }
  | { readonly kind: 'note' }
);

/** A written pattern taken apart into header, sections and lines; rows are not read yet. */
export interface WrittenPattern {
  readonly title: string;
  readonly terms: Terms;
  /** Where the terms are from, with the words that told where they were guessed. */
  readonly termsFrom: TermsFrom;
  readonly header: readonly { readonly word: string; readonly value: string; readonly range: TextRange; readonly lineNumber: number }[];
  readonly sizes: readonly string[];
  readonly sections: readonly { readonly name: string; readonly remark: string; readonly lineNumber: number; readonly lines: readonly WrittenLine[] }[];
  readonly findings: readonly Finding[];
}
