import type { Feature, Wearer } from '../craft/cautions.ts';
import type { Gauge } from './pattern.ts';

/** How the stitches of a swatch were worked; each has a gauge of its own. */
export const SWATCH_TECHNIQUES = ['plain', 'backLoops', 'posts', 'carried'] as const;

export type SwatchTechnique = (typeof SWATCH_TECHNIQUES)[number];

/** A swatch as it was counted and measured: fractions are kept. */
export interface Swatch {
  readonly id: string;
  readonly stitch: Gauge['stitch'];
  readonly technique: SwatchTechnique;
  /** Counted after washing, as the piece will be. */
  readonly washed: boolean;
  readonly stitches: number;
  readonly widthCm: number;
  readonly rows: number;
  readonly heightCm: number;
  readonly hookMm: number | null;
  /** Class of the yarn weight system, 0 to 7. */
  readonly weight: number | null;
  /** Width when stretched as far as it comfortably goes; null if not tried. */
  readonly stretchedCm: number | null;
  /** Yarn letter; null: any. */
  readonly yarn: string | null;
  /** What the whole swatch weighs and, where measured, the length of yarn in it; its tails cut off. */
  readonly grams: number | null;
  readonly metres: number | null;
}

/** What can be measured on the body or on the thing. `legLength`: edge of the cuff to where the heel begins. */
export const MEASURE_NAMES = ['footLength', 'footGirth', 'heelDiagonal', 'ankle', 'calf', 'legLength', 'width', 'topWidth', 'height', 'girth', 'endGirth', 'across', 'length'] as const;

export type MeasureName = (typeof MEASURE_NAMES)[number];

/** A measurement in every size with its ease: finished = measured × (1 + percent / 100) + cm. Negative ease stretches. */
export interface Measure {
  readonly name: MeasureName;
  /** One a size; null where a size has none. */
  readonly cm: readonly (number | null)[];
  readonly easePercent: number;
  readonly easeCm: number;
}

/** Numbers of a recipe set by hand: for each key one number a size, null where the size keeps the reckoned one. */
export type Pins = Readonly<Record<string, readonly (number | null)[]>>;

/** What is known of a yarn as it is sold. */
export interface YarnSupply {
  readonly letter: string;
  /** Class of the yarn weight system, 0 to 7. */
  readonly weight: number | null;
  readonly ballGrams: number | null;
  readonly ballMetres: number | null;
  /** Price of a ball. */
  readonly price: number | null;
}

/** What a piece is made to and of, beside its rows. What is left out is not known, or as usual. */
export interface PieceFacts {
  readonly swatches?: readonly Swatch[];
  readonly measures?: readonly Measure[];
  readonly pins?: Pins;
  readonly supplies?: readonly YarnSupply[];
  /** Currency of the prices, as printed. */
  readonly currency?: string;
  /** Yarn bought beyond the estimate, %; 10 if left out. */
  readonly marginPercent?: number;
  /** Length of a tail that is woven in, cm; 15 if left out. */
  readonly tailCm?: number;
  /** For whom it is made: decides which cautions apply. */
  readonly wearer?: Wearer;
  /** What it has that the rows don't show: cords, buttons, to be hung up. */
  readonly features?: readonly Feature[];
}
