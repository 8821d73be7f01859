import type { PieceFacts, Swatch } from '../../1-pattern/pieceFacts.ts';
import type { Pattern } from '../../1-pattern/pattern.ts';
import { gaugeOf } from '../../2-construct/recipes/gaugeBook.ts';
import { stitchRow, type StitchKind } from '../../craft/stitches.ts';
import { GUESS_SPREAD, YARN_PER_WIDTH, YARN_RATIO, YARN_RATIO_SOURCE } from '../../craft/yarnPerStitch.ts';
import { YARN_LENGTH_SOURCE, YARN_WEIGHTS } from '../../craft/yarnWeights.ts';

/** A number that may be off by a share of itself either way. */
export interface Estimate {
  readonly value: number;
  readonly spread: number;
}

/** What a yarn takes: its length in a stitch, and its weight. */
export interface YarnRate {
  /** Yarn in one stitch of a kind, cm. */
  readonly stitchCm: (kind: StitchKind) => Estimate;
  /** Weight of a centimetre; null where nothing is known of it. */
  readonly gramsPerCm: Estimate | null;
  /** Where the length comes from, in words. */
  readonly source: string;
  /** Where the weight comes from, in words; empty where nothing is known of it. */
  readonly weightSource: string;
  /** No swatch was weighed or measured. */
  readonly guessed: boolean;
  /** The lengths were taken from a weight, so that doubt about the yarn's length doesn't touch the weight of the piece. */
  readonly byWeight: boolean;
}

/** A kitchen scale shows whole grams. */
const SCALE_GRAMS = 0.5;
/** Hand and tension between swatch and piece (from memory). */
const HAND = 0.03;
/** Measuring yarn along a rule (from memory). */
const RULE = 0.01;
/** A stitch that was not in the swatch, by its ratio to the one that was (from memory). */
const OTHER_STITCH = 0.1;
/** Metres of a ball as labelled (from memory). */
const LABEL = 0.05;

/**
 * What a yarn takes in a pattern: from a swatch that was measured or weighed (one of this yarn before one of any, of the same
 * stitch before another), less its foundation and turning chains; or, marked as a guess, from published ratios: 10.6 widths of
 * a stitch for a single crochet, with its range. Swatches with carried yarn are left aside, since part of it is no stitch.
 */
export function yarnRate(pattern: Pick<Pattern, 'gauge'>, facts: PieceFacts, letter: string): YarnRate {
  const supply = facts.supplies?.find((one) => one.letter === letter) ?? null;
  const swatches = (facts.swatches ?? []).filter((one) => one.technique !== 'carried' && (one.metres !== null || one.grams !== null) && (one.yarn === letter || one.yarn === null));
  const label = labelled(supply?.ballGrams ?? null, supply?.ballMetres ?? null);
  const classed = byClass(supply?.weight ?? swatches.find((one) => one.weight !== null)?.weight ?? null);
  const guessCm = YARN_PER_WIDTH / gaugeOf(pattern.gauge, facts.swatches ?? [], 'sc', 'plain').stitchesPerCm;
  if (swatches.length === 0) {
    const weight = label ?? classed;
    return {
      stitchCm: (kind) => ({ value: guessCm * YARN_RATIO[kind], spread: GUESS_SPREAD }), gramsPerCm: weight?.estimate ?? null, weightSource: weight?.source ?? '',
      source: `a guess: a single crochet takes ${YARN_PER_WIDTH} widths of itself, give or take ${GUESS_SPREAD * 100} % (${YARN_RATIO_SOURCE})`, guessed: true, byWeight: false,
    };
  }
  const found = label ?? weighed(swatches) ?? classed ?? guessedWeight(swatches, guessCm);
  const weight = found?.estimate ?? null;
  const known = new Map<StitchKind, Estimate>();
  return {
    stitchCm: (kind) => {
      const own = known.get(kind) ?? fromSwatch(fitting(swatches, letter, kind), kind, weight, guessCm);
      known.set(kind, own);
      return own;
    },
    gramsPerCm: weight, weightSource: found?.source ?? '',
    source: `${swatches.map(swatchWords).join('; ')}. Other stitches by rough published ratios, give or take ${OTHER_STITCH * 100} %`,
    guessed: false, byWeight: swatches.every((swatch) => swatch.metres === null),
  };
}

function fromSwatch(swatch: Swatch, kind: StitchKind, weight: Estimate | null, guessCm: number): Estimate {
  const unit = unitOf(swatch, weight, guessCm);
  const other = swatch.stitch === kind || kind === 'ch' ? 0 : OTHER_STITCH;
  return { value: unit.value * YARN_RATIO[kind], spread: together(unit.spread, other) };
}

/** Independent spreads come together as the root of their squares. */
export function together(...spreads: readonly number[]): number {
  return Math.sqrt(spreads.reduce((sum, spread) => sum + spread * spread, 0));
}

/** Single crochets that a swatch's yarn would make: its stitches, foundation and turning chains by their ratios. */
export function swatchUnits({ stitch, stitches, rows }: Pick<Swatch, 'stitch' | 'stitches' | 'rows'>): number {
  return stitches * rows * YARN_RATIO[stitch] + (stitches + rows * stitchRow(stitch).turningChains) * YARN_RATIO.ch;
}

function fitting(swatches: readonly Swatch[], letter: string, kind: StitchKind): Swatch {
  const rank = (one: Swatch) => (one.yarn === letter ? 0 : 2) + (one.stitch === kind ? 0 : 1);
  return swatches.reduce((best, one) => (rank(one) < rank(best) ? one : best), swatches[0]!);
}

/** Yarn of one single crochet in a swatch, cm. */
function unitOf(swatch: Swatch, weight: Estimate | null, guessCm: number): Estimate {
  const units = swatchUnits(swatch);
  if (swatch.metres !== null) return { value: (swatch.metres * 100) / units, spread: together(RULE, HAND) };
  if (weight === null) return { value: guessCm, spread: GUESS_SPREAD };
  return { value: swatch.grams! / weight.value / units, spread: together(SCALE_GRAMS / swatch.grams!, HAND, weight.spread) };
}

/** `swatch 1: 14 g weighed in 27 × 31 sts of sc`. */
function swatchWords({ id, stitch, stitches, rows, metres, grams }: Swatch): string {
  return `swatch ${id}: ${metres !== null ? `${metres} m measured` : `${grams} g weighed`} in ${stitches} × ${rows} sts of ${stitchRow(stitch).us}`;
}

/** Weight of a centimetre, and where it comes from in words. */
interface Weight {
  readonly estimate: Estimate;
  readonly source: string;
}

function labelled(grams: number | null, metres: number | null): Weight | null {
  return grams !== null && metres !== null ? { estimate: { value: grams / (metres * 100), spread: LABEL }, source: `the ball: ${grams} g are ${metres} m` } : null;
}

function weighed(swatches: readonly Swatch[]): Weight | null {
  const both = swatches.find((one) => one.metres !== null && one.grams !== null);
  return both ? { estimate: { value: both.grams! / (both.metres! * 100), spread: together(SCALE_GRAMS / both.grams!, RULE) }, source: `swatch ${both.id}: ${both.grams} g are ${both.metres} m` } : null;
}

function byClass(number: number | null): Weight | null {
  const found = YARN_WEIGHTS.find((weight) => weight.number === number);
  const span = found?.metresPer100g;
  if (!found || !span || span.most === null) return null;
  return {
    estimate: { value: 1 / ((span.least + span.most) / 2), spread: (span.most - span.least) / (span.most + span.least) },
    source: `rough, by yarn weight ${found.number} ${found.name}: 100 g are ${span.least} to ${span.most} m (${YARN_LENGTH_SOURCE})`,
  };
}

/** A weighed swatch of a yarn whose length is not known: its weight by the guessed length. */
function guessedWeight(swatches: readonly Swatch[], guessCm: number): Weight | null {
  const swatch = swatches.find((one) => one.grams !== null);
  if (!swatch) return null;
  return {
    estimate: { value: swatch.grams! / (swatchUnits(swatch) * guessCm), spread: GUESS_SPREAD },
    source: `swatch ${swatch.id} weighs ${swatch.grams} g; its length is a guess: a single crochet takes ${YARN_PER_WIDTH} widths of itself (${YARN_RATIO_SOURCE})`,
  };
}
