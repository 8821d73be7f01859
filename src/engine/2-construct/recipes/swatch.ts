import type { Gauge } from '../../1-pattern/pattern.ts';

/** How the stitches of a swatch were worked; each has a gauge of its own. */
export type Technique = 'plain' | 'backLoops' | 'posts' | 'carried';

/** A swatch as it was counted and measured: fractions are kept. */
export interface Swatch {
  readonly id: string;
  readonly stitch: Gauge['stitch'];
  readonly technique: Technique;
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
  /** Yarn letter, and what the whole swatch weighed and, where measured, the length that went into it. */
  readonly yarn: string | null;
  readonly grams: number | null;
  readonly metres: number | null;
}
