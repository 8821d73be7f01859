import { spreadEvenly } from './spreadEvenly.ts';
import type { ToeSettings } from './settings.ts';

/** The rounds of a toe in one size. */
export interface ToePlan {
  /** For each decreasing round: plain rounds before it, and how many pairs it decreases (4 stitches each). */
  readonly decreases: readonly { readonly evenBefore: number; readonly pairs: number }[];
  /** Stitches at its start and at its end. */
  readonly from: number;
  readonly to: number;
  readonly rounds: number;
}

/** Where a toe ends: about a quarter of the stitches (handbooks agree), graduated ones at 8; whole decreases of 4 from `around`. */
export function toeStop(around: number, pace: ToeSettings['pace']): number {
  const wanted = pace === 'graduated' ? 8 : around / 4;
  const stop = around - 4 * Math.ceil((around - wanted) / 4 - 0.5);
  return Math.max(stop, around % 4 === 0 ? 4 : 6);
}

/**
 * Rounds of a toe with paired decreases at both sides, 4 stitches a decreasing round. `every` round; every `second`; `half`: at
 * first every second, then every round; `graduated`: after three plain rounds once, every third round twice, every second
 * three times, then every round (published handbooks). With `rounds` given, it is made in so many decreasing rounds, the last
 * of them decreasing more. Refuses odd counts, counts that are no whole decreases apart, and more than a round can take.
 */
export function toePlan(from: number, to: number, settings: Pick<ToeSettings, 'pace' | 'evens'>, inRounds: number | null = null): ToePlan {
  const units = (from - to) / 4;
  if (from % 2 !== 0) throw new RangeError(`a toe of ${from} stitches, expected an even number`);
  if (!Number.isInteger(units) || units < 0 || to < 1) throw new RangeError(`a toe from ${from} to ${to} stitches, expected whole decreases of 4`);
  const count = Math.min(inRounds ?? units, units);
  if (!toeFits(from, to, count)) throw new RangeError(`a toe from ${from} to ${to} stitches in ${count} decreasing rounds, more than a round can take`);
  const pairs = pairsOf(units, count);
  const evens = evensOf(count, settings);
  const decreases = pairs.map((many, i) => ({ evenBefore: evens[i]!, pairs: many }));
  return { decreases, from, to, rounds: count + evens.reduce((sum, even) => sum + even, 0) };
}

/** Whether a toe can be made in so many decreasing rounds: each half of a round must hold its decreases. */
export function toeFits(from: number, to: number, count: number): boolean {
  let left = from;
  for (const many of pairsOf((from - to) / 4, count)) {
    if (many * 8 > left) return false;
    left -= many * 4;
  }
  return true;
}

/** The decreasing rounds of a heel set in afterwards, round an opening of `heel` stitches and as many chains. One plain round stands before them. */
export function afterthoughtPlan(heel: number): ToePlan {
  return toePlan(2 * heel, toeStop(2 * heel, 'every'), { pace: 'every', evens: null });
}

/** One decrease a round; what is over goes to the last rounds, one each, then evenly. */
function pairsOf(units: number, count: number): readonly number[] {
  if (count === 0) return [];
  const over = units - count;
  if (over <= count) return Array.from({ length: count }, (_, i) => (i >= count - over ? 2 : 1));
  return spreadEvenly(units, count);
}

function evensOf(count: number, { pace, evens }: Pick<ToeSettings, 'pace' | 'evens'>): readonly number[] {
  const plain = Array.from({ length: count }, () => 0);
  switch (pace) {
    case 'every':
      return plain;
    case 'second':
      return plain.map((_, i) => (i === 0 ? 0 : 1));
    case 'half': {
      const some = evens ?? Math.floor((count - 1) / 2);
      return plain.map((_, i) => (i > 0 && i <= some ? 1 : 0));
    }
    case 'graduated': {
      const steps = [3, 2, 2, 1, 1, 1];
      return plain.map((_, i) => steps[i] ?? 0);
    }
  }
}
