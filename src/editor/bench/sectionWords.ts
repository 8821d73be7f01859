import type { WorkedRow } from '../../engine/3-fabric/fabric.ts';
import { isAsWorked } from '../../engine/3-fabric/work.ts';
import type { Terms } from '../../engine/craft/terms.ts';
import type { WordStyle } from '../../engine/notation/writeWork.ts';
import { yarnInHand, type WorkedSize } from '../../engine/readings/words/printedRow.ts';
import { writeRowWords } from '../../engine/readings/words/writeRowWords.ts';

const PLAIN: WordStyle = {};

/** A row's words, and what they were written of besides the row itself. */
interface Written {
  readonly yarns: Uint8Array;
  readonly inHand: number | null;
  readonly terms: Terms;
  readonly style: WordStyle;
  readonly words: string;
}

/** By the report of the row: it is the very same as long as neither the row's words nor its stitches are others. */
const WRITTEN = new WeakMap<WorkedRow, Written>();

/** The words of a section's rows for one size in the designer's wording, by row index in the fabric. Rows that an edit leaves as they were are not written again. */
export function sectionWords(worked: WorkedSize, section: number, terms: Terms, style: WordStyle = PLAIN): ReadonlyMap<number, string> {
  const words = new Map<number, string>();
  const mayKeep = isAsWorked(worked.fabric);
  worked.fabric.rows.forEach((row, index) => {
    if (row.section !== section) return;
    const inHand = yarnInHand(worked, index);
    const known = mayKeep ? WRITTEN.get(row) : undefined;
    if (known && known.inHand === inHand && known.terms === terms && known.style === style && sameYarns(known.yarns, worked.colours.yarn, row.first)) {
      words.set(index, known.words);
      return;
    }
    const text = writeRowWords(worked, index, terms, style);
    words.set(index, text);
    if (mayKeep) WRITTEN.set(row, { yarns: worked.colours.yarn.slice(row.first, row.end), inHand, terms, style, words: text });
  });
  return words;
}

function sameYarns(known: Uint8Array, yarn: Uint8Array, first: number): boolean {
  for (let i = 0; i < known.length; i++) if (known[i] !== yarn[first + i]) return false;
  return true;
}
