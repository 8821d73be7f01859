import { NO_HISTORY } from '../../engine/1-pattern/history.ts';
import type { Pattern } from '../../engine/1-pattern/pattern.ts';
import { deviceStore } from '../../keep/keyStore.ts';
import { NEVER_KEPT, shelfOf, type Shelf } from '../../keep/shelf.ts';
import { pieceSvg } from '../piece/pieceSvg.ts';

/** This window among all that look at the shelf. */
const TOKEN = crypto.randomUUID();

/** The shelf of this device. */
export function shelfOfDevice(): Shelf {
  return shelfOf(deviceStore(), TOKEN);
}

/** Puts a new pattern on the shelf under an id of its own, which is returned. Rejects where the device keeps nothing. */
export async function addToShelf(shelf: Shelf, pattern: Pattern): Promise<string> {
  const own: Pattern = { ...pattern, id: crypto.randomUUID() };
  await shelf.put({ pattern: own, history: NO_HISTORY, pictureSvg: pieceSvg(own), at: Date.now() }, NEVER_KEPT);
  return own.id;
}
