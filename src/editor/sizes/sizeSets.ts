import type { MeasureName } from '../../engine/1-pattern/pieceFacts.ts';
import { ANSUR_SOURCE, CHILD_FEET, CHILD_FEET_SOURCE, FOOT_BANDS, FOOT_RATIOS } from '../../engine/craft/feet.ts';

/** A size of published measurements, in cm. */
export interface SetSize {
  /** Name that the size gets in the pattern. */
  readonly name: string;
  /** As it stands in the list of choices. */
  readonly says: string;
  readonly cm: Readonly<Partial<Record<MeasureName, number>>>;
}

/** Sizes of one source. */
export interface SizeSet {
  readonly id: 'women' | 'men' | 'children';
  readonly title: string;
  readonly source: string;
  readonly sizes: readonly SetSize[];
}

const BAND_MM = 10;

/** Means of the band's feet; the length is the middle of the band. */
function adults(id: 'women' | 'men'): SizeSet {
  return {
    id, title: `${id === 'women' ? 'Women' : 'Men'}, by the length of the foot`, source: ANSUR_SOURCE,
    sizes: FOOT_BANDS[id].map(({ from, ballGirth, heelDiagonal, ankle, calf }) => {
      const name = `${from / 10}–${(from + BAND_MM) / 10} cm`;
      return { name, says: name, cm: { footLength: (from + BAND_MM / 2) / 10, footGirth: ballGirth / 10, heelDiagonal: heelDiagonal / 10, ankle: ankle / 10, calf: calf / 10 } };
    }),
  };
}

const CHILDREN: SizeSet = {
  id: 'children', title: 'Children, by age', source: `${CHILD_FEET_SOURCE}; girths by the ratio of adults (${FOOT_RATIOS.ballToLength} of the length): measure the foot`,
  sizes: CHILD_FEET.map(({ age, leastCm, mostCm }) => {
    const footLength = (leastCm + mostCm) / 2;
    return { name: age, says: `${age} (${leastCm}–${mostCm} cm)`, cm: { footLength, footGirth: Number((footLength * FOOT_RATIOS.ballToLength).toFixed(1)) } };
  }),
};

/** The sets of sizes that can be taken: feet and lower legs. */
export const SIZE_SETS: readonly SizeSet[] = [adults('women'), adults('men'), CHILDREN];
