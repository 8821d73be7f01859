import { toneContrast } from '../../engine/craft/colourDifference.ts';

/** Ink for a mark on a cell: dark or pale, whichever stands out more; the page's own ink on a clear cell. */
export function inkOnColour(colour: string | null): string {
  if (colour === null) return 'var(--ink)';
  return toneContrast(colour, '#000000') >= toneContrast(colour, '#ffffff') ? '#1b1713' : '#ffffff';
}
