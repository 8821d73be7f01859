import type { Terms } from '../craft/terms.ts';

/** The terms that a text seems to be in, and why. */
export interface GuessedTerms {
  readonly terms: Terms;
  /** `words`: words that only these terms have; `chains`: the height of turning chains; `mixed`: words of both; `nothing`: no word that tells. */
  readonly by: 'words' | 'chains' | 'mixed' | 'nothing';
  /** The words that told, at most a few of each. */
  readonly words: string;
}

/** Words that only one set of terms has (`craft/stitches.ts`, and the words for gauge and skipping in the reference lists of the trade). */
const US_ONLY = /(?<![\p{L}])(?:[fb]psc|sc(?=\d*tog\b|\b)|hdc|[fb]phdc|single crochet|half[ -]double(?: crochet)?|gauge)(?:\d*tog)?(?![\p{L}])/giu;
const UK_ONLY = /(?<![\p{L}])(?:htr|[fb]phtr|ttr|half[ -]treble(?: crochet)?|triple treble|tension)(?:\d*tog)?(?![\p{L}])/giu;
/** A turning chain and the stitch that follows it: 1 or 2 chains before `dc` are UK, 3 are US; 3 before `tr` are UK, 4 are US. */
const CHAINS = /(?<![\p{L}])ch[ -]?([1-5])\b[^.\n]{0,40}?\b(?:turn)\b[^.\n]{0,40}?\b(dc|tr)\b/giu;
/** Enough to tell by. */
const MOST = 400;

/** Guesses the terms of a text that does not say them. US where nothing tells. Linear in the text. */
export function guessTerms(text: string): GuessedTerms {
  const us = wordsOf(text, US_ONLY);
  const uk = wordsOf(text, UK_ONLY);
  if (us.count > 0 && uk.count > 0) {
    const terms = uk.count > us.count ? 'uk' : 'us';
    return { terms, by: 'mixed', words: `${us.words.join(', ')}; ${uk.words.join(', ')}` };
  }
  if (us.count > 0 || uk.count > 0) return { terms: uk.count > 0 ? 'uk' : 'us', by: 'words', words: [...us.words, ...uk.words].join(', ') };
  let seemsUs = 0;
  let seemsUk = 0;
  let seen = 0;
  for (const match of text.matchAll(CHAINS)) {
    if (++seen > MOST) break;
    const chains = Number(match[1]);
    const high = match[2]!.toLowerCase() === 'tr' ? 4 : 3;
    if (chains >= high) seemsUs++;
    else if (chains <= high - 1) seemsUk++;
  }
  if (seemsUs !== seemsUk) return { terms: seemsUk > seemsUs ? 'uk' : 'us', by: 'chains', words: '' };
  return { terms: 'us', by: 'nothing', words: '' };
}

function wordsOf(text: string, pattern: RegExp): { readonly count: number; readonly words: readonly string[] } {
  const words = new Set<string>();
  let count = 0;
  for (const match of text.matchAll(pattern)) {
    if (++count > MOST) break;
    if (words.size < 4) words.add(match[0].toLowerCase());
  }
  return { count, words: [...words] };
}
