import type { Gauge } from '../1-pattern/pattern.ts';
import { gaugeCell } from './gaugeCell.ts';

/** The same gauge drawn to another scale: a stitch is `mmPerStitch` wide on paper, and its height keeps the true proportion. */
export function gaugeAtScale(gauge: Gauge, mmPerStitch: number): Gauge {
  if (!(mmPerStitch > 0 && Number.isFinite(mmPerStitch))) throw new RangeError(`${mmPerStitch} mm a stitch, expected more than 0`);
  return { ...gauge, overCm: (gauge.overCm * mmPerStitch) / gaugeCell(gauge).widthMm };
}
