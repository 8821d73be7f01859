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
  /** Where it comes from, in words. */
  readonly source: string;
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
  const classed = byClass(supply?.weight ?? swatches[0]?.weight ?? null);
  const guessCm = YARN_PER_WIDTH / gaugeOf(pattern.gauge, facts.swatches ?? [], 'sc', 'plain').stitchesPerCm;
  if (swatches.length === 0) {
    const weight = label ?? classed;
    return {
      stitchCm: (kind) => ({ value: guessCm * YARN_RATIO[kind], spread: GUESS_SPREAD }), gramsPerCm: weight,
      source: `a guess: ${YARN_RATIO_SOURCE}${!label && classed ? `; weight by class: ${YARN_LENGTH_SOURCE}` : ''}`, guessed: true, byWeight: false,
    };
  }
  const weight = label ?? weighed(swatches) ?? classed ?? guessedWeight(swatches[0]!, guessCm);
  const known = new Map<StitchKind, Estimate>();
  return {
    stitchCm: (kind) => {
      const found = known.get(kind) ?? fromSwatch(fitting(swatches, letter, kind), kind, weight, guessCm);
      known.set(kind, found);
      return found;
    },
    gramsPerCm: weight,
    source: swatches.map((swatch) => `swatch ${swatch.id}, ${swatch.metres !== null ? `${swatch.metres} m measured` : `${swatch.grams} g weighed`}`).join('; '),
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

function labelled(grams: number | null, metres: number | null): Estimate | null {
  return grams !== null && metres !== null ? { value: grams / (metres * 100), spread: LABEL } : null;
}

function weighed(swatches: readonly Swatch[]): Estimate | null {
  const both = swatches.find((one) => one.metres !== null && one.grams !== null);
  return both ? { value: both.grams! / (both.metres! * 100), spread: together(SCALE_GRAMS / both.grams!, RULE) } : null;
}

function byClass(number: number | null): Estimate | null {
  const span = YARN_WEIGHTS.find((weight) => weight.number === number)?.metresPer100g;
  if (!span || span.most === null) return null;
  return { value: 1 / ((span.least + span.most) / 2), spread: (span.most - span.least) / (span.most + span.least) };
}

/** A weighed swatch of a yarn whose length is not known: its weight by the guessed length. */
function guessedWeight(swatch: Swatch, guessCm: number): Estimate | null {
  if (swatch.grams === null) return null;
  return { value: swatch.grams / (swatchUnits(swatch) * guessCm), spread: GUESS_SPREAD };
}
