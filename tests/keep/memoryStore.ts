import { LAST, type KeyStore } from '../../src/keep/keyStore.ts';

/** A store in memory that behaves as the browser's: values are copied, calls take a turn of the event loop, transactions are all or nothing. */
export interface MemoryStore extends KeyStore {
  readonly values: Map<string, unknown>;
  /** What the next calls of these methods are rejected with, until it is null again. */
  failure: { readonly methods: readonly (keyof KeyStore)[]; readonly error: unknown } | null;
  /** Calls of each method so far. */
  readonly calls: Record<string, number>;
  /** Runs before a transaction reads, as another window might. */
  beforeTransact: (() => void) | null;
  /** The transaction is written, but its promise is rejected: the page was frozen in between. */
  isUnconfirmed: boolean;
  /** The most characters that all values may have as JSON; beyond it, writing is refused as a full device refuses. */
  room: number;
}

export function memoryStore(values = new Map<string, unknown>()): MemoryStore {
  const store: MemoryStore = { values, failure: null, calls: {}, beforeTransact: null, isUnconfirmed: false, room: Infinity, get, getMany, keys, under, setMany, transact, delMany };
  async function turn(method: keyof KeyStore): Promise<void> {
    store.calls[method] = (store.calls[method] ?? 0) + 1;
    await new Promise((resolve) => setImmediate(resolve));
    if (store.failure?.methods.includes(method)) throw store.failure.error;
  }
  async function get(key: string) {
    await turn('get');
    return structuredClone(values.get(key));
  }
  async function getMany(keys: readonly string[]) {
    await turn('getMany');
    return keys.map((key) => structuredClone(values.get(key)));
  }
  async function keys() {
    await turn('keys');
    return [...values.keys()].sort();
  }
  async function under(prefix: string) {
    await turn('under');
    return [...values].filter(([key]) => key >= prefix && key <= prefix + LAST).sort(([a], [b]) => (a < b ? -1 : 1)).map(([key, value]) => [key, structuredClone(value)] as const);
  }
  async function setMany(entries: readonly (readonly [string, unknown])[]) {
    await turn('setMany');
    write(entries);
  }
  async function transact(list: readonly string[], change: Parameters<KeyStore['transact']>[1]) {
    await turn('transact');
    store.beforeTransact?.();
    const changes = change(list.map((key) => structuredClone(values.get(key))));
    if (changes) {
      const set = structuredClone(changes.set);
      const gone = [...values.keys()].filter((key) => changes.del?.includes(key) || changes.delBetween?.some(([first, last]) => key >= first && key <= last));
      const before = gone.map((key) => [key, values.get(key)] as const);
      for (const key of gone) values.delete(key);
      try {
        write(set);
      } catch (error) {
        for (const [key, value] of before) values.set(key, value);
        throw error;
      }
    }
    if (store.isUnconfirmed) throw new Error('the page was frozen');
  }
  async function delMany(keys: readonly string[]) {
    await turn('delMany');
    for (const key of keys) values.delete(key);
  }
  function write(entries: readonly (readonly [string, unknown])[]) {
    const after = new Map([...values, ...entries]);
    if (store.room < Infinity && [...after].reduce((sum, [, value]) => sum + JSON.stringify(value).length, 0) > store.room) throw new DOMException('no room', 'QuotaExceededError');
    for (const [key, value] of entries) values.set(key, structuredClone(value));
  }
  return store;
}
