import type { Gauge } from '../1-pattern/pattern.ts';
import { stitchRow } from '../craft/stitches.ts';

/** Size of a single crochet in mm. */
export interface Cell {
  readonly widthMm: number;
  readonly heightMm: number;
}

/**
 * The size of one single crochet that a gauge gives, in mm. A gauge taken in a taller stitch is divided by that stitch's height
 * in the catalogue, so `heightMm` is always that of a single crochet. Refuses a gauge that is not positive and finite.
 */
export function gaugeCell(gauge: Gauge): Cell {
  const { stitches, rows, overCm } = gauge;
  for (const [name, value] of [['stitches', stitches], ['rows', rows], ['overCm', overCm]] as const) {
    if (!(value > 0 && Number.isFinite(value))) throw new RangeError(`gauge ${name} is ${value}, expected more than 0`);
  }
  return { widthMm: (10 * overCm) / stitches, heightMm: (10 * overCm) / rows / stitchRow(gauge.stitch).height };
}
