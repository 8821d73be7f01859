import { clearPutAway, shelfOfDevice } from '$editor/shelf/shelfOfDevice.ts';
import { keepFault } from '$keep/keepFault.ts';
import type { ShelfCard } from '$keep/shelf.ts';

interface ShelfData {
  readonly cards: readonly ShelfCard[];
  readonly putAway: readonly ShelfCard[];
  readonly unreadable: number;
  readonly trouble: string | null;
}

export async function load(): Promise<ShelfData> {
  try {
    const shelf = shelfOfDevice();
    const { cards, putAway, unreadable } = await clearPutAway(shelf, Date.now());
    return { cards, putAway, unreadable: unreadable.length, trouble: null };
  } catch (error) {
    return { cards: [], putAway: [], unreadable: 0, trouble: keepFault(error).words };
  }
}
