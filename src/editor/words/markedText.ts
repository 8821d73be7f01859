import type { Finding } from '../../engine/notation/finding.ts';
import type { ClauseSpan } from './clauseSpans.ts';

/** A stretch of a line's text, with the worst finding that covers it and the innermost clause that it is of (an index; null: of none). */
export interface Stretch {
  readonly text: string;
  readonly finding: Finding | null;
  readonly clause: number | null;
}

const WEIGHT = { wrong: 3, doubtful: 2, note: 1 } as const;

/** Cuts a text at the borders of its findings and clauses. Findings without a range of the text mark nothing. */
export function markedText(text: string, findings: readonly Finding[], clauses: readonly ClauseSpan[] = []): Stretch[] {
  const ranges = findings.flatMap((finding) => {
    const range = finding.where.text;
    if (!range || range[0] >= text.length) return [];
    return [{ finding, from: Math.max(0, range[0]), to: Math.min(text.length, Math.max(range[1], range[0] + 1)) }];
  });
  const borders = [...ranges.flatMap(({ from, to }) => [from, to]), ...clauses.flatMap(({ range }) => range).filter((at) => at < text.length)];
  const cuts = [...new Set([0, text.length, ...borders])].sort((a, b) => a - b);
  return cuts.slice(0, -1).map((from, i) => {
    const to = cuts[i + 1]!;
    const covering = ranges.filter((range) => range.from <= from && range.to >= to);
    covering.sort((a, b) => WEIGHT[b.finding.degree] - WEIGHT[a.finding.degree]);
    const clause = clauses.findLastIndex(({ range }) => range[0] <= from && range[1] >= to);
    return { text: text.slice(from, to), finding: covering[0]?.finding ?? null, clause: clause < 0 ? null : clause };
  });
}
