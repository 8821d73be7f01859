import { lengthWords, type Lengths } from './lengthWords.ts';
import type { Dimension } from './schematic.ts';

/** Width of a letter to the size of the text: words in capitals and small letters of the shipped label face, measured a little wide. */
const SMALL = 0.5;
const CAPITAL = 0.62;

/** About how wide words are in a text of a size, in the same unit as the size. */
export function wordsWidth(words: string, textMm: number): number {
  return words.length * textMm * (words === words.toUpperCase() && /[A-Z]/.test(words) ? CAPITAL : SMALL);
}

/** The words of a dimension: its length in cm, inches or both, and what it is. */
export function dimensionWords({ word, cm }: Pick<Dimension, 'word' | 'cm'>, lengths: Lengths): string {
  return word === '' ? lengthWords(cm, lengths) : `${word} ${lengthWords(cm, lengths)}`;
}

/** Whether words along a line of that length would stick out beyond it: then they stand level beside an upright line. */
export function standsLevel(lengthMm: number, words: string, textMm: number): boolean {
  return wordsWidth(words, textMm) > lengthMm;
}

/** Room between shapes and a dimension line with its words, to the size of the text. */
export const BESIDE = { line: 2.3, text: 1.3 } as const;
