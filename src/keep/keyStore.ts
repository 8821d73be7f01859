import { createStore, delMany, get, getMany, keys, setMany, update } from 'idb-keyval';

/** Where values are kept by key: the browser's database, or a stand-in for tests. Values are copied in and out. */
export interface KeyStore {
  get(key: string): Promise<unknown>;
  getMany(keys: readonly string[]): Promise<readonly unknown[]>;
  keys(): Promise<readonly string[]>;
  /** Sets all or none. */
  setMany(entries: readonly (readonly [string, unknown])[]): Promise<void>;
  /** Reads a value and puts another in its place in one transaction, so that no other window comes between. */
  update(key: string, change: (old: unknown) => unknown): Promise<void>;
  delMany(keys: readonly string[]): Promise<void>;
}

/** The database of this browser, on this device. It is opened at the first use; if the browser refuses, every call is rejected with its reason. */
export function deviceStore(name = 'turnwork'): KeyStore {
  let store: ReturnType<typeof createStore> | null = null;
  const opened = () => (store ??= createStore(name, 'kept'));
  return {
    get: async (key) => get(key, opened()),
    getMany: async (list) => getMany([...list], opened()),
    keys: async () => (await keys(opened())).map(String),
    setMany: async (entries) => setMany(entries.map(([key, value]) => [key, value]), opened()),
    update: async (key, change) => update(key, change, opened()),
    delMany: async (list) => delMany([...list], opened()),
  };
}
