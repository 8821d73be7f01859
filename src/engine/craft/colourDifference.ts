import { converter, differenceCiede2000, wcagContrast, type Lab65 } from 'culori';

const toLab = converter('lab65');
const difference = differenceCiede2000();

/** CIE L*a*b* of an sRGB colour, white D65: what `colourDifference` compares. */
export type Lab = Pick<Lab65, 'l' | 'a' | 'b'>;

/** L*a*b* of a colour given as `#rrggbb`. A text that is no colour is a programmer's slip. */
export function labOf(colour: string): Lab {
  const lab = toLab(colour);
  if (!lab) throw new RangeError(`"${colour}" is no colour`);
  return { l: lab.l, a: lab.a, b: lab.b };
}

/**
 * CIEDE2000 between two colours: 0 for the same, about 1 where an eye side by side begins to see a difference, 100 between
 * black and white. Formula: Sharma, Wu, Dalal, Color Res. Appl. 30(1), 2005, as culori has it (all 34 published pairs).
 */
export function colourDifference(one: Lab, other: Lab): number {
  return difference({ mode: 'lab65', ...one }, { mode: 'lab65', ...other });
}

/** Contrast of two colours (`#rrggbb`) in light and dark, 1 to 21: WCAG 2.2, (L1 + 0.05) / (L2 + 0.05). */
export function toneContrast(one: string, other: string): number {
  return wcagContrast(one, other);
}
