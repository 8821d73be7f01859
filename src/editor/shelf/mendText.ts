import type { PatternFromText } from '../../engine/1-pattern/patternFromText.ts';
import { cleanText, lengthWithJoiners } from '../../engine/notation/cleanText.ts';
import type { Mend } from '../../engine/notation/finding.ts';
import type { TextRange } from '../../engine/notation/instruction.ts';

/**
 * Where a mend stands in the text that the pattern was read from, which may have the row broken over lines, words broken by
 * hyphens and marks of no width: the characters from the first to the last that the mend changes. Null for a line that is not of the text.
 */
export function placeOfMend(cleaned: string, read: Pick<PatternFromText, 'lines'>, { line, range: [from, to] }: Mend): TextRange | null {
  const place = read.lines.get(line)?.range;
  if (!place) return null;
  const written = cleaned.slice(place[0], place[1]);
  const start = lengthWithJoiners(written, from);
  // What has no width after the last character stays.
  const end = to > from ? lengthWithJoiners(written, to - 1) + 1 : start;
  return [place[0] + start, place[0] + Math.min(end, written.length)];
}

/** Where the number of a row's label stands, before its words on the same line; null where it has none, or two. */
function placeOfLabel(cleaned: string, read: Pick<PatternFromText, 'lines'>, { line }: Mend): TextRange | null {
  const words = read.lines.get(line)?.range[0];
  if (words === undefined) return null;
  const start = cleaned.lastIndexOf('\n', words - 1) + 1;
  const numbers = [...cleaned.slice(start, words).matchAll(/\d+/g)];
  const [only] = numbers;
  return numbers.length === 1 ? [start + only!.index, start + only!.index + only![0].length] : null;
}

/** The text with mends put in, all at once; of two that want the same characters the first is. */
export function mendText(text: string, read: Pick<PatternFromText, 'lines'>, mends: readonly Mend[]): string {
  const cleaned = cleanText(text);
  const placed = mends.flatMap((mend) => {
    const place = mend.label === undefined ? placeOfMend(cleaned, read, mend) : placeOfLabel(cleaned, read, mend);
    return place ? [{ from: place[0], to: place[1], text: mend.label ?? mend.text }] : [];
  });
  placed.sort((a, b) => a.from - b.from);
  let mended = '';
  let at = 0;
  for (const each of placed) {
    if (each.from < at) continue;
    mended += text.slice(at, each.from) + each.text;
    at = each.to;
  }
  return mended + text.slice(at);
}
