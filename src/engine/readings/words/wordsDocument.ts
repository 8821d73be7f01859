import type { Terms } from '../../craft/terms.ts';
import type { SpecialWords } from './specialWords.ts';

/** One line of a written section. */
export interface WordsLine {
  readonly kind: 'row' | 'step' | 'note';
  /** Section id. */
  readonly section: string;
  /** Line id of the pattern, and its rows [nthFrom, nthTo] that this line stands for; of the first size that has them. */
  readonly line: string;
  readonly nthFrom: number;
  readonly nthTo: number;
  /** Ids of further lines folded into this one, as they say the same. */
  readonly also: readonly string[];
  /** `Rows 2-6 (RS)`; empty for steps and notes. */
  readonly label: string;
  readonly text: string;
  /** Names of the sizes that the line is for; empty: all. */
  readonly sizes: readonly string[];
}

/** A section as written. */
export interface WordsSection {
  readonly id: string;
  readonly name: string;
  readonly remark: string;
  readonly lines: readonly WordsLine[];
}

/** A pattern in words: what a printed pattern has above its rows, and the rows. */
export interface WordsDocument {
  readonly title: string;
  readonly terms: Terms;
  /** Lines `word: value` in printing order: terms, gauge, hook, yarns, sizes and the pattern's notes. */
  readonly header: readonly { readonly word: string; readonly value: string }[];
  /** Abbreviations that the rows use, and no others. */
  readonly abbreviations: readonly { readonly short: string; readonly meaning: string }[];
  /** Stitches of several parts that the rows use and the pattern's own words don't explain. */
  readonly special: readonly SpecialWords[];
  readonly sections: readonly WordsSection[];
}
