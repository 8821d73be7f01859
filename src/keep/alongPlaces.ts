import * as v from 'valibot';
import type { KeyStore } from './keyStore.ts';
import { shelfKeys } from './shelfKeys.ts';

const entrySchema = v.object({
  line: v.string(),
  nth: v.number(),
  done: v.number(),
  /** Rows that are ticked, each as `line nth`. */
  ticks: v.array(v.string()),
  keptAt: v.number(),
});
const handSchema = v.picklist(['right', 'left']);
const lastSchema = v.object({ size: v.string(), version: v.nullable(v.string()) });

/** Where a maker is in one size and version of a pattern. */
export type AlongEntry = v.InferOutput<typeof entrySchema>;

/** The places of makers, kept on this device by pattern, size and version. */
export interface AlongPlaces {
  /** Null where nothing is kept, or nothing that can be read. */
  get(pattern: string, size: string, version: string | null): Promise<AlongEntry | null>;
  put(pattern: string, size: string, version: string | null, entry: AlongEntry): Promise<void>;
  /** The size and version that were made last; null where nothing is kept. */
  last(pattern: string): Promise<{ readonly size: string; readonly version: string | null } | null>;
  setLast(pattern: string, size: string, version: string | null): Promise<void>;
  /** The hand that the maker works with, on all patterns. */
  hand(): Promise<'right' | 'left'>;
  setHand(hand: 'right' | 'left'): Promise<void>;
}

const HAND = 'along-hand';

/** The places in a store. */
export function alongPlacesOf(store: KeyStore): AlongPlaces {
  return {
    async get(pattern, size, version) {
      const entry = v.safeParse(entrySchema, await store.get(shelfKeys.place(pattern, size, version)));
      return entry.success ? entry.output : null;
    },
    put: (pattern, size, version, entry) => store.setMany([[shelfKeys.place(pattern, size, version), entry]]),
    async last(pattern) {
      const last = v.safeParse(lastSchema, await store.get(shelfKeys.lastMade(pattern)));
      return last.success ? last.output : null;
    },
    setLast: (pattern, size, version) => store.setMany([[shelfKeys.lastMade(pattern), { size, version }]]),
    async hand() {
      const hand = v.safeParse(handSchema, await store.get(HAND));
      return hand.success ? hand.output : 'right';
    },
    setHand: (hand) => store.setMany([[HAND, hand]]),
  };
}
