/**
 * Feet and lower legs of adults, from the 2012 Anthropometric Survey of U.S. Army Personnel (ANSUR II, Natick/TR-15/007,
 * approved for public release): 4,082 men and 1,986 women, statistics reckoned from the public data files. Soldiers of
 * about 17 to 58 years are not the general population. Children: see `CHILD_FEET`.
 */
export const ANSUR_SOURCE = 'ANSUR II (2012), 4,082 men and 1,986 women; soldiers, not the general population';

/** Mean and standard deviation, mm. */
export interface Spread {
  readonly mean: number;
  readonly sd: number;
  /** 5th and 95th percentile where known. */
  readonly p5?: number;
  readonly p95?: number;
}

export type FootMeasure = 'footLength' | 'ballGirth' | 'heelDiagonal' | 'ankle' | 'calf';

/** Measures of adults in mm. The heel diagonal is the girth over heel and front of the ankle, which an opening must pass. */
export const ADULT_FEET: Readonly<Record<'women' | 'men', Readonly<Record<FootMeasure, Spread>>>> = {
  men: {
    footLength: { mean: 271.2, sd: 13.1, p5: 250, p95: 293 },
    ballGirth: { mean: 252, sd: 12.9, p5: 232, p95: 273 },
    heelDiagonal: { mean: 343.5, sd: 16.6, p5: 317, p95: 372 },
    ankle: { mean: 229.3, sd: 14.6, p5: 206, p95: 254 },
    calf: { mean: 392.3, sd: 29.7, p5: 346, p95: 443 },
  },
  women: {
    footLength: { mean: 246.3, sd: 12.4, p5: 226, p95: 268 },
    ballGirth: { mean: 228.1, sd: 11.8, p5: 209, p95: 248 },
    heelDiagonal: { mean: 310.3, sd: 15.3, p5: 287, p95: 337 },
    ankle: { mean: 215.7, sd: 14.9, p5: 193, p95: 242 },
    calf: { mean: 373.3, sd: 28.5, p5: 328, p95: 423 },
  },
};

/** Mean girths of a band of foot lengths, mm; `from` is the band's lower end, each 10 mm wide. */
export interface FootBand {
  readonly from: number;
  readonly ballGirth: number;
  readonly heelDiagonal: number;
  readonly ankle: number;
  readonly calf: number;
}

/** Mean girths by foot length (ANSUR II, as above). */
export const FOOT_BANDS: Readonly<Record<'women' | 'men', readonly FootBand[]>> = {
  women: bands([
    [220, 216, 290, 204, 351], [230, 222, 300, 211, 365], [240, 227, 308, 215, 371], [250, 233, 318, 220, 380],
    [260, 238, 329, 225, 391], [270, 244, 338, 231, 403],
  ]),
  men: bands([
    [240, 238, 319, 215, 369], [250, 242, 327, 221, 378], [260, 248, 337, 226, 387], [270, 254, 347, 232, 396],
    [280, 259, 356, 235, 401], [290, 266, 366, 242, 414], [300, 272, 377, 247, 416],
  ]),
};

/** Bands of `from`, ball girth, heel diagonal, ankle and calf. */
function bands(rows: readonly (readonly [from: number, ballGirth: number, heelDiagonal: number, ankle: number, calf: number])[]): readonly FootBand[] {
  return rows.map(([from, ballGirth, heelDiagonal, ankle, calf]) => ({ from, ballGirth, heelDiagonal, ankle, calf }));
}

/** Means of ratios (ANSUR II): men and women differ by less than a tenth of their standard deviation in the first two. */
export const FOOT_RATIOS = {
  /** Ball girth to foot length: 0.930 ± 0.042 men, 0.927 ± 0.042 women. */
  ballToLength: 0.93,
  /** Heel diagonal to ball girth: 1.364 ± 0.049 men, 1.361 ± 0.050 women. */
  diagonalToBall: 1.36,
  /** Ankle to ball girth: 0.910 men, 0.946 women. */
  ankleToBall: { men: 0.91, women: 0.946 },
  /** Calf to ball girth: 1.557 men, 1.637 women. */
  calfToBall: { men: 1.557, women: 1.637 },
  /** Height of the outer ankle bone to foot length: 0.269 men, 0.255 women; their middle. */
  ankleHeightToLength: 0.262,
} as const;

/** Foot length of an age, cm, from a retail table: sizes of children vary, measure the foot. */
export interface ChildFoot {
  readonly age: string;
  readonly leastCm: number;
  readonly mostCm: number;
}

/** Where children's foot lengths come from. */
export const CHILD_FEET_SOURCE = 'a children’s shoe maker’s published table; measured means of 3 to 5 years (PMC9139892) agree';

/** Foot lengths by age (`CHILD_FEET_SOURCE`). */
export const CHILD_FEET: readonly ChildFoot[] = [
  { age: '0–6 months', leastCm: 9, mostCm: 10 },
  { age: '6–12 months', leastCm: 10, mostCm: 12 },
  { age: '12–18 months', leastCm: 12, mostCm: 13 },
  { age: '18–24 months', leastCm: 13, mostCm: 14 },
  { age: '2–3 years', leastCm: 14, mostCm: 15 },
  { age: '3–4 years', leastCm: 15, mostCm: 16 },
  { age: '4–5 years', leastCm: 16, mostCm: 17 },
  { age: '5–6 years', leastCm: 17, mostCm: 18 },
];
