import type { Finding } from '../../engine/notation/finding.ts';

/** A stretch of a line's text, with the worst finding that covers it. */
export interface Stretch {
  readonly text: string;
  readonly finding: Finding | null;
}

const WEIGHT = { wrong: 3, doubtful: 2, note: 1 } as const;

/** Cuts a text at the borders of its findings. Findings without a range of the text mark nothing. */
export function markedText(text: string, findings: readonly Finding[]): Stretch[] {
  const ranges = findings.flatMap((finding) => {
    const range = finding.where.text;
    if (!range || range[0] >= text.length) return [];
    return [{ finding, from: Math.max(0, range[0]), to: Math.min(text.length, Math.max(range[1], range[0] + 1)) }];
  });
  const cuts = [...new Set([0, text.length, ...ranges.flatMap(({ from, to }) => [from, to])])].sort((a, b) => a - b);
  return cuts.slice(0, -1).map((from, i) => {
    const to = cuts[i + 1]!;
    const covering = ranges.filter((range) => range.from <= from && range.to >= to);
    covering.sort((a, b) => WEIGHT[b.finding.degree] - WEIGHT[a.finding.degree]);
    return { text: text.slice(from, to), finding: covering[0]?.finding ?? null };
  });
}
