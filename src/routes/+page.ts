import { shelfOfDevice } from '$editor/shelf/shelfOfDevice.ts';
import { keepFault } from '$keep/keepFault.ts';
import type { ShelfCard } from '$keep/shelf.ts';

interface ShelfData {
  readonly cards: readonly ShelfCard[];
  readonly unreadable: number;
  readonly trouble: string | null;
}

export async function load(): Promise<ShelfData> {
  try {
    const { cards, unreadable } = await shelfOfDevice().list();
    return { cards, unreadable: unreadable.length, trouble: null };
  } catch (error) {
    return { cards: [], unreadable: 0, trouble: keepFault(error).words };
  }
}
