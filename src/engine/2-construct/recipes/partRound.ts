import type { HeelSettings } from './settings.ts';

/**
 * Stitches from where the foot's rounds begin to the side of the foot, where the toe begins: 0 for a heel on half of the
 * round. The foot begins at the left side of a short-row heel, at the right side of the turn's middle below a flap, and at the
 * right side of an opening. Half stitches are left aside.
 */
export function partRound(kind: HeelSettings['kind'], around: number, heel: number, left: number): number {
  const narrower = Math.trunc((around / 2 - heel) / 2);
  const part = kind === 'shortRows' ? narrower : kind === 'flap' ? heel - left + narrower : -narrower;
  return ((part % around) + around) % around;
}
