import type { KeepState } from '../../keep/keeper.ts';

/** When and where the pattern was last kept, as the heading says it. */
export function keptWords({ status, keptAt, fault }: KeepState): string {
  const time = keptAt === null ? null : new Date(keptAt).toLocaleTimeString('en-GB', { hour: '2-digit', minute: '2-digit' });
  switch (status) {
    case 'kept':
      return time === null ? 'Nothing changed yet' : `Kept on this device · ${time}`;
    case 'waiting':
    case 'keeping':
      return 'Keeping on this device …';
    case 'failed':
      return fault?.words ?? 'The last changes could not be kept.';
    case 'overtaken':
      return 'Not kept: another window has a newer copy';
  }
}
