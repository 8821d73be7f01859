import type { Swatch, SwatchTechnique } from '../../1-pattern/pieceFacts.ts';
import type { Gauge } from '../../1-pattern/pattern.ts';
import { stitchRow, type StitchKind } from '../../craft/stitches.ts';
import type { Origin } from './origin.ts';
import type { Reckoning } from './reckoning.ts';

/** Stitches and rows in a centimetre of one stitch in one technique, and what they were taken from. */
export interface GaugeUse {
  readonly stitchesPerCm: number;
  readonly rowsPerCm: number;
  /** In words, for the explanation. */
  readonly source: string;
  /** The swatch, or null for the pattern's own gauge. */
  readonly swatch: Swatch | null;
}

const WORDS: Readonly<Record<SwatchTechnique, string>> = { plain: '', backLoops: ' in back loops', posts: ' in posts', carried: ' with carried yarn' };

/**
 * The gauge of a stitch in a technique: from a swatch of just that (the last washed one, else the last), or from the
 * pattern's own gauge, with the heights of the stitch catalogue where that was counted in another stitch.
 */
export function gaugeOf(gauge: Gauge, swatches: readonly Swatch[], stitch: StitchKind, technique: SwatchTechnique): GaugeUse {
  const fitting = swatches.filter((swatch) => swatch.stitch === stitch && swatch.technique === technique);
  const swatch = fitting.findLast((one) => one.washed) ?? fitting.at(-1);
  const name = stitchRow(stitch).us;
  if (swatch) {
    return {
      stitchesPerCm: swatch.stitches / swatch.widthCm, rowsPerCm: swatch.rows / swatch.heightCm, swatch,
      source: `swatch in ${name}${WORDS[technique]}, ${swatch.washed ? 'washed' : 'not washed'}: ${swatch.stitches} sts in ${swatch.widthCm} cm, ${swatch.rows} rows in ${swatch.heightCm} cm`,
    };
  }
  const height = stitchRow(stitch).height / stitchRow(gauge.stitch).height;
  return {
    stitchesPerCm: gauge.stitches / gauge.overCm, rowsPerCm: gauge.rows / gauge.overCm / height, swatch: null,
    source: `gauge ${gauge.stitches} sts and ${gauge.rows} rows = ${gauge.overCm} cm in ${stitchRow(gauge.stitch).us}${height === 1 ? '' : `; ${name} taken as ${height} times as high`}`,
  };
}

/** Gauge of one stitch and technique as two numbers with their origin. */
export interface GaugeNumbers {
  readonly stitches: Origin;
  readonly rows: Origin;
}

/** The same as numbers of a reckoning. */
export function gaugeNumbers(r: Reckoning, gauge: Gauge, swatches: readonly Swatch[], stitch: StitchKind, technique: SwatchTechnique): GaugeNumbers {
  const use = gaugeOf(gauge, swatches, stitch, technique);
  const key = `gauge.${stitch}.${technique}`;
  const name = `${stitchRow(stitch).us}${WORDS[technique]}`;
  return {
    stitches: r.given(`${key}.stitches`, `stitches in 1 cm of ${name}`, 'sts/cm', use.stitchesPerCm, use.source),
    rows: r.given(`${key}.rows`, `rows in 1 cm of ${name}`, 'rows/cm', use.rowsPerCm, use.source),
  };
}
