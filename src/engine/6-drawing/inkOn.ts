import { wcagContrast } from 'culori';
import type { InkName, Look } from './look.ts';
import { INK_NAMES } from './look.ts';

/** Contrast that a coloured ink must have on its yarn before it is used; else the plain dark or pale ink. WCAG 2.2, 1.4.11: 3 to 1. */
const LEAST = 3;

/** The ink of a symbol on a ground colour: its own, its pale form, or whichever plain ink reads best. */
export function inkOn(look: Look, ink: number, ground: string): string {
  const name: InkName = INK_NAMES[ink] ?? 'rightSide';
  const own = [look.inks[name], look.paleInks[name]];
  const plain = [look.inks.rightSide, look.paleInks.rightSide];
  const best = (inks: readonly string[]): string => inks.reduce((a, b) => (wcagContrast(b, ground) > wcagContrast(a, ground) ? b : a));
  const first = best(own);
  return wcagContrast(first, ground) >= LEAST ? first : best(plain);
}
