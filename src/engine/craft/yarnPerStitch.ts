import type { StitchKind } from './stitches.ts';

/**
 * Yarn in one stitch relative to a single crochet, for estimates where no swatch of that stitch was weighed. Single, half
 * double and double crochet and the foundation chain: one maker's published measurement (worsted, 5 in swatches: 10.6, 15.7,
 * 20.4 and 4.8 to 5.1 in of yarn for an inch of one row). The others are scaled from these by the number of loops, *from
 * memory*. Area fixes the total to within about 2 %, so a weighed swatch is always better.
 */
export const YARN_RATIO: Readonly<Record<StitchKind, number>> = {
  ring: 1.5,
  ch: 0.467,
  slst: 0.55,
  sc: 1,
  hdc: 1.48,
  dc: 1.92,
  tr: 2.6,
  dtr: 3.3,
  trtr: 4,
  esc: 1.35,
  ehdc: 1.8,
  edc: 2.3,
  etr: 3,
  rsc: 1.1,
  tsc: 1.1,
  bobble: 7.2,
  puff: 4.4,
  popcorn: 9.6,
  cluster: 4.6,
  shell: 9.6,
  vst: 4.3,
  picot: 1.9,
};

/** Source line of `YARN_RATIO`. */
export const YARN_RATIO_SOURCE = 'one maker’s published measurement of worsted swatches; chains and tall stitches in part from memory';

/**
 * Yarn in a single crochet, in widths of the stitch: 10.6 in of yarn in an inch of one row, in the same measurement. Its
 * fabric took 31.42 in a square inch.
 */
export const YARN_PER_WIDTH = 10.6;

/** How far such a guess may be off, as a share: yarns, hands and fibres differ (from memory). */
export const GUESS_SPREAD = 0.25;
