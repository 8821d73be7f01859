import type { Terms } from '../../engine/craft/terms.ts';
import type { WordStyle } from '../../engine/notation/writeWork.ts';
import type { WorkedSize } from '../../engine/readings/words/printedRow.ts';
import { writeRowWords } from '../../engine/readings/words/writeRowWords.ts';

/** The words of a section's rows for one size in the designer's wording, by row index in the fabric. */
export function sectionWords(worked: WorkedSize, section: number, terms: Terms, style: WordStyle = {}): ReadonlyMap<number, string> {
  const words = new Map<number, string>();
  worked.fabric.rows.forEach((row, index) => {
    if (row.section === section) words.set(index, writeRowWords(worked, index, terms, style));
  });
  return words;
}
