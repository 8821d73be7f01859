import * as v from 'valibot';
import { openPatternFile, type Opened } from '../engine/1-pattern/file.ts';
import { NO_HISTORY, type Historied, type History } from '../engine/1-pattern/history.ts';
import { FILE_VERSION } from '../engine/1-pattern/migrations/migrateUp.ts';
import type { Pattern } from '../engine/1-pattern/pattern.ts';
import { readPieces } from './historyPieces.ts';
import { firstEntrySchema, headOf, wholeSchema, type Head } from './kept.ts';
import type { KeyStore } from './keyStore.ts';
import { recover, replay, unsoundWhole, type KeptEntry } from './recover.ts';
import { shelfKeys } from './shelfKeys.ts';
import { NEVER_KEPT, type Standing } from './standing.ts';

/** What taking a pattern from the shelf gives. Where nothing sound is left of it the text of its file is given, to be saved. */
export type Taken =
  | {
      readonly kind: 'ok';
      readonly pattern: Pattern;
      readonly history: History;
      readonly standing: Standing;
      /** The history could not be read (or is of an older file version), so undo starts anew. */
      readonly isHistoryLost: boolean;
      /** Moves that were kept but could not be read back, and when the last one was kept that could; null if all is there. */
      readonly lost: { readonly moves: number; readonly since: number } | null;
    }
  | { readonly kind: 'missing' }
  | { readonly kind: 'unsound'; readonly file: string; readonly opened: Exclude<Opened, { kind: 'ok' }> };

/** Takes a pattern from a store. What another window keeps meanwhile is read again, until all is of one moment. */
export async function takeKept(store: KeyStore, id: string): Promise<Taken> {
  for (;;) {
    const value = await store.get(shelfKeys.head(id));
    const head = headOf(value);
    const taken = isFirst(value) ? await takeFirst(store, value) : await takeWhole(store, id, head, value);
    const after = headOf(await store.get(shelfKeys.head(id)));
    if (after?.revision === head?.revision && after?.whole === head?.whole) return taken;
  }
}

/**
 * The moves that other windows have kept since a standing, made on what this one has; a whole new reading where that can't
 * be. `null` if there are none. It is for reading: whoever wants to write on takes the pattern.
 */
export async function takeSince(store: KeyStore, id: string, now: Historied, standing: Standing): Promise<Taken | null> {
  const head = headOf(await store.get(shelfKeys.head(id)));
  if (!head) return takeKept(store, id);
  if (head.revision === standing.revision) return null;
  const from = { ...now, revision: standing.revision, at: standing.keptAt ?? 0 };
  const reached = replay(from, await store.under(shelfKeys.journal(id)));
  if (reached.revision !== head.revision) return takeKept(store, id);
  return { kind: 'ok', pattern: reached.pattern, history: reached.history, standing: { ...NEVER_KEPT, revision: reached.revision, createdAt: head.createdAt, keptAt: head.keptAt }, isHistoryLost: false, lost: null };
}

async function takeWhole(store: KeyStore, id: string, head: Head | null, value: unknown): Promise<Taken> {
  const [wholes, journal] = await Promise.all([store.under(shelfKeys.wholes(id)), store.under(shelfKeys.journal(id))]);
  if (wholes.length === 0) return head === null && value === undefined ? { kind: 'missing' } : { kind: 'unsound', file: JSON.stringify(value) ?? '', opened: { kind: 'damaged', path: '', found: 'an entry that is not whole', expected: 'a kept pattern' } };
  const pieces = await piecesOf(store, wholes);
  const recovered = recover(wholes, journal, pieces);
  if (!recovered) return { kind: 'unsound', ...unsoundWhole(wholes) };
  const revision = Math.max(head?.revision ?? 0, recovered.revision);
  const lost = revision > recovered.revision ? { moves: revision - recovered.revision, since: recovered.at } : null;
  // Where something was lost or a version is old, the next save is a whole, so that no journal goes on over a gap.
  const isWhole = lost === null && !recovered.isHistoryLost && recovered.version === FILE_VERSION && head?.whole === recovered.from.revision;
  const earlier = wholes.map(([, each]) => v.safeParse(wholeSchema, each)).flatMap((each) => (each.success && each.output.revision < recovered.from.revision ? [each.output] : [])).at(-1);
  return {
    kind: 'ok', pattern: recovered.pattern, history: recovered.history, isHistoryLost: recovered.isHistoryLost, lost,
    standing: {
      revision, createdAt: head?.createdAt ?? null, keptAt: head?.keptAt ?? recovered.at,
      whole: isWhole ? recovered.from : null,
      before: isWhole && earlier ? { revision: earlier.revision, pieceKeys: earlier.pieces } : null,
    },
  };
}

async function piecesOf(store: KeyStore, wholes: readonly KeptEntry[]): Promise<ReadonlyMap<string, unknown>> {
  const keys = [...new Set(wholes.flatMap(([, value]) => {
    const whole = v.safeParse(wholeSchema, value);
    return whole.success ? whole.output.pieces : [];
  }))];
  const values = await store.getMany(keys);
  return new Map(keys.map((key, i) => [key, values[i]]));
}

function isFirst(value: unknown): boolean {
  return v.is(firstEntrySchema, value);
}

/** A pattern as the first shelves kept it. The next save is a whole of the newer kind. */
async function takeFirst(store: KeyStore, value: unknown): Promise<Taken> {
  const { file, pieces, done, revision, createdAt, keptAt } = v.parse(firstEntrySchema, value);
  const opened = openPatternFile(file);
  if (opened.kind !== 'ok') return { kind: 'unsound', file, opened };
  const read = readPieces(pieces, await store.getMany(pieces), done);
  return { kind: 'ok', pattern: opened.pattern, history: read?.history ?? NO_HISTORY, standing: { revision, createdAt, keptAt, whole: null, before: null }, isHistoryLost: read === null, lost: null };
}
