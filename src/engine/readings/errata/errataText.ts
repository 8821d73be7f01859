import type { Erratum } from './errata.ts';

/**
 * Errata as plain text for a website or a letter, one a line, in the order of the pattern: `Heel, row 12 (size M): 18 sts, was 17 sts.`
 * Empty for none.
 */
export function errataText(list: readonly Erratum[]): string {
  return list.map((erratum) => `${erratumLine(erratum)}\n`).join('');
}

/** One erratum as a line. */
export function erratumLine({ place, sizes, now, was }: Erratum): string {
  const only = sizes.length === 0 ? '' : ` (${sizes.length > 1 ? 'sizes' : 'size'} ${sizes.join(', ')})`;
  const plain = (text: string): string => text.replace(/\s+/g, ' ').trim().replace(/\.$/, '');
  if (now === null) return `${place}${only}: left out, was: ${plain(was ?? '')}.`;
  if (was === null) return `${place}${only}: new: ${plain(now)}.`;
  // Long sayings are parted so that the eye finds both.
  return plain(was).length + plain(now).length > 60 ? `${place}${only}: ${plain(now)}; was: ${plain(was)}.` : `${place}${only}: ${plain(now)}, was ${plain(was)}.`;
}
