import { keepFault } from '../../keep/keepFault.ts';
import type { Taken } from '../../keep/shelf.ts';
import { shelfOfDevice } from './shelfOfDevice.ts';

/** What a page that works on one kept pattern gets: the pattern, or why there is none. */
export type TakenForPage = Taken | { readonly kind: 'trouble'; readonly words: string };

/** Takes the pattern that an address names (`?pattern=`) from this device's shelf. Never rejects. */
export async function takeFromShelf(url: URL): Promise<TakenForPage> {
  try {
    return await shelfOfDevice().take(url.searchParams.get('pattern') ?? '');
  } catch (error) {
    return { kind: 'trouble', words: keepFault(error).words };
  }
}
