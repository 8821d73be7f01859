import type { KeyStore } from '../../src/keep/keyStore.ts';

/** A store in memory that behaves as the browser's: values are copied, calls take a turn of the event loop, updates are one transaction. */
export interface MemoryStore extends KeyStore {
  readonly values: Map<string, unknown>;
  /** What the next calls of these methods are rejected with, until it is null again. */
  failure: { readonly methods: readonly (keyof KeyStore)[]; readonly error: unknown } | null;
  /** Calls of each method so far. */
  readonly calls: Record<string, number>;
  /** Runs before an update reads, as another window might. */
  beforeUpdate: (() => void) | null;
  /** The update is written, but its promise is rejected: the page was frozen in between. */
  isUnconfirmed: boolean;
}

export function memoryStore(values = new Map<string, unknown>()): MemoryStore {
  const store: MemoryStore = { values, failure: null, calls: {}, beforeUpdate: null, isUnconfirmed: false, get, getMany, keys, setMany, update, delMany };
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
    return [...values.keys()];
  }
  async function setMany(entries: readonly (readonly [string, unknown])[]) {
    await turn('setMany');
    for (const [key, value] of entries) values.set(key, structuredClone(value));
  }
  async function update(key: string, change: (old: unknown) => unknown) {
    await turn('update');
    store.beforeUpdate?.();
    values.set(key, structuredClone(change(structuredClone(values.get(key)))));
    if (store.isUnconfirmed) throw new Error('the page was frozen');
  }
  async function delMany(keys: readonly string[]) {
    await turn('delMany');
    for (const key of keys) values.delete(key);
  }
  return store;
}
