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
  women: [
    { from: 220, ballGirth: 216, heelDiagonal: 290, ankle: 204, calf: 351 },
    { from: 230, ballGirth: 222, heelDiagonal: 300, ankle: 211, calf: 365 },
    { from: 240, ballGirth: 227, heelDiagonal: 308, ankle: 215, calf: 371 },
    { from: 250, ballGirth: 233, heelDiagonal: 318, ankle: 220, calf: 380 },
    { from: 260, ballGirth: 238, heelDiagonal: 329, ankle: 225, calf: 391 },
    { from: 270, ballGirth: 244, heelDiagonal: 338, ankle: 231, calf: 403 },
  ],
  men: [
    { from: 240, ballGirth: 238, heelDiagonal: 319, ankle: 215, calf: 369 },
    { from: 250, ballGirth: 242, heelDiagonal: 327, ankle: 221, calf: 378 },
    { from: 260, ballGirth: 248, heelDiagonal: 337, ankle: 226, calf: 387 },
    { from: 270, ballGirth: 254, heelDiagonal: 347, ankle: 232, calf: 396 },
    { from: 280, ballGirth: 259, heelDiagonal: 356, ankle: 235, calf: 401 },
    { from: 290, ballGirth: 266, heelDiagonal: 366, ankle: 242, calf: 414 },
    { from: 300, ballGirth: 272, heelDiagonal: 377, ankle: 247, calf: 416 },
  ],
};

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
