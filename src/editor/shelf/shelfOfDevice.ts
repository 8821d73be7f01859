import { NO_HISTORY } from '../../engine/1-pattern/history.ts';
import type { Pattern } from '../../engine/1-pattern/pattern.ts';
import { rowsFault } from '../../engine/1-pattern/rowsFault.ts';
import { deviceStore } from '../../keep/keyStore.ts';
import { NEVER_KEPT, shelfOf, type Shelf, type ShelfCard } from '../../keep/shelf.ts';
import { pieceSvg } from '../piece/pieceSvg.ts';

/** This window among all that look at the shelf. */
export const WINDOW_TOKEN = crypto.randomUUID();

/** Days for which a pattern that was put away can be brought back. */
export const PUT_AWAY_DAYS = 30;

// One connection for the whole window. Patterns that the device would not keep are held here, so that work can go on.
const store = deviceStore();
const held = new Map<string, Pattern>();

/** The shelf of this device. A pattern that could not be kept is taken from this window. */
export function shelfOfDevice(): Shelf {
  const shelf = shelfOf(store, WINDOW_TOKEN);
  return {
    ...shelf,
    async take(id) {
      const pattern = held.get(id);
      if (!pattern) return shelf.take(id);
      const isKept = await shelf.take(id).catch(() => null);
      return isKept?.kind === 'ok' ? isKept : { kind: 'ok', pattern, history: NO_HISTORY, standing: NEVER_KEPT, isHistoryLost: false, lost: null };
    },
  };
}

/** Holds a pattern in this window that the device would not keep. */
export function holdHere(pattern: Pattern): void {
  held.set(pattern.id, pattern);
}

/**
 * Puts a new pattern on the shelf under an id of its own, which is returned. Where the device keeps nothing it is held in
 * this window, and the bench says why. A pattern of more rows than can be worked is refused, in words.
 */
export async function addToShelf(shelf: Shelf, pattern: Pattern): Promise<{ readonly kind: 'added'; readonly id: string } | { readonly kind: 'refused'; readonly words: string }> {
  const rows = rowsFault(pattern);
  if (rows) return { kind: 'refused', words: `This pattern can’t be worked: it has ${rows.found}, expected ${rows.expected}.` };
  const own: Pattern = { ...pattern, id: crypto.randomUUID() };
  try {
    await shelf.put({ pattern: own, history: NO_HISTORY, pictureSvg: pieceSvg(own), at: Date.now() }, NEVER_KEPT);
  } catch {
    holdHere(own);
  }
  return { kind: 'added', id: own.id };
}

/** Lists the shelf, and removes for good what was put away longer ago than `PUT_AWAY_DAYS`. */
export async function clearPutAway(shelf: Shelf, now: number): ReturnType<Shelf['list']> {
  const listed = await shelf.list();
  const isOver = ({ putAwayAt }: ShelfCard) => putAwayAt !== null && now - putAwayAt > PUT_AWAY_DAYS * 86_400_000;
  for (const card of listed.putAway.filter(isOver)) await shelf.remove(card.id);
  return { ...listed, putAway: listed.putAway.filter((card) => !isOver(card)) };
}
