import type { Line, Pattern } from '../1-pattern/pattern.ts';
import { readRow } from '../notation/readRow.ts';
import { specialStitches, type SpecialStitch } from '../notation/specialStitches.ts';

/** A line's text, read. */
export type ReadLine = ReturnType<typeof readRow>;

interface Known {
  readonly terms: Pattern['terms'];
  readonly sizes: readonly string[];
  readonly letters: string;
  readonly special: readonly SpecialStitch[];
  readonly read: ReadLine;
}

const NONE: readonly SpecialStitch[] = [];
const SPECIAL = new WeakMap<Pattern['notes'], Record<Pattern['terms'], readonly SpecialStitch[]>>();

/** The stitches that a pattern's header explains, read once for the same notes; the same empty list for all without. */
function specialOf({ notes, terms }: { readonly notes?: Pattern['notes']; readonly terms: Pattern['terms'] }): readonly SpecialStitch[] {
  if (!notes || notes.length === 0) return NONE;
  const known = SPECIAL.get(notes);
  if (known) return known[terms];
  const some = (of: Pattern['terms']) => {
    const found = specialStitches(notes, of);
    return found.length > 0 ? found : NONE;
  };
  const both = { us: some('us'), uk: some('uk') };
  SPECIAL.set(notes, both);
  return both[terms];
}

const LETTERS = new WeakMap<Pattern['yarns'], string>();

/** Letters of a pattern's yarns in their order, put together once. */
function lettersOf(yarns: Pattern['yarns']): string {
  let letters = LETTERS.get(yarns);
  if (letters === undefined) LETTERS.set(yarns, (letters = yarns.map((yarn) => yarn.letter).join('')));
  return letters;
}

const KNOWN = new WeakMap<Line, Known>();

/**
 * Reads a line of a pattern in the pattern's own terms. Lines are immutable, so a line that did not change gives the very
 * same instructions again, by which the fabric knows what need not be worked anew.
 */
export function readLine(line: Line, pattern: Pick<Pattern, 'terms' | 'sizes' | 'yarns'> & Partial<Pick<Pattern, 'notes'>>): ReadLine {
  const special = specialOf(pattern);
  const letters = lettersOf(pattern.yarns);
  const known = KNOWN.get(line);
  if (known && known.terms === pattern.terms && sameNames(known.sizes, pattern.sizes) && known.letters === letters && known.special === special) return known.read;
  const read = readRow(line.text, { terms: pattern.terms, sizes: pattern.sizes.length, letters: [...letters], sizeNames: pattern.sizes, ...(special.length > 0 ? { special } : {}) });
  KNOWN.set(line, { terms: pattern.terms, sizes: pattern.sizes, letters, special, read });
  return read;
}

function sameNames(a: readonly string[], b: readonly string[]): boolean {
  return a === b || (a.length === b.length && a.every((name, index) => name === b[index]));
}
