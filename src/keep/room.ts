/** What the browser says about the room for this tool on the device. */
export interface Room {
  /** Whether the browser promises not to clear it on its own when the device runs short. */
  readonly isLasting: boolean;
  readonly usedBytes: number | null;
  readonly freeBytes: number | null;
}

/** Asks the browser to keep what is here for good, and how much room there is. Never rejects; what a browser won't say is null. */
export async function askForRoom(storage: Partial<Pick<StorageManager, 'persist' | 'persisted' | 'estimate'>> = navigator.storage): Promise<Room> {
  const isLasting = await quietly(async () => ((await storage?.persisted?.()) || (await storage?.persist?.())) ?? false, false);
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
