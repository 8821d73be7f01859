import type { DeskState } from '../../keep/desk.ts';

/** When and where the pattern was last kept, as the heading says it. */
export function keptWords({ status, keptAt, fault, unkept, pen }: DeskState): string {
  if (pen === 'theirs' && status !== 'overtaken') return 'Another window works on this';
  switch (status) {
    case 'kept':
      return keptAt === null ? 'Nothing changed yet' : `Kept on this device · ${clockTime(keptAt)}`;
    case 'waiting':
    case 'keeping':
      return 'Keeping on this device …';
    case 'failed':
      return `Not kept${unkept ? ` since ${clockTime(unkept.since)}` : ''}: ${fault?.brief ?? 'storage failed'}`;
    case 'overtaken':
      return 'Not kept: another window has a newer copy';
  }
}

/** What is kept and where, since when it isn't, and why: for a pattern whose changes could not be kept. */
export function faultWords({ keptAt, unkept, fault }: Pick<DeskState, 'keptAt' | 'unkept' | 'fault'>): string {
  const kept = keptAt === null ? 'Nothing of this pattern is kept on this device: it is only in this window.' : `This device has the pattern as it was at ${clockTime(keptAt)}.`;
  const since = unkept && keptAt !== null ? ` What you changed since ${clockTime(unkept.since)} is only in this window.` : '';
  return `${kept}${since} ${fault?.words ?? ''} Work on as you like: it is kept as soon as it can be.`;
}

/** The time of day, in the way of the reader's own browser. */
export function clockTime(at: number): string {
  return new Date(at).toLocaleTimeString(undefined, { hour: '2-digit', minute: '2-digit' });
}
