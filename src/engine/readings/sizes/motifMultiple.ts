import type { Origin } from '../../2-construct/recipes/origin.ts';

/** What the multiple that a motif asks for costs one size. */
export interface MotifMultipleCost {
  /** Counts that fit are multiples of `every` and `plus` more. */
  readonly every: number;
  readonly plus: number;
  readonly stitches: number;
  /** The count that the measurements alone would give. */
  readonly without: number;
  readonly differenceCm: number;
  /** The nearest counts that fit, at most and at least the exact one that the measurements ask for; `down` is null where that would be too few. */
  readonly down: number | null;
  readonly up: number;
  /** How much narrower or wider than wanted those are, cm. */
  readonly downCm: number | null;
  readonly upCm: number;
}

const COUNTS = ['around', 'width.stitches'] as const;

/** The multiple that a motif asks of a size and what the counts beside it cost, from the numbers of that size; null where no motif is heeded. */
export function motifMultiple(numbers: ReadonlyMap<string, Origin>, stitchesPerCm: number): MotifMultipleCost | null {
  const key = COUNTS.find((one) => numbers.has(one));
  const without = key && (numbers.get('around.withoutMotif') ?? numbers.get('width.withoutMotif'));
  const origin = key && numbers.get(key);
  if (!origin || !without) return null;
  const reckoned = origin.from.kind === 'pinned' ? origin.from.instead : origin;
  if (reckoned.from.kind !== 'formula' || !reckoned.from.rounding) return null;
  const { exact, rounding: { step: every, plus, least } } = reckoned.from;
  const below = Math.floor((exact - plus) / every) * every + plus;
  const up = Math.max(Math.ceil((exact - plus) / every), Math.ceil((least - plus) / every)) * every + plus;
  const down = below >= least ? below : null;
  return {
    every, plus, stitches: origin.value, without: without.value, differenceCm: (origin.value - without.value) / stitchesPerCm, down, up,
    downCm: down === null ? null : (down - exact) / stitchesPerCm, upCm: (up - exact) / stitchesPerCm,
  };
}
