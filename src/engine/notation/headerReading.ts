import type { Terms } from '../craft/terms.ts';

/** Words that begin a header line of their own; all others are kept as notes too. */
const KNOWN = /^(terms?|gauge|tension|hook|sizes?|yarns?|yarn [a-z]|colou?rs?|title|designer|design by|by|turning chains?)$/i;

/** A header line taken apart: `Word: value`, the word of at most five words. Null for any other line. */
export function readHeaderLine(line: string): { readonly word: string; readonly value: string; readonly valueFrom: number } | null {
  const match = /^([\p{L}][^:]{0,39}?)[ \t]*:[ \t]*/u.exec(line);
  if (!match || match[1]!.split(/[ \t]+/).length > 5) return null;
  return { word: match[1]!, value: line.slice(match[0].length).trim(), valueFrom: match[0].length };
}

/** Whether a header word is one that the tool knows. */
export function isKnownHeader(word: string): boolean {
  return KNOWN.test(word);
}

/** Names of the sizes: `S (M, L)`, `S, M, L`, `S [M: L]`, `S/M/L`. */
export function readSizes(value: string): string[] {
  return value
    .replace(/[.]$/, '')
    .split(/[()[\],;:/]/)
    .map((name) => name.trim())
    .filter((name) => name !== '');
}

/** The terms that a `Terms:` line names; null when it names neither. */
export function readTerms(value: string): Terms | null {
  if (/\b(uk|u\.k\.|british|english|australian)/i.test(value)) return 'uk';
  return /\b(us|u\.s\.|usa|american)/i.test(value) ? 'us' : null;
}
