import * as v from 'valibot';
import { openPatternFile, packPatternFile } from '../engine/1-pattern/file.ts';
import type { Pattern } from '../engine/1-pattern/pattern.ts';
import type { KeyStore } from './keyStore.ts';
import { sealed, unsealed } from './sealed.ts';
import { shelfKeys } from './shelfKeys.ts';
import { thinned, type KeptVersion } from './thinned.ts';

const versionSchema = v.object({ at: v.number(), name: v.nullable(v.string()), file: v.unknown() });

/** A version of a pattern as it once was. `pattern` is null where it can't be read. */
export interface EarlierVersion extends KeptVersion {
  readonly pattern: Pattern | null;
}

/** A version as it is kept: a pattern file that may be of an older format. */
export interface EarlierText extends KeptVersion {
  readonly text: string;
}

/** How a pattern was at earlier times, kept on this device. */
export interface Earlier {
  /** Newest first. */
  list(id: string): Promise<readonly EarlierVersion[]>;
  /** Keeps a version; automatic ones have no name and are thinned with age. One of the same moment is replaced. */
  keep(pattern: Pattern, at: number, name: string | null): Promise<void>;
  remove(id: string, at: number): Promise<void>;
  /** The versions as they are kept, newest first; those that are damaged are left out. */
  texts(id: string): Promise<readonly EarlierText[]>;
  /** Puts versions back; one of a moment that is there is left as it is. Gives how many were put. */
  putBack(id: string, versions: readonly EarlierText[]): Promise<number>;
}

/** The earlier versions in a store. */
export function earlierOf(store: KeyStore): Earlier {
  const listed = async (id: string) =>
    (await store.under(shelfKeys.allEarlier(id))).flatMap(([, value]) => {
      const version = v.safeParse(versionSchema, value);
      return version.success ? [version.output] : [];
    });
  return {
    list: async (id) =>
      (await listed(id))
        .sort((a, b) => b.at - a.at)
        .map(({ at, name, file }) => {
          const text = unsealed(file);
          const opened = text === null ? null : openPatternFile(text);
          return { at, name, pattern: opened?.kind === 'ok' ? opened.pattern : null };
        }),
    async keep(pattern, at, name) {
      const { id } = pattern;
      const gone = thinned([...(await listed(id)), { at, name }], at);
      const value = { at, name, file: sealed(packPatternFile(pattern)) };
      await store.transact([], () => ({ set: [[shelfKeys.earlier(id, at), value]], del: gone.map((each) => shelfKeys.earlier(id, each)) }));
    },
    remove: (id, at) => store.delMany([shelfKeys.earlier(id, at)]),
    texts: async (id) =>
      (await listed(id)).sort((a, b) => b.at - a.at).flatMap(({ at, name, file }) => {
        const text = unsealed(file);
        return text === null ? [] : [{ at, name, text }];
      }),
    async putBack(id, versions) {
      const there = new Set((await listed(id)).map(({ at }) => at));
      const missing = versions.filter(({ at }) => !there.has(at));
      const entries = missing.map(({ at, name, text }) => [shelfKeys.earlier(id, at), { at, name, file: sealed(text) }] as const);
      if (entries.length > 0) await store.setMany(entries);
      return entries.length;
    },
  };
}
