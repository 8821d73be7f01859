import type { MotifMultiple } from './settings.ts';

/** A count that a motif and the making ask for, near an exact one. */
export interface FittedCount {
  readonly count: number;
  /** The count without the motif: the difference is what the motif costs. */
  readonly without: number;
  /** Nearest counts that fit, at most and at least the exact one; `down` is null where that would be too few. */
  readonly down: number | null;
  readonly up: number;
  /** Counts that fit are multiples of `every` and `plus` more. */
  readonly every: number;
  readonly plus: number;
  /** Whether the motif was heeded: an odd count of stitches can't be, in a piece that needs an even one. */
  readonly fits: boolean;
}

/**
 * The whole number nearest to `exact` that is a multiple of `step` and, where a motif is given, so many repeats and its edge
 * stitches; at least `least` and one repeat. Halves go up. Refuses steps below 1.
 */
export function fitCount(exact: number, step: number, motif: MotifMultiple, least: number): FittedCount {
  if (!(step >= 1)) throw new RangeError(`counts in steps of ${step}, expected 1 or more`);
  const without = nearestOf(exact, step, 0, least);
  const both = motif.repeat >= 1 ? progression(step, motif) : { every: step, plus: 0 };
  const { every, plus } = both ?? { every: step, plus: 0 };
  const floor = motif.repeat >= 1 && both ? Math.max(least, motif.repeat + motif.edge) : least;
  const below = Math.floor((exact - plus) / every) * every + plus;
  return {
    count: nearestOf(exact, every, plus, floor), without, every, plus, fits: both !== null,
    down: below >= floor ? below : null,
    up: Math.max(Math.ceil((exact - plus) / every), Math.ceil((floor - plus) / every)) * every + plus,
  };
}

function nearestOf(exact: number, every: number, plus: number, least: number): number {
  return Math.max(Math.round((exact - plus) / every), Math.ceil((least - plus) / every)) * every + plus;
}

/** Numbers that are multiples of `step` and, less the edge, of the repeat: every how many, plus what. Null if there are none. */
function progression(step: number, { repeat, edge }: MotifMultiple): { readonly every: number; readonly plus: number } | null {
  let every = repeat;
  while (every % step !== 0) every += repeat;
  for (let plus = edge % every; plus < every + edge; plus += repeat) if (plus % step === 0 && (plus - edge) % repeat === 0) return { every, plus: plus % every };
  return null;
}
