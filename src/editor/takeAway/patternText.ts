import type { Pattern } from '../../engine/1-pattern/pattern.ts';
import type { ColourGrid } from '../../engine/4-colour/colourGrid.ts';
import { colour } from '../../engine/4-colour/colour.ts';
import type { Terms } from '../../engine/craft/terms.ts';
import type { WordStyle } from '../../engine/notation/writeWork.ts';
import { wordsToHtml, wordsToMarkdown } from '../../engine/readings/words/wordsToMarkup.ts';
import { wordsToText } from '../../engine/readings/words/wordsToText.ts';
import { writeWords } from '../../engine/readings/words/writeWords.ts';

const WRITERS = { text: wordsToText, markdown: wordsToMarkdown, html: wordsToHtml } as const;

/** The written pattern in all its sizes, from the fabric of each. */
export function patternText(pattern: Pattern, grids: readonly ColourGrid[], terms: Terms, format: keyof typeof WRITERS = 'text', style: WordStyle = {}): string {
  const sizes = grids.map((grid, size) => ({ size, fabric: grid.fabric, colours: colour(pattern, grid.fabric, size, grid) }));
  return WRITERS[format](writeWords({ pattern, sizes, terms, style }));
}
