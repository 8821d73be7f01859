/** Shoe size systems whose formulas are published. */
export type ShoeSystem = 'eu' | 'usMen' | 'usWomen';

/** What every list of shoe sizes must say. */
export const SHOE_SIZE_WARNING = 'Charts of shoe makers differ by about one size either way: give the foot length first.';

/** Where the formulas come from. */
export const SHOE_SIZE_SOURCES: Readonly<Record<ShoeSystem, string>> = {
  eu: 'Paris points of 2/3 cm over the foot length and an allowance of 10 to 15 mm (published size guides)',
  usMen: 'Brannock: size 1 is a foot of 7⅔ in, one third of an inch a size',
  usWomen: 'Brannock: one size above the men’s; the label “women” is from memory',
};

const MM_PER_INCH = 25.4;
const BRANNOCK = { usMen: 22, usWomen: 21 } as const;

/**
 * The shoe size of a foot length in mm, unrounded. EU: 1.5 × (length in cm + allowance), allowance 10 to 15 mm; US: three
 * times the length in inches, less 22 (men) or 21 (women). Refuses a length that is not above 0.
 */
export function shoeSize(system: ShoeSystem, footMm: number, allowanceMm = 15): number {
  if (!(footMm > 0)) throw new RangeError(`a foot of ${footMm} mm, expected more than 0`);
  if (system === 'eu') return (1.5 * (footMm + allowanceMm)) / 10;
  return (3 * footMm) / MM_PER_INCH - BRANNOCK[system];
}

/** The foot length in mm that a shoe size stands for: the inverse of `shoeSize`. */
export function footOfShoeSize(system: ShoeSystem, size: number, allowanceMm = 15): number {
  if (system === 'eu') return (size * 10) / 1.5 - allowanceMm;
  return ((size + BRANNOCK[system]) * MM_PER_INCH) / 3;
}

/** Children's sizes by foot length in mm (a published table of the GOST kind). */
export const CHILD_SHOES: readonly { readonly footMm: number; readonly size: number }[] = [
  [95, 16], [105, 17], [110, 18], [115, 19], [125, 20], [130, 21], [135, 22], [145, 23], [150, 24], [155, 25], [165, 26], [170, 27], [175, 28],
  [185, 29], [190, 30], [195, 31], [205, 32], [210, 33], [215, 34], [225, 35],
].map(([footMm, size]) => ({ footMm: footMm!, size: size! }));

/** The child's size whose foot length is the first that is not shorter; null beyond the table. */
export function childShoeSize(footMm: number): number | null {
  return CHILD_SHOES.find((row) => row.footMm >= footMm)?.size ?? null;
}
