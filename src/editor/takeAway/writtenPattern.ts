import type { Pattern } from '../../engine/1-pattern/pattern.ts';
import type { ColourGrid } from '../../engine/4-colour/colourGrid.ts';
import { colour } from '../../engine/4-colour/colour.ts';
import type { Terms } from '../../engine/craft/terms.ts';
import type { WordStyle } from '../../engine/notation/writeWork.ts';
import { wordsToHtml, wordsToMarkdown } from '../../engine/readings/words/wordsToMarkup.ts';
import { wordsToText } from '../../engine/readings/words/wordsToText.ts';
import type { WordsDocument } from '../../engine/readings/words/wordsDocument.ts';
import { writeWords } from '../../engine/readings/words/writeWords.ts';

/** The forms in which a written pattern is taken away. */
export const FORMS = {
  text: { name: 'plain text', ending: '.txt', type: 'text/plain', write: wordsToText },
  markdown: { name: 'Markdown', ending: '.md', type: 'text/markdown', write: wordsToMarkdown },
  html: { name: 'web page', ending: '.html', type: 'text/html', write: wordsToHtml },
} as const satisfies Readonly<Record<string, { readonly name: string; readonly ending: string; readonly type: string; readonly write: (document: WordsDocument) => string }>>;

export type Form = keyof typeof FORMS;

/** The written pattern in all its sizes, from the fabric of each; a form of `FORMS` writes it. */
export function writtenPattern(pattern: Pattern, grids: readonly ColourGrid[], terms: Terms, style: WordStyle): WordsDocument {
  const sizes = grids.map((grid, size) => ({ size, fabric: grid.fabric, colours: colour(pattern, grid.fabric, size, grid) }));
  return writeWords({ pattern, sizes, terms, style });
}
