import type { Origin } from '../../2-construct/recipes/origin.ts';
import { Reckoning } from '../../2-construct/recipes/reckoning.ts';
import { ANSUR_SOURCE, CHILD_FEET, FOOT_BANDS, FOOT_RATIOS } from '../../craft/feet.ts';
import { childShoeSize, shoeSize } from '../../craft/shoeSizes.ts';

/** Feet of a size, cm, unworn: ease is the designer's. */
export interface SockSize {
  readonly name: string;
  readonly footLengthCm: number;
  readonly footGirthCm: number;
  readonly heelDiagonalCm: number;
  /** Null where no open data was found (children). */
  readonly ankleCm: number | null;
  readonly calfCm: number | null;
  /** About these shoe sizes: charts of makers differ by one either way (`SHOE_SIZE_WARNING`). */
  readonly shoes: { readonly eu: number | null; readonly usMen: number | null; readonly usWomen: number | null };
}

/**
 * Sizes of feet from open data: bands of 1 cm of adults' foot lengths with the mean girths of those who have them (ANSUR II,
 * soldiers), or children's foot lengths by age with girths by the adults' ratios, as no open data on children's girths was found.
 */
export function sockSizes(who: 'women' | 'men' | 'children'): readonly SockSize[] {
  if (who === 'children') {
    return CHILD_FEET.map(({ age, leastCm, mostCm }) => {
      const length = (leastCm + mostCm) / 2;
      const foot = footFrom(length);
      return { name: age, footLengthCm: length, footGirthCm: tenth(foot.footGirthCm.value), heelDiagonalCm: tenth(foot.heelDiagonalCm.value), ankleCm: null, calfCm: null, shoes: { eu: childShoeSize(length * 10), usMen: null, usWomen: null } };
    });
  }
  return FOOT_BANDS[who].map(({ from, ballGirth, heelDiagonal, ankle, calf }) => {
    const mm = from + 5;
    return {
      name: `${from / 10}–${from / 10 + 1} cm`, footLengthCm: mm / 10, footGirthCm: ballGirth / 10, heelDiagonalCm: heelDiagonal / 10, ankleCm: ankle / 10, calfCm: calf / 10,
      shoes: { eu: Math.round(shoeSize('eu', mm)), usMen: who === 'men' ? Math.round(shoeSize('usMen', mm)) : null, usWomen: who === 'women' ? Math.round(shoeSize('usWomen', mm)) : null },
    };
  });
}

/** Girths of a foot of any length in cm by the ratios of ANSUR II, each with what it comes from. */
export function footFrom(lengthCm: number): { readonly footGirthCm: Origin; readonly heelDiagonalCm: Origin } {
  if (!(lengthCm > 0)) throw new RangeError(`a foot of ${lengthCm} cm, expected more than 0`);
  const r = new Reckoning(0);
  const length = r.given('footLength', 'length of the foot', 'cm', lengthCm, 'measured');
  const toGirth = r.table('ballToLength', 'girth of the foot to its length', 'share', FOOT_RATIOS.ballToLength, ANSUR_SOURCE);
  const footGirthCm = r.reckon({ key: 'footGirth', says: 'girth of the foot', unit: 'cm', formula: 'length × ratio', inputs: [length, toGirth], exact: lengthCm * FOOT_RATIOS.ballToLength });
  const toDiagonal = r.table('diagonalToBall', 'girth over heel and ankle to girth of the foot', 'share', FOOT_RATIOS.diagonalToBall, ANSUR_SOURCE);
  const heelDiagonalCm = r.reckon({ key: 'heelDiagonal', says: 'girth over heel and ankle', unit: 'cm', formula: 'girth of the foot × ratio', inputs: [footGirthCm, toDiagonal], exact: footGirthCm.value * FOOT_RATIOS.diagonalToBall });
  return { footGirthCm, heelDiagonalCm };
}

function tenth(cm: number): number {
  return Math.round(cm * 10) / 10;
}
