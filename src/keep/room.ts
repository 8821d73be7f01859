/** What the browser says about the room for this tool on the device. */
export interface Room {
  /** Whether the browser promises not to clear it on its own when the device runs short. */
  readonly isLasting: boolean;
  readonly usedBytes: number | null;
  readonly freeBytes: number | null;
}

type Storage = Partial<Pick<StorageManager, 'persist' | 'persisted' | 'estimate'>> | undefined;

/** Asks the browser to keep what is here for good, and how much room there is. Some browsers ask the maker. Never rejects; what a browser won't say is null. */
export function askForRoom(storage: Storage = navigator.storage): Promise<Room> {
  return roomOf(storage, async () => ((await storage?.persisted?.()) || (await storage?.persist?.())) ?? false);
}

/** As `askForRoom`, without asking for anything. */
export function lookAtRoom(storage: Storage = navigator.storage): Promise<Room> {
  return roomOf(storage, async () => (await storage?.persisted?.()) ?? false);
}

async function roomOf(storage: Storage, asked: () => Promise<boolean>): Promise<Room> {
  const isLasting = await quietly(asked, false);
  const estimate = await quietly(async () => (await storage?.estimate?.()) ?? {}, {});
  const { usage, quota } = estimate as StorageEstimate;
  return { isLasting, usedBytes: usage ?? null, freeBytes: quota === undefined || usage === undefined ? null : Math.max(quota - usage, 0) };
}

async function quietly<T>(ask: () => Promise<T>, otherwise: T): Promise<T> {
  try {
    return await ask();
  } catch {
    return otherwise;
  }
}

/** What the browser promises, and the room there is, as a sentence or two. */
export function roomWords({ isLasting, usedBytes, freeBytes }: Room): string {
  const promise = isLasting ? 'The browser keeps this shelf until you clear it yourself.' : 'The browser may clear this shelf by itself when the device runs short of room, so keep a backup.';
  if (usedBytes === null) return promise;
  return `${promise} It takes ${sizeWords(usedBytes)}${freeBytes === null ? '' : `; there is room for ${sizeWords(freeBytes)} more`}.`;
}

function sizeWords(bytes: number): string {
  const [unit, size] = bytes >= 1e9 ? ['GB', bytes / 1e9] : bytes >= 1e6 ? ['MB', bytes / 1e6] : ['kB', bytes / 1e3];
  return `${size < 10 ? size.toFixed(1).replace(/\.0$/, '') : Math.round(size)} ${unit}`;
}
