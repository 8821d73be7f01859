import type { Pattern } from '../../engine/1-pattern/pattern.ts';
import type { ColourGrid } from '../../engine/4-colour/colourGrid.ts';
import { colour } from '../../engine/4-colour/colour.ts';
import type { Terms } from '../../engine/craft/terms.ts';
import { wordsToText } from '../../engine/readings/words/wordsToText.ts';
import { writeWords } from '../../engine/readings/words/writeWords.ts';

/** The written pattern in all its sizes, from the fabric of each. */
export function patternText(pattern: Pattern, grids: readonly ColourGrid[], terms: Terms): string {
  const sizes = grids.map((grid, size) => ({ size, fabric: grid.fabric, colours: colour(pattern, grid.fabric, size, grid) }));
  return wordsToText(writeWords({ pattern, sizes, terms }));
}
