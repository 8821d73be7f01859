import type { Gauge } from '../../1-pattern/pattern.ts';

/** Stitches (unrounded) in a width in cm. */
export function stitchesIn(widthCm: number, gauge: Gauge): number {
  return (widthCm * gauge.stitches) / gauge.overCm;
}

/** Rows (unrounded) in a height in cm. */
export function rowsIn(heightCm: number, gauge: Gauge): number {
  return (heightCm * gauge.rows) / gauge.overCm;
}

/** The nearest multiple of `step`, at least `least`. */
export function nearestMultiple(value: number, step: number, least: number): number {
  return Math.max(least, Math.round(value / step) * step);
}
