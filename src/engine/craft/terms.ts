import { STITCHES, stitchRow } from './stitches.ts';
import type { StitchKind } from './stitches.ts';

/** US or UK words for stitches. */
export type Terms = 'us' | 'uk';

/** Other words in print for the stitches of the catalogue; the catalogue's own abbreviation and name come first. */
interface Synonyms {
  readonly kind: StitchKind;
  readonly us?: readonly string[];
  readonly uk?: readonly string[];
}

/**
 * Words met in print beside the catalogue's own. Abbreviations: two published lists named in the reference tables of the
 * trade (bo, cl, pc, p, ps, sh; ss, htr, ttr/trtr in UK lists); the long forms are *common practice*. A UK `trtr`
 * is one stitch shorter than a US one.
 */
const SYNONYMS: readonly Synonyms[] = [
  { kind: 'ch', us: ['chain stitch', 'chain st'], uk: ['chain stitch', 'chain st'] },
  { kind: 'slst', us: ['slst', 'slip st', 'ss', 'sl stitch'], uk: ['slst', 'slip st', 'ss', 'sl stitch'] },
  { kind: 'sc', us: ['single'], uk: ['double'] },
  { kind: 'hdc', us: ['half double'], uk: ['half treble', 'h tr'] },
  { kind: 'dc', us: ['double'], uk: ['treble'] },
  { kind: 'tr', us: ['treble', 'triple crochet', 'tc'], uk: ['double treble', 'd tr'] },
  { kind: 'dtr', us: ['double treble'], uk: ['trtr', 'triple treble', 'treble treble', 'tr tr'] },
  { kind: 'trtr', us: ['triple treble', 'tr tr'], uk: ['quadtr', 'quad tr', 'quadruple treble'] },
  { kind: 'esc', us: ['extended sc', 'exsc', 'ext sc'], uk: ['extended dc', 'exdc', 'ext dc'] },
  { kind: 'ehdc', us: ['extended hdc', 'exhdc', 'ext hdc'], uk: ['extended htr', 'exhtr', 'ext htr'] },
  { kind: 'edc', us: ['extended dc', 'exdc', 'ext dc'], uk: ['extended tr', 'extr', 'ext tr'] },
  { kind: 'etr', us: ['extended tr', 'extr', 'ext tr'], uk: ['extended dtr', 'exdtr', 'ext dtr'] },
  { kind: 'rsc', us: ['rsc', 'reverse sc', 'crab st', 'crab stitch'], uk: ['reverse dc', 'crab st', 'crab stitch'] },
  { kind: 'tsc', us: ['tw sc'], uk: ['tw dc'] },
  { kind: 'bobble', us: ['bo', 'bobble stitch', 'bobble st'], uk: ['bo', 'bobble stitch', 'bobble st'] },
  { kind: 'puff', us: ['puff', 'ps', 'puff stitch'], uk: ['puff', 'ps', 'puff stitch'] },
  { kind: 'popcorn', us: ['pc', 'popcorn st', 'popcorn stitch', 'pop'], uk: ['pc', 'popcorn st', 'popcorn stitch', 'pop'] },
  { kind: 'cluster', us: ['cl'], uk: ['cl'] },
  { kind: 'shell', us: ['sh'], uk: ['sh'] },
  { kind: 'vst', us: ['vst'], uk: ['vst'] },
  { kind: 'picot', us: ['p'], uk: ['p'] },
];

/** A stitch word as a list of lower-case words without hyphens: `v st`, `half double crochet`. */
export interface StitchPhrase {
  readonly kind: StitchKind;
  readonly words: readonly string[];
}

function phrasesOf(terms: Terms): readonly StitchPhrase[] {
  const phrases: StitchPhrase[] = [];
  for (const row of STITCHES) {
    if (row.kind === 'ring') continue;
    const synonyms = SYNONYMS.find((entry) => entry.kind === row.kind);
    const own = terms === 'us' ? [row.us, row.usName] : [row.uk, row.ukName];
    for (const phrase of new Set([...own, ...((terms === 'us' ? synonyms?.us : synonyms?.uk) ?? [])])) {
      phrases.push({ kind: row.kind, words: phrase.toLowerCase().split(/[ -]/) });
    }
  }
  return phrases.sort((a, b) => b.words.length - a.words.length);
}

/** Every stitch word of each set of terms, longest first. */
export const STITCH_PHRASES: Readonly<Record<Terms, readonly StitchPhrase[]>> = { us: phrasesOf('us'), uk: phrasesOf('uk') };

/** Words beside stitches that differ. Skip and miss are both read in either set; gauge and tension too. */
export const TERM_WORDS: Readonly<Record<Terms, { readonly skip: string; readonly gauge: string }>> = {
  us: { skip: 'skip', gauge: 'Gauge' },
  uk: { skip: 'miss', gauge: 'Tension' },
};

/** The abbreviation of a stitch in the terms asked for. */
export function stitchWord(kind: StitchKind, terms: Terms): string {
  const row = stitchRow(kind);
  return terms === 'us' ? row.us : row.uk;
}

/** The full name of a stitch, singular, in the terms asked for. */
export function stitchName(kind: StitchKind, terms: Terms): string {
  const row = stitchRow(kind);
  return terms === 'us' ? row.usName : row.ukName;
}

const OTHER: Readonly<Record<Terms, Terms>> = { us: 'uk', uk: 'us' };

/** The other set of terms. */
export function otherTerms(terms: Terms): Terms {
  return OTHER[terms];
}

/** Pairs of words to swap, longest first: the catalogue's abbreviations and names, and the two words for gauge. */
function swaps(from: Terms, to: Terms): ReadonlyMap<string, string> {
  const pairs = new Map<string, string>();
  for (const { kind } of STITCHES) {
    pairs.set(stitchName(kind, from).toLowerCase(), stitchName(kind, to));
    pairs.set(stitchWord(kind, from).toLowerCase(), stitchWord(kind, to));
  }
  pairs.set(TERM_WORDS[from].gauge.toLowerCase(), TERM_WORDS[to].gauge.toLowerCase());
  return new Map([...pairs].filter(([word, other]) => word !== other.toLowerCase()).sort((a, b) => b[0].length - a[0].length));
}

const SWAPS = { us: swaps('us', 'uk'), uk: swaps('uk', 'us') } as const;

/** A word may carry a post prefix and a "together" suffix or a plural: FPdc, dc2tog, double crochets. */
function matcher(pairs: ReadonlyMap<string, string>): RegExp {
  return new RegExp(`(?<![\\p{L}\\p{N}])(fp|bp)?(${[...pairs.keys()].join('|')})(?=s?(?![\\p{L}\\p{N}])|\\d+tog)`, 'giu');
}

const MATCHERS = { us: matcher(SWAPS.us), uk: matcher(SWAPS.uk) } as const;

/**
 * Free text (a note, a remark) with its stitch words put into other terms: a one-to-one shift of abbreviations and full
 * names (US sc = UK dc, hdc = htr, dc = tr, tr = dtr, dtr = ttr), so there and back gives the same text. Gauge and
 * tension are swapped too. Rows are not converted so: they are read and written.
 */
export function toTerms(text: string, from: Terms, to: Terms): string {
  if (from === to) return text;
  return text.replace(MATCHERS[from], (_, post: string | undefined, word: string) => {
    const other = SWAPS[from].get(word.toLowerCase())!;
    const first = word[0]!;
    const raised = !post && first !== first.toLowerCase() ? other[0]!.toUpperCase() + other.slice(1) : other;
    return (post ?? '') + raised;
  });
}
