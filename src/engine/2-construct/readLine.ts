import type { Line, Pattern } from '../1-pattern/pattern.ts';
import { readRow } from '../notation/readRow.ts';

/** A line's text, read. */
export type ReadLine = ReturnType<typeof readRow>;

interface Known {
  readonly terms: Pattern['terms'];
  readonly sizes: readonly string[];
  readonly letters: string;
  readonly read: ReadLine;
}

const KNOWN = new WeakMap<Line, Known>();

/**
 * Reads a line of a pattern in the pattern's own terms. Lines are immutable, so a line that did not change gives the very
 * same instructions again, by which the fabric knows what need not be worked anew.
 */
export function readLine(line: Line, pattern: Pick<Pattern, 'terms' | 'sizes' | 'yarns'>): ReadLine {
  const letters = pattern.yarns.map((yarn) => yarn.letter).join('');
  const known = KNOWN.get(line);
  if (known && known.terms === pattern.terms && sameNames(known.sizes, pattern.sizes) && known.letters === letters) return known.read;
  const read = readRow(line.text, { terms: pattern.terms, sizes: pattern.sizes.length, letters: [...letters], sizeNames: pattern.sizes });
  KNOWN.set(line, { terms: pattern.terms, sizes: pattern.sizes, letters, read });
  return read;
}

function sameNames(a: readonly string[], b: readonly string[]): boolean {
  return a === b || (a.length === b.length && a.every((name, index) => name === b[index]));
}
