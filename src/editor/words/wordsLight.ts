import type { ClauseSpan } from './clauseSpans.ts';

/** How words and stitches of the row in hand light each other up. */
export interface WordsLight {
  /** Stitch in hand; null: only the row is. */
  readonly stitch: number | null;
  /** Clauses of the words shown, or of the line's own text, with their stitches. */
  readonly clausesOf: (text: string, isOwn: boolean) => readonly ClauseSpan[];
  /** Stitches of the words pointed at; none when they are left. */
  readonly onclause: (stitches: readonly number[]) => void;
}
