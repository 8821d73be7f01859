import type { YarnTotal } from '../../engine/readings/yarn/yarnNeed.ts';

/** What the lengths of some yarns rest on, as a sentence. */
export interface YarnSource {
  /** `A, C`: the yarns that it is said of. */
  readonly letters: string;
  readonly isGuess: boolean;
  readonly says: string;
}

/** Each source once, with the yarns that rest on it: guesses say that they are rough and how to have them closer. */
export function yarnSources(totals: readonly Pick<YarnTotal, 'letter' | 'source' | 'guessed'>[]): readonly YarnSource[] {
  const sources = [...new Set(totals.map(({ source }) => source))];
  return sources.map((source) => {
    const own = totals.filter((total) => total.source === source);
    const isGuess = own.some(({ guessed }) => guessed);
    return {
      letters: own.map(({ letter }) => letter).join(', '), isGuess,
      says: isGuess ? `A rough guess, as no swatch was weighed or measured: ${source.replace('a guess: ', '')}. Weigh a swatch and write down its grams to have it closer.` : `From ${source}.`,
    };
  });
}
