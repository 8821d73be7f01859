import { dequal } from 'dequal';
import { NO_HISTORY } from '../engine/1-pattern/history.ts';
import type { Pattern } from '../engine/1-pattern/pattern.ts';
import type { Backup } from './backup.ts';
import type { Earlier } from './earlier.ts';
import type { OwnMotifs } from './ownMotifs.ts';
import { NEVER_KEPT, type Shelf } from './shelf.ts';

/** What bringing a backup back came to. */
export interface Restored {
  /** Patterns that were put on the shelf under their own id … */
  readonly back: number;
  /** … and those that became copies, because the shelf has another state of them. */
  readonly copies: number;
  /** Patterns that are on the shelf just as they are in the backup. */
  readonly there: number;
  /** Earlier versions of all of these that were not here. */
  readonly earlier: number;
  readonly motifs: number;
}

/** What bringing back needs. */
export interface RestoreParts {
  readonly shelf: Shelf;
  readonly earlier: Earlier;
  readonly own: OwnMotifs;
  readonly newId: () => string;
  readonly picture: (pattern: Pattern) => string;
}

/**
 * Brings the patterns and motifs of a backup back, with their earlier versions. Nothing on the shelf is changed: a pattern whose
 * id is there in another state, put away or not, comes back as a copy; one that is there just the same gets the earlier versions
 * that it hasn't. Rejects where the device keeps nothing; what was brought back until then stays.
 */
export async function restoreBackup({ patterns, motifs }: Backup, { shelf, earlier: versions, own, newId, picture }: RestoreParts): Promise<Restored> {
  const tally = { back: 0, copies: 0, there: 0, earlier: 0, motifs: 0 };
  for (const { pattern, history, createdAt, keptAt, putAwayAt, earlier } of patterns) {
    const taken = await shelf.take(pattern.id);
    const isThere = taken.kind === 'ok' && dequal(taken.pattern, pattern);
    if (isThere) {
      tally.there++;
      tally.earlier += await versions.putBack(pattern.id, earlier);
      continue;
    }
    const isFree = taken.kind === 'missing';
    const placed = isFree ? pattern : { ...pattern, id: newId(), title: `${pattern.title || 'Untitled'}, restored` };
    await shelf.put({ pattern: placed, history: history ?? NO_HISTORY, pictureSvg: drawn(picture, placed), at: keptAt }, { ...NEVER_KEPT, createdAt });
    tally.earlier += await versions.putBack(placed.id, earlier);
    if (isFree && putAwayAt !== null) await shelf.putAway(placed.id, putAwayAt);
    tally[isFree ? 'back' : 'copies']++;
  }
  const known = await own.list();
  for (const { motif, colours, keptAt } of motifs) {
    const same = known.find((each) => each.motif.id === motif.id);
    if (same && dequal(same.motif, motif)) continue;
    await own.putBack({ motif: same ? { ...motif, id: newId() } : motif, colours, keptAt });
    tally.motifs++;
  }
  return tally;
}

/** A drawing that can't be made must not stop what is brought back. */
function drawn(picture: (pattern: Pattern) => string, pattern: Pattern): string | null {
  try {
    return picture(pattern);
  } catch {
    return null;
  }
}

/** What bringing back came to, as a sentence. */
export function restoredWords({ back, copies, there, earlier, motifs }: Restored): string {
  const patterns = (many: number) => `${many} ${many === 1 ? 'pattern' : 'patterns'}`;
  const parts = [
    back > 0 ? `${patterns(back)} brought back` : '',
    copies > 0 ? `${patterns(copies)} brought back as ${copies === 1 ? 'a copy' : 'copies'}, because the shelf has ${copies === 1 ? 'it' : 'them'} in another state` : '',
    there > 0 ? `${patterns(there)} on the shelf already, just the same` : '',
    earlier > 0 ? `${earlier} earlier ${earlier === 1 ? 'version' : 'versions'} brought back` : '',
    motifs > 0 ? `${motifs} of your own motifs brought back` : '',
  ].filter((part) => part !== '');
  return parts.length > 0 ? `${parts.join('; ')}. Nothing that was here is changed.` : 'There was nothing in it to bring back.';
}
