import { packPatternFile } from '../engine/1-pattern/file.ts';
import type { Historied, History } from '../engine/1-pattern/history.ts';
import { writeMoves, type Move } from '../engine/1-pattern/historyMove.ts';
import type { Pattern } from '../engine/1-pattern/pattern.ts';
import { planPieces } from './historyPieces.ts';
import { headOf, type Batch, type Head, type Whole } from './kept.ts';
import type { KeyStore } from './keyStore.ts';
import { sealed } from './sealed.ts';
import { shelfKeys } from './shelfKeys.ts';
import { NEVER_KEPT, type Standing } from './standing.ts';
import { takeKept, takeSince, type Taken } from './takeKept.ts';

export { NEVER_KEPT, type Standing, type Taken };

/** What the shelf shows of a pattern. */
export type ShelfCard = Pick<Head, 'id' | 'title' | 'sizes' | 'revision' | 'createdAt' | 'keptAt' | 'putAwayAt'> & {
  /** A drawing of the piece as SVG text; empty if there is none. */
  readonly pictureSvg: string;
};

/**
 * What a save gives: the new standing; or the revision that another window has kept meanwhile; or that the shelf holds
 * nothing that moves could go on from (it was cleared, or the standing says so). Nothing is written but for `kept`.
 */
export type Put = { readonly kind: 'kept'; readonly standing: Standing } | { readonly kind: 'overtaken'; readonly revision: number } | { readonly kind: 'noBase' };

/** What is put on the shelf. `at` is the time, passed in. */
export interface ShelfLoad {
  readonly pattern: Pattern;
  readonly history: History;
  readonly at: number;
}

/** The patterns kept on this device. */
export interface Shelf {
  /** Cards, last kept first; of those put away, the last put away first; and the keys of entries that can't be read at all. */
  list(): Promise<{ readonly cards: readonly ShelfCard[]; readonly putAway: readonly ShelfCard[]; readonly unreadable: readonly string[] }>;
  take(id: string): Promise<Taken>;
  /** What other windows have kept since a standing; `null` if nothing. */
  takeSince(now: Historied, standing: Standing): Promise<Taken | null>;
  /** Adds moves to the journal: cost and size are those of the moves, however large the pattern is. Refuses if the shelf holds something newer. */
  append(load: Omit<ShelfLoad, 'history'> & { readonly moves: readonly Move[] }, standing: Standing): Promise<Put>;
  /**
   * Saves the whole of a pattern with its picture (`null` leaves the one that is there). It has to be the pattern as of the
   * standing, so that the journal goes on from it; a standing without a whole takes any. Refuses if the shelf holds something newer.
   */
  put(load: ShelfLoad & { readonly pictureSvg: string | null }, standing: Standing): Promise<Put>;
  /** Puts a pattern away: it is off the shelf, and can be brought back. */
  putAway(id: string, at: number): Promise<void>;
  bringBack(id: string): Promise<void>;
  /** Removes a pattern for good, with all that is kept of it. */
  remove(id: string): Promise<void>;
}

// Counts for the whole window: shelves of one token must not give two pieces one key.
let written = 0;

/** A shelf in a store. `token` tells this window from every other: the keys of its pieces begin with it. */
export function shelfOf(store: KeyStore, token: string): Shelf {
  /** The revision that another window has kept since a standing; `null` if there is none. A save of this window's own that was written but not confirmed is none. */
  const newerThan = (head: Head | null, standing: Standing): number | null => (head && head.revision > standing.revision && head.writer !== token ? head.revision : null);

  async function setPutAway(id: string, at: number | null): Promise<void> {
    await store.transact([shelfKeys.head(id)], ([value]) => {
      const head = headOf(value);
      return head ? { set: [[shelfKeys.head(id), { ...(value as object), ...head, putAwayAt: at }]] } : null;
    });
  }

  return {
    list: () => listCards(store),
    take: (id) => takeKept(store, id),
    takeSince: (now, standing) => takeSince(store, now.pattern.id, now, standing),

    async append({ pattern, moves, at }, standing) {
      if (!standing.whole) return { kind: 'noBase' };
      let put: Put = { kind: 'noBase' };
      const revision = standing.revision + moves.length;
      await store.transact([shelfKeys.head(pattern.id)], ([value]) => {
        const head = headOf(value);
        const newer = newerThan(head, standing);
        if (newer !== null) put = { kind: 'overtaken', revision: newer };
        if (newer !== null || !head || head.whole !== standing.whole?.revision || head.revision < standing.revision || head.revision > revision) return null;
        put = { kind: 'kept', standing: { ...standing, revision, keptAt: at } };
        const next: Head = { ...head, title: pattern.title, sizes: [...pattern.sizes], revision, keptAt: at, writer: token, putAwayAt: null };
        const fresh = moves.slice(head.revision - standing.revision);
        const batch: Batch = { first: head.revision + 1, last: revision, at, moves: sealed(writeMoves(fresh)) };
        return { set: [[shelfKeys.head(pattern.id), next], ...(fresh.length > 0 ? [[shelfKeys.moves(pattern.id, batch.first), batch] as const] : [])] };
        // The disk may take its time; the whole that follows waits for it.
      }, 'quick');
      return put;
    },

    async put({ pattern, history, pictureSvg, at }, standing) {
      const { id } = pattern;
      const plan = planPieces(standing.whole?.pieces ?? [], history, () => shelfKeys.piece(id, `${token}-${written++}`));
      const file = sealed(packPatternFile(pattern));
      let put: Put = { kind: 'noBase' };
      await store.transact([shelfKeys.head(id)], ([value]) => {
        const head = headOf(value);
        const newer = newerThan(head, standing);
        if (newer !== null) {
          put = { kind: 'overtaken', revision: newer };
          return null;
        }
        // Where the journal doesn't lead to it, a whole is a revision of its own.
        const isReached = standing.whole !== null && (head?.revision ?? 0) === standing.revision;
        const revision = isReached ? standing.revision : Math.max(standing.revision, head?.revision ?? 0) + 1;
        const createdAt = head?.createdAt ?? standing.createdAt ?? at;
        const whole: Whole = { revision, at, file, pieces: plan.pieces.map((piece) => piece.key), done: plan.done };
        const next: Head = { id, title: pattern.title, sizes: [...pattern.sizes], revision, createdAt, keptAt: at, writer: token, whole: revision, putAwayAt: null };
        const isAgain = standing.whole?.revision === revision;
        const before = isAgain ? standing.before : standing.whole && { revision: standing.whole.revision, pieceKeys: standing.whole.pieces.map((piece) => piece.key) };
        put = { kind: 'kept', standing: { revision, createdAt, keptAt: at, whole: { revision, pieces: plan.pieces }, before } };
        const named = new Set([...whole.pieces, ...(before?.pieceKeys ?? [])]);
        return {
          del: [...(standing.before?.pieceKeys ?? []), ...plan.gone].filter((key) => !named.has(key)),
          // Wholes but the one before, and the journal up to that one.
          delBetween: before
            ? [[shelfKeys.whole(id, 0), shelfKeys.whole(id, before.revision - 1)], [shelfKeys.whole(id, before.revision + 1), shelfKeys.whole(id, revision - 1)], [shelfKeys.moves(id, 0), shelfKeys.moves(id, before.revision)]]
            : [],
          set: [[shelfKeys.head(id), next], [shelfKeys.whole(id, revision), whole], ...plan.fresh, ...(pictureSvg === null ? [] : [[shelfKeys.picture(id), pictureSvg] as const])],
        };
      });
      return put;
    },

    putAway: (id, at) => setPutAway(id, at),
    bringBack: (id) => setPutAway(id, null),
    remove: (id) =>
      store.transact([], () => ({
        set: [],
        del: [shelfKeys.head(id), shelfKeys.picture(id), shelfKeys.file(id), shelfKeys.choices(id)],
        delBetween: [shelfKeys.wholes(id), shelfKeys.journal(id), shelfKeys.pieces(id), shelfKeys.allEarlier(id), shelfKeys.places(id)].map(shelfKeys.range),
      })),
  };
}

async function listCards(store: KeyStore): ReturnType<Shelf['list']> {
  const keys = await store.keys();
  const heads = await store.under(shelfKeys.heads);
  const known = new Set(heads.map(([key]) => key));
  // A head that was lost is made again from the wholes that are there.
  const orphans = [...new Set(keys.flatMap((key) => shelfKeys.idIn('whole', key) ?? []))].filter((id) => !known.has(shelfKeys.head(id)));
  const cards: ShelfCard[] = [];
  const unreadable: string[] = [];
  const found = [...heads, ...orphans.map((id) => [shelfKeys.head(id), undefined] as const)];
  const pictures = await store.getMany(found.map(([key]) => shelfKeys.picture(key.slice(shelfKeys.heads.length))));
  for (const [i, [key, value]] of found.entries()) {
    const head = headOf(value) ?? (await headFromWhole(store, key.slice(shelfKeys.heads.length)));
    if (!head) unreadable.push(key);
    else {
      const first = typeof value === 'object' && value !== null && 'pictureSvg' in value ? value.pictureSvg : '';
      const { id, title, sizes, revision, createdAt, keptAt, putAwayAt } = head;
      cards.push({ id, title, sizes, revision, createdAt, keptAt, putAwayAt, pictureSvg: String(pictures[i] ?? first) });
    }
  }
  const byTime = (time: (card: ShelfCard) => number) => (a: ShelfCard, b: ShelfCard) => time(b) - time(a) || (a.id < b.id ? -1 : 1);
  return {
    cards: cards.filter((card) => card.putAwayAt === null).sort(byTime((card) => card.keptAt)),
    putAway: cards.filter((card) => card.putAwayAt !== null).sort(byTime((card) => card.putAwayAt ?? 0)),
    unreadable,
  };
}

async function headFromWhole(store: KeyStore, id: string): Promise<Omit<Head, 'writer' | 'whole'> | null> {
  const taken = await takeKept(store, id);
  if (taken.kind !== 'ok') return null;
  const { pattern, standing } = taken;
  return { id, title: pattern.title, sizes: [...pattern.sizes], revision: standing.revision, createdAt: standing.createdAt ?? 0, keptAt: standing.keptAt ?? 0, putAwayAt: null };
}
