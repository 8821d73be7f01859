import { delMany, get, getMany, keys, promisifyRequest, setMany } from 'idb-keyval';

/** What one transaction changes: values to set, keys to delete, and whole ranges of keys (both ends included). Deleting comes first. */
export interface Changes {
  readonly set: readonly (readonly [key: string, value: unknown])[];
  readonly del?: readonly string[];
  readonly delBetween?: readonly (readonly [first: string, last: string])[];
}

/** Where values are kept by key: the browser's database, or a stand-in for tests. Values are copied in and out. */
export interface KeyStore {
  get(key: string): Promise<unknown>;
  getMany(keys: readonly string[]): Promise<readonly unknown[]>;
  keys(): Promise<readonly string[]>;
  /** The entries whose keys begin so, in the order of the keys. */
  under(prefix: string): Promise<readonly (readonly [key: string, value: unknown])[]>;
  /** Sets all or none. */
  setMany(entries: readonly (readonly [string, unknown])[]): Promise<void>;
  /**
   * Reads values and makes the changes that follow from them in one transaction: all or none, and no other window comes
   * between. `null` changes nothing. `quick` is done as soon as the changes are safe from an end of the browser, `lasting`
   * when they have reached the disk and are safe from a power cut too.
   */
  transact(keys: readonly string[], change: (values: readonly unknown[]) => Changes | null, how?: 'quick' | 'lasting'): Promise<void>;
  delMany(keys: readonly string[]): Promise<void>;
}

const STORE = 'kept';

/** Behind every character of a key, so that it ends a range of keys. */
export const LAST = '\uffff';

/** The database of this browser, on this device. It is opened at the first use; if the browser refuses, every call is rejected with its reason. */
export function deviceStore(name = 'turnwork'): KeyStore {
  const use = lastingStore(name);
  return {
    get: async (key) => get(key, use),
    getMany: async (list) => getMany([...list], use),
    keys: async () => (await keys(use)).map(String),
    under: (prefix) =>
      use('readonly', async (store) => {
        const range = IDBKeyRange.bound(prefix, prefix + LAST);
        const [found, values] = await Promise.all([promisifyRequest(store.getAllKeys(range)), promisifyRequest<unknown[]>(store.getAll(range))]);
        return found.map((key, i) => [String(key), values[i]] as const);
      }),
    setMany: async (entries) => setMany(entries.map(([key, value]) => [key, value]), use),
    transact: (list, change, how = 'lasting') => use('readwrite', (store) => changed(store, list, change), how === 'quick' ? 'relaxed' : 'strict'),
    delMany: async (list) => delMany([...list], use),
  };
}

type LastingStore = <T>(mode: IDBTransactionMode, callback: (store: IDBObjectStore) => T | PromiseLike<T>, durability?: IDBTransactionDurability) => Promise<T>;

/**
 * A store whose writes have reached the disk when they are done, unless they say otherwise (`durability`, Indexed Database
 * API 3.0), and that opens its database again where the browser closed it.
 */
function lastingStore(name: string): LastingStore {
  let opening: Promise<IDBDatabase> | null = null;
  const forget = () => (opening = null);

  async function open(): Promise<IDBDatabase> {
    const request = indexedDB.open(name);
    request.onupgradeneeded = () => request.result.createObjectStore(STORE);
    const database = await promisifyRequest(request);
    database.onclose = forget;
    // Another page may want to clear the database: it must not wait for this one.
    database.onversionchange = () => {
      database.close();
      forget();
    };
    return database;
  }

  async function database(): Promise<IDBDatabase> {
    opening ??= open();
    try {
      return await opening;
    } catch (error) {
      forget();
      throw error;
    }
  }

  return async (mode, callback, durability = 'strict') => {
    const begin = async () => (await database()).transaction(STORE, mode, { durability }).objectStore(STORE);
    let store: IDBObjectStore;
    try {
      store = await begin();
    } catch (error) {
      // A connection that was closed without a word says so here; a new one is opened once.
      if (opening === null || !(error instanceof DOMException) || error.name !== 'InvalidStateError') throw error;
      forget();
      store = await begin();
    }
    return callback(store);
  };
}

function changed(store: IDBObjectStore, list: readonly string[], change: (values: readonly unknown[]) => Changes | null): Promise<void> {
  return new Promise((resolve, reject) => {
    const { transaction } = store;
    let reason: unknown = null;
    const fail = () => reject(reason ?? transaction.error ?? new DOMException('The transaction was called off.', 'AbortError'));
    transaction.oncomplete = () => resolve();
    transaction.onabort = fail;
    transaction.onerror = () => (reason ??= transaction.error);
    const values: unknown[] = [];
    let left = list.length;
    const read = (): void => {
      try {
        const changes = change(values);
        for (const [first, last] of changes?.delBetween ?? []) if (first <= last) store.delete(IDBKeyRange.bound(first, last));
        for (const key of changes?.del ?? []) store.delete(key);
        for (const [key, value] of changes?.set ?? []) store.put(value, key);
      } catch (error) {
        reason = error;
        transaction.abort();
      }
    };
    if (left === 0) return read();
    for (const [i, key] of list.entries()) {
      const request = store.get(key);
      request.onsuccess = () => {
        values[i] = request.result;
        if (--left === 0) read();
      };
    }
  });
}
