import type { Wording } from '../../engine/1-pattern/pattern.ts';
import type { Command } from '../bench/benchState.ts';

/** What is taken where nothing is said; it is not written down. */
const USUAL = { runs: 'long', repeats: 'star', count: 'paren' } as const;

/** Words the pattern otherwise in one thing. What is as usual, or in the pattern's own terms, is left out of the document. */
export function setWording(change: Wording): Command {
  return ({ pattern, at }) => {
    const { runs, repeats, count, terms } = { ...pattern.wording, ...change };
    const wording: Wording = {
      ...(runs && runs !== USUAL.runs ? { runs } : {}),
      ...(repeats && repeats !== USUAL.repeats ? { repeats } : {}),
      ...(count && count !== USUAL.count ? { count } : {}),
      ...(terms && terms !== pattern.terms ? { terms } : {}),
    };
    if (JSON.stringify(wording) === JSON.stringify(pattern.wording ?? {})) return null;
    return { label: 'Choose the wording', at, edits: [{ kind: 'setWording', wording: Object.keys(wording).length > 0 ? wording : null }] };
  };
}
