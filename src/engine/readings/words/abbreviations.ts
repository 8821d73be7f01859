import { STITCHES } from '../../craft/stitches.ts';
import { stitchName, stitchWord } from '../../craft/terms.ts';
import type { Terms } from '../../craft/terms.ts';
import type { WordsDocument } from './wordsDocument.ts';

/** Words of rows that are no stitches; from two published lists of abbreviations that agree. */
const WORDS: readonly (readonly [short: string, meaning: string, pattern: RegExp])[] = [
  ['BLO', 'back loop only', /\bBLO\b/],
  ['FLO', 'front loop only', /\bFLO\b/],
  ['rep', 'repeat', /\brep\b/i],
  ['rnd(s)', 'round(s)', /\brnds?\b/i],
  ['RS', 'right side', /\bRS\b/],
  ['run', 'so many sts worked alike, counted in order from the start of the row or rnd', /\bin (?:the \d+\w+ run|runs \d|each run)\b/],
  ['sp(s)', 'space(s)', /\bsps?\b/],
  ['st(s)', 'stitch(es)', /(?<!sl |puff |V-|[(]|\d-)\bsts?\b/],
  ['WS', 'wrong side', /\bWS\b/],
];

/** How stitches of several legs are made, as the catalogue has them (*common practice*). */
function meaningOf(row: (typeof STITCHES)[number], terms: Terms): string {
  const name = stitchName(row.kind, terms);
  return name === stitchWord(row.kind, terms) ? '' : name;
}

/** Abbreviations that a text uses, in alphabetical order, with their meanings in the same terms. */
export function abbreviationsIn(text: string, terms: Terms): WordsDocument['abbreviations'] {
  const found = new Map<string, string>();
  for (const row of STITCHES) {
    // A magic ring is written in full; "ring" alone may be one of chains.
    if (row.kind === 'ring') continue;
    const short = stitchWord(row.kind, terms);
    const meaning = meaningOf(row, terms);
    const word = short.replace(/[-\s]/g, '[- ]');
    if (meaning !== '' && new RegExp(`(?<![\\p{L}\\p{N}])(?:\\d+-)?${word}s?(?![\\p{L}\\p{N}])`, 'u').test(text)) found.set(short, meaning);
    for (const match of text.matchAll(new RegExp(`(?<![\\p{L}])((?:FP|BP)?)${word}(\\d+)tog`, 'gu'))) {
      found.set(`${match[1]}${short}${match[2]}tog`, `${postWords(match[1]!)}${meaning} ${match[2]} together`);
    }
    for (const match of text.matchAll(new RegExp(`(?<![\\p{L}])(FP|BP)${word}(?![\\p{L}\\p{N}])`, 'gu'))) found.set(`${match[1]}${short}`, `${postWords(match[1]!)}${meaning}`);
  }
  for (const [short, meaning, pattern] of WORDS) if (pattern.test(text)) found.set(short, meaning);
  return [...found].map(([short, meaning]) => ({ short, meaning })).sort((a, b) => (a.short.toLowerCase() < b.short.toLowerCase() ? -1 : 1));
}

function postWords(prefix: string): string {
  return prefix === 'FP' ? 'front post ' : prefix === 'BP' ? 'back post ' : '';
}
