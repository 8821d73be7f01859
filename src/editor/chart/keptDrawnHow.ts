import * as v from 'valibot';
import { USUALLY_DRAWN, type DrawnHow } from './drawnHow.ts';

/** Where small texts are kept on this device: the browser's `localStorage`, or a stand-in for tests. */
export type TextStore = Pick<Storage, 'getItem' | 'setItem'>;

// A choice that can't be read, or that a later version made, is left out and the usual one taken.
const schema = v.object({
  shows: v.fallback(v.picklist(['both', 'colour', 'symbols']), USUALLY_DRAWN.shows),
  mono: v.fallback(v.boolean(), USUALLY_DRAWN.mono),
  symbols: v.fallback(v.picklist(['us', 'jis']), USUALLY_DRAWN.symbols),
  hand: v.fallback(v.picklist(['right', 'left']), USUALLY_DRAWN.hand),
  view: v.fallback(v.picklist(['wedge', 'grid', 'fan']), USUALLY_DRAWN.view),
  rounds: v.fallback(v.picklist(['auto', 'tube', 'disc']), USUALLY_DRAWN.rounds),
  leanStitches: v.fallback(v.pipe(v.number(), v.minValue(0), v.maxValue(1)), USUALLY_DRAWN.leanStitches),
  spiral: v.fallback(v.boolean(), USUALLY_DRAWN.spiral),
  tubeMargin: v.fallback(v.pipe(v.number(), v.integer(), v.minValue(0), v.maxValue(40)), USUALLY_DRAWN.tubeMargin),
});

const key = (pattern: string): string => `turnwork drawn ${pattern}`;

/** How the charts of a pattern were last drawn on this device; as usual where nothing is kept or the browser keeps nothing: it may refuse the very asking for its store. */
export function keptDrawnHow(store: () => TextStore, pattern: string): DrawnHow {
  try {
    const kept = v.safeParse(schema, JSON.parse(store().getItem(key(pattern)) ?? '{}'));
    return kept.success ? kept.output : USUALLY_DRAWN;
  } catch {
    return USUALLY_DRAWN;
  }
}

/** Keeps it. False where the browser keeps nothing: the choice then holds until the page is closed. */
export function keepDrawnHow(store: () => TextStore, pattern: string, how: DrawnHow): boolean {
  try {
    store().setItem(key(pattern), JSON.stringify(how));
    return true;
  } catch {
    return false;
  }
}
