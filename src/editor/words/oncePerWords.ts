import type { Finding } from '../../engine/notation/finding.ts';

/** A line of several rows finds the same in each; once is enough. The first of each is kept. */
export function oncePerWords(findings: readonly Finding[]): readonly Finding[] {
  const seen = new Set<string>();
  return findings.filter(({ rule, where }) => {
    const key = `${rule} ${where.line} ${where.text?.join() ?? ''}`;
    if (seen.has(key)) return false;
    seen.add(key);
    return true;
  });
}
