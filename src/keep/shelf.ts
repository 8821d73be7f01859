import * as v from 'valibot';
import { openPatternFile, writePatternFile, type Opened } from '../engine/1-pattern/file.ts';
import { NO_HISTORY, type History } from '../engine/1-pattern/history.ts';
import { FILE_VERSION } from '../engine/1-pattern/migrations/migrateUp.ts';
import type { Pattern } from '../engine/1-pattern/pattern.ts';
import { planJournal, readJournal, type Piece } from './journal.ts';
import type { KeyStore } from './keyStore.ts';

const cardSchema = v.object({
  id: v.string(),
  title: v.string(),
  sizes: v.array(v.string()),
  /** Counts up with every save; 0 is a pattern that was never kept. */
  revision: v.number(),
  /** Milliseconds since 1970. */
  createdAt: v.number(),
  keptAt: v.number(),
  /** A drawing of the piece as SVG text; empty if there is none. */
  pictureSvg: v.string(),
  /** The window that kept it. */
  writer: v.string(),
});
const entrySchema = v.object({ ...cardSchema.entries, file: v.string(), pieces: v.array(v.string()), done: v.number() });
type Entry = v.InferOutput<typeof entrySchema>;

/** What the shelf shows of a pattern. */
export type ShelfCard = v.InferOutput<typeof cardSchema>;

/** How a pattern stands on the shelf: what the next save starts from. */
export interface Standing {
  readonly revision: number;
  readonly createdAt: number | null;
  readonly keptAt: number | null;
  readonly pieces: readonly Piece[];
}

/** The standing of a pattern that was never kept. */
export const NEVER_KEPT: Standing = { revision: 0, createdAt: null, keptAt: null, pieces: [] };

/** What taking a pattern from the shelf gives. Where the file is not sound its text is given, to be saved. */
export type Taken =
  | { readonly kind: 'ok'; readonly pattern: Pattern; readonly history: History; readonly standing: Standing; /** The history could not be read (or is of an older file version), so undo starts anew. */ readonly isHistoryLost: boolean }
  | { readonly kind: 'missing' }
  | { readonly kind: 'unsound'; readonly file: string; readonly opened: Exclude<Opened, { kind: 'ok' }> };

/** What a save gives: the new standing, or the revision that another window has kept meanwhile; then nothing is written. */
export type Put = { readonly kind: 'kept'; readonly standing: Standing } | { readonly kind: 'overtaken'; readonly revision: number };

/** What is put on the shelf. `at` is the time, passed in. */
export interface ShelfLoad {
  readonly pattern: Pattern;
  readonly history: History;
  readonly pictureSvg: string;
  readonly at: number;
}

/** The patterns kept on this device. */
export interface Shelf {
  /** Cards, last kept first, and the keys of entries that can't be read at all. */
  list(): Promise<{ readonly cards: readonly ShelfCard[]; readonly unreadable: readonly string[] }>;
  take(id: string): Promise<Taken>;
  /** Saves a pattern on top of a standing; refuses if the shelf holds a newer one than that. */
  put(load: ShelfLoad, standing: Standing): Promise<Put>;
  remove(id: string): Promise<void>;
}

const ENTRY = 'pattern/';
const PIECE = 'steps/';

// Counts for the whole window: shelves of one token must not give two pieces one key.
let written = 0;

/** A shelf in a store. `token` tells this window from every other: the keys of its pieces begin with it. */
export function shelfOf(store: KeyStore, token: string): Shelf {
  const revisionOf = async (id: string) => {
    const card = v.safeParse(cardSchema, await store.get(ENTRY + id));
    return card.success ? card.output.revision : 0;
  };
  const shelf: Shelf = {
    async list() {
      const keys = (await store.keys()).filter((key) => key.startsWith(ENTRY));
      const values = await store.getMany(keys);
      const cards: ShelfCard[] = [];
      const unreadable: string[] = [];
      for (const [i, key] of keys.entries()) {
        const card = v.safeParse(cardSchema, values[i]);
        if (card.success) cards.push(card.output);
        else unreadable.push(key);
      }
      return { cards: cards.sort((a, b) => b.keptAt - a.keptAt || (a.id < b.id ? -1 : 1)), unreadable };
    },

    async take(id) {
      const value = await store.get(ENTRY + id);
      if (value === undefined) return { kind: 'missing' };
      const parsed = v.safeParse(entrySchema, value);
      if (!parsed.success) return { kind: 'unsound', file: JSON.stringify(value) ?? '', opened: { kind: 'damaged', path: '', found: 'an entry that is not whole', expected: 'a kept pattern' } };
      const entry = parsed.output;
      const opened = openPatternFile(entry.file);
      if (opened.kind !== 'ok') return { kind: 'unsound', file: entry.file, opened };
      // Steps hold edits in the form of their own version, so they go no further than it.
      const journal = opened.from === FILE_VERSION ? readJournal(entry.pieces, await store.getMany(entry.pieces), entry.done) : null;
      if (!journal && opened.from === FILE_VERSION && (await revisionOf(id)) > entry.revision) return shelf.take(id);
      const standing = { revision: entry.revision, createdAt: entry.createdAt, keptAt: entry.keptAt, pieces: journal?.pieces ?? entry.pieces.map((key) => ({ key, steps: [] })) };
      return { kind: 'ok', pattern: opened.pattern, history: journal?.history ?? NO_HISTORY, standing, isHistoryLost: journal === null };
    },

    async put({ pattern, history, pictureSvg, at }, standing) {
      const plan = planJournal(standing.pieces, history, () => `${PIECE}${pattern.id}/${token}-${written++}`);
      const file = writePatternFile(pattern);
      let newer: number | null = null;
      const createdAt = standing.createdAt ?? at;
      const revision = standing.revision + 1;
      // Pieces first: the entry never names one that is not there.
      if (plan.fresh.length > 0) await store.setMany(plan.fresh);
      await store.update(ENTRY + pattern.id, (old) => {
        const kept = v.safeParse(cardSchema, old);
        // A save of this window's own that was written but not confirmed is no newer copy.
        newer = kept.success && kept.output.revision > standing.revision && kept.output.writer !== token ? kept.output.revision : null;
        if (newer !== null) return old;
        return { id: pattern.id, title: pattern.title, sizes: [...pattern.sizes], revision, createdAt, keptAt: at, pictureSvg, writer: token, file, pieces: plan.pieces.map((piece) => piece.key), done: plan.done } satisfies Entry;
      });
      const unnamed = newer === null ? plan.gone : plan.fresh.map(([key]) => key);
      // What is left behind if this fails goes with the pattern; the save itself is done.
      if (unnamed.length > 0) await store.delMany(unnamed).catch(() => undefined);
      return newer === null ? { kind: 'kept', standing: { revision, createdAt, keptAt: at, pieces: plan.pieces } } : { kind: 'overtaken', revision: newer };
    },

    async remove(id) {
      const pieces = (await store.keys()).filter((key) => key.startsWith(`${PIECE}${id}/`));
      await store.delMany([ENTRY + id, ...pieces]);
    },
  };
  return shelf;
}
