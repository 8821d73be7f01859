import type { Pattern } from '../../1-pattern/pattern.ts';
import { TERM_WORDS, stitchWord, toTerms } from '../../craft/terms.ts';
import type { Terms } from '../../craft/terms.ts';
import type { WordsDocument } from './wordsDocument.ts';

/** Notes that the document writes anew. */
const WRITTEN_ANEW = /^(abbreviations|finished measurements)$/i;

/**
 * The lines above the rows, in the terms asked for, with what the parts measure where that is known. Reading them gives the
 * same values.
 */
export function writeHeader(pattern: Pattern, terms: Terms, measures = ''): WordsDocument['header'] {
  const { gauge } = pattern;
  const lines = [{ word: 'Terms', value: terms.toUpperCase() }];
  if (pattern.designer !== '') lines.push({ word: 'Designer', value: pattern.designer });
  lines.push({ word: TERM_WORDS[terms].gauge, value: `${gauge.stitches} sts and ${gauge.rows} rows = ${gauge.overCm} cm in ${stitchWord(gauge.stitch, terms)}` });
  if (pattern.hookMm !== null) lines.push({ word: 'Hook', value: `${pattern.hookMm} mm` });
  for (const yarn of pattern.yarns) lines.push({ word: `Yarn ${yarn.letter}`, value: `${yarn.name} ${yarn.colour}` });
  const [first, ...others] = pattern.sizes;
  if (others.length > 0) lines.push({ word: 'Sizes', value: `${first!} (${others.join(', ')})` });
  else if (first !== undefined && first !== '') lines.push({ word: 'Size', value: first });
  if (measures !== '') lines.push({ word: 'Finished measurements', value: measures });
  if (!pattern.hdcTurningChainCounts) lines.push({ word: 'Turning chains', value: `ch 2 before ${stitchWord('hdc', terms)} does not count as a st` });
  for (const note of pattern.notes) {
    if (!WRITTEN_ANEW.test(note.word)) lines.push({ word: toTerms(note.word, pattern.terms, terms), value: toTerms(note.value, pattern.terms, terms) });
  }
  return lines;
}
