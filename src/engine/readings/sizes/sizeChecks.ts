import type { Measure, Swatch } from '../../1-pattern/pieceFacts.ts';
import type { Pattern } from '../../1-pattern/pattern.ts';
import { gaugeOf } from '../../2-construct/recipes/gaugeBook.ts';
import { FOOT_RATIOS } from '../../craft/feet.ts';
import { inSpan, weightsOfGauge, YARN_WEIGHTS, YARN_WEIGHT_SOURCE } from '../../craft/yarnWeights.ts';
import { finding, type Finding } from '../../notation/finding.ts';
import type { SizeReport } from './sizeReport.ts';

/** How far single crochet is taken to stretch sideways where no swatch was tried; less than knitting does (from memory). */
export const STRETCH_GUESS = 1.2;

/** The least area of a swatch to count on: handbooks ask for 10 cm or 24 stitches by 20 rows. */
const LEAST_SWATCH = { cm: 10, stitches: 24, rows: 20 } as const;

/**
 * What a technical editor asks about sizes, as notes and doubts: gauges and hooks outside the published range of their class,
 * swatches too small or not washed, an opening that the heel can't pass, and finished measurements more than one stitch or
 * row off what was wanted.
 */
export function sizeChecks(pattern: Pattern, reports: readonly SizeReport[], measures: readonly Measure[], swatches: readonly Swatch[]): Finding[] {
  return [...swatches.flatMap(swatchChecks), ...gaugeChecks(pattern, swatches), ...reports.flatMap((report) => [...openingChecks(pattern, report, measures, swatches), ...measureChecks(report)])];
}

function swatchChecks(swatch: Swatch): Finding[] {
  const found: Finding[] = [];
  const params = { swatch: swatch.id, stitch: swatch.stitch };
  const small = swatch.widthCm < LEAST_SWATCH.cm && swatch.stitches < LEAST_SWATCH.stitches;
  const low = swatch.heightCm < LEAST_SWATCH.cm && swatch.rows < LEAST_SWATCH.rows;
  if (small || low) found.push(finding('note', 'swatchSmall', {}, { found: `${swatch.stitches} × ${swatch.rows}`, expected: `10 cm or ${LEAST_SWATCH.stitches} × ${LEAST_SWATCH.rows}`, params }));
  if (!swatch.washed) found.push(finding('note', 'swatchUnwashed', {}, { params }));
  return [...found, ...classChecks(swatch)];
}

/** The pattern's own gauge and hook against the classes of its yarns, where no swatch was counted. */
function gaugeChecks({ gauge, hookMm, piece }: Pattern, swatches: readonly Swatch[]): Finding[] {
  if (swatches.some(({ weight }) => weight !== null)) return [];
  const weights = new Set((piece?.supplies ?? []).flatMap(({ weight }) => (weight === null ? [] : [weight])));
  return [...weights].flatMap((weight) => classChecks({ id: 'gauge', stitch: gauge.stitch, stitches: gauge.stitches, widthCm: gauge.overCm, hookMm, weight }));
}

/** Gauge and hook outside the published range of a class of yarn. */
function classChecks(swatch: Pick<Swatch, 'id' | 'stitch' | 'stitches' | 'widthCm' | 'hookMm' | 'weight'>): Finding[] {
  const found: Finding[] = [];
  const params = { swatch: swatch.id, stitch: swatch.stitch };
  const weight = YARN_WEIGHTS.find(({ number }) => number === swatch.weight);
  if (!weight) return found;
  const per10 = (swatch.stitches * 10) / swatch.widthCm;
  const range = (least: number, most: number | null) => (most === null ? `${least} or more` : `${least} to ${most}`);
  const about = { ...params, weight: weight.number, name: weight.name, source: YARN_WEIGHT_SOURCE };
  if (weight.gaugeStitch === swatch.stitch && !inSpan(Math.round(per10), weight.stitches)) {
    const fits = weightsOfGauge(per10).map((one) => `${one.number} ${one.name}`).join(' or ');
    found.push(finding('note', 'gaugeUnusual', {}, { found: Number(per10.toFixed(1)), expected: range(weight.stitches.least, weight.stitches.most), params: { ...about, fits } }));
  }
  if (swatch.hookMm !== null && !inSpan(swatch.hookMm, weight.hookMm)) {
    found.push(finding('note', 'hookUnusual', {}, { found: swatch.hookMm, expected: range(weight.hookMm.least, weight.hookMm.most), params: about }));
  }
  return found;
}

/**
 * Whether a sock's narrowest row stretches over heel and ankle. Without a measured heel diagonal it is 1.36 × the girth of the
 * foot (ANSUR II), or from the foot's length. Nothing has to pass what nobody wears.
 */
function openingChecks(pattern: Pattern, report: SizeReport, measures: readonly Measure[], swatches: readonly Swatch[]): Finding[] {
  const opening = report.finished.find((one) => one.name === 'opening');
  const body = (name: Measure['name']) => measures.find((one) => one.name === name)?.cm[report.size] ?? null;
  const length = body('footLength');
  const girth = body('footGirth') ?? (length === null ? null : length * FOOT_RATIOS.ballToLength);
  const diagonal = body('heelDiagonal') ?? (girth === null ? null : girth * FOOT_RATIOS.diagonalToBall);
  if (!opening || diagonal === null || pattern.piece?.wearer === 'object') return [];
  const tried = gaugeOf(pattern.gauge, swatches, 'sc', 'plain').swatch;
  const stretch = tried?.stretchedCm ? tried.stretchedCm / tried.widthCm : STRETCH_GUESS;
  const reach = opening.cm * stretch;
  if (reach >= diagonal) return [];
  const params = { size: report.name, stretch: Number(stretch.toFixed(2)), guessed: tried?.stretchedCm ? 0 : 1, measured: body('heelDiagonal') === null ? 0 : 1, openingCm: Number(opening.cm.toFixed(1)) };
  return [finding('doubtful', 'openingNarrow', {}, { found: Number(reach.toFixed(1)), expected: Number(diagonal.toFixed(1)), params })];
}

function measureChecks(report: SizeReport): Finding[] {
  return report.finished.flatMap((one, i) => {
    // What is asked of several is said once.
    if (report.finished.slice(0, i).some((other) => other.wanted?.key === one.wanted?.key)) return [];
    if (!one.wanted || one.differenceCm === null || Math.abs(one.differenceCm) <= one.oneCm * 1.0001) return [];
    return [finding('note', 'measureOff', {}, { found: Number(one.cm.toFixed(1)), expected: Number(one.wanted.value.toFixed(1)), params: { size: report.name, measure: one.wanted.says } })];
  });
}
