import { LAST } from './keyStore.ts';

const numbered = (count: number) => String(count).padStart(12, '0');
const part = encodeURIComponent;

/**
 * The keys under which a shelf keeps things. A pattern's head has the plain id, as on the first shelves; in all others it is
 * encoded, so that no id reaches into the keys of another.
 */
export const shelfKeys = {
  heads: 'pattern/',
  head: (id: string) => `pattern/${id}`,
  picture: (id: string) => `picture/${part(id)}`,
  /** A whole of the pattern as of a revision. */
  whole: (id: string, revision: number) => `whole/${part(id)}/${numbered(revision)}`,
  wholes: (id: string) => `whole/${part(id)}/`,
  /** Moves of the journal, from the revision of the first one. */
  moves: (id: string, first: number) => `journal/${part(id)}/${numbered(first)}`,
  journal: (id: string) => `journal/${part(id)}/`,
  piece: (id: string, name: string) => `steps/${part(id)}/${name}`,
  pieces: (id: string) => `steps/${part(id)}/`,
  earlier: (id: string, at: number) => `earlier/${part(id)}/${numbered(at)}`,
  allEarlier: (id: string) => `earlier/${part(id)}/`,
  file: (id: string) => `file/${part(id)}`,
  /** Where a maker is in a size and version; what was made last; how it is published. */
  place: (id: string, size: string, version: string | null) => `along/${part(id)}/${part(size)}/${part(version ?? '')}`,
  lastMade: (id: string) => `along/${part(id)}/last`,
  places: (id: string) => `along/${part(id)}/`,
  choices: (id: string) => `publish/${part(id)}`,
  /** The range of all keys that begin so. */
  range: (prefix: string) => [prefix, prefix + LAST] as const,
  /** The id in a key such as `whole/id/000000000012`; `null` in a key of another kind. */
  idIn(kind: 'whole', key: string): string | null {
    const [first, id, ...rest] = key.split('/');
    return first === kind && id !== undefined && rest.length === 1 ? decodeURIComponent(id) : null;
  },
};
