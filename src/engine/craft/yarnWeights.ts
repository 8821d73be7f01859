/** A span of published values; `most` null where the table says "and larger". */
export interface Span {
  readonly least: number;
  readonly most: number | null;
}

/** A class of the yarn weight system. */
export interface YarnWeight {
  readonly number: 0 | 1 | 2 | 3 | 4 | 5 | 6 | 7;
  readonly name: string;
  /** The stitch that the published gauge is counted in: class 0 counts double crochets in two prints of the table. */
  readonly gaugeStitch: 'sc' | 'dc';
  /** Stitches over 10 cm (4 in). */
  readonly stitches: Span;
  readonly hookMm: Span;
  /** Metres of 100 g: the span that the published tables give together. Not part of the weight system; fibres differ. */
  readonly metresPer100g: Span;
}

/** Where the classes and their gauges come from. */
export const YARN_WEIGHT_SOURCE = 'Craft Yarn Council yarn weight system, crochet columns, as reprinted in Crochet World, October 2018, p. 64';

/** Where lengths per weight come from. */
export const YARN_LENGTH_SOURCE = 'two published tables of metres per 100 g (a dyer’s and a shop’s) and the yards per pound that a spinning magazine adds to the weight system; fibres differ';

/**
 * The eight classes with gauge and hook (`YARN_WEIGHT_SOURCE`) and metres per 100 g (`YARN_LENGTH_SOURCE`: the least and the
 * greatest number of the three). Classes overlap: 12 to 14 stitches are both 3 and 4, 11 both 4 and 5.
 */
export const YARN_WEIGHTS: readonly YarnWeight[] = [
  { number: 0, name: 'Lace', gaugeStitch: 'dc', stitches: { least: 32, most: 42 }, hookMm: { least: 1.4, most: 2.25 }, metresPer100g: { least: 420, most: 800 } },
  { number: 1, name: 'Super Fine', gaugeStitch: 'sc', stitches: { least: 21, most: 32 }, hookMm: { least: 2.25, most: 3.5 }, metresPer100g: { least: 350, most: 600 } },
  { number: 2, name: 'Fine', gaugeStitch: 'sc', stitches: { least: 16, most: 20 }, hookMm: { least: 3.5, most: 4.5 }, metresPer100g: { least: 242, most: 400 } },
  { number: 3, name: 'Light', gaugeStitch: 'sc', stitches: { least: 12, most: 17 }, hookMm: { least: 4.5, most: 5.5 }, metresPer100g: { least: 182, most: 250 } },
  { number: 4, name: 'Medium', gaugeStitch: 'sc', stitches: { least: 11, most: 14 }, hookMm: { least: 5.5, most: 6.5 }, metresPer100g: { least: 120, most: 200 } },
  { number: 5, name: 'Bulky', gaugeStitch: 'sc', stitches: { least: 8, most: 11 }, hookMm: { least: 6.5, most: 9 }, metresPer100g: { least: 81, most: 130 } },
  { number: 6, name: 'Super Bulky', gaugeStitch: 'sc', stitches: { least: 6, most: 9 }, hookMm: { least: 9, most: 16 }, metresPer100g: { least: 40, most: 100 } },
  { number: 7, name: 'Jumbo', gaugeStitch: 'sc', stitches: { least: 1, most: 5 }, hookMm: { least: 16, most: null }, metresPer100g: { least: 20, most: 40 } },
];

/** Metres of 100 g for yards of a pound: 91.44 cm a yard, 453.59237 g a pound. */
export function metresPer100gOfYardsPerPound(yards: number): number {
  return (yards * 0.9144 * 100) / 453.59237;
}

/** Whether a value lies in a published span. */
export function inSpan(value: number, span: Span): boolean {
  return value >= span.least && (span.most === null || value <= span.most);
}

/** The classes whose published gauge a gauge in single crochet falls into: none, one, or two where they overlap. Halves are rounded to whole stitches as labels print them. */
export function weightsOfGauge(stitchesPer10Cm: number): readonly YarnWeight[] {
  const whole = Math.round(stitchesPer10Cm);
  return YARN_WEIGHTS.filter((weight) => weight.gaugeStitch === 'sc' && inSpan(whole, weight.stitches));
}
