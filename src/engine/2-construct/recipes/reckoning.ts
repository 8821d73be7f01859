import type { Pins } from '../../1-pattern/pieceFacts.ts';
import { rounded, type Origin, type Rounding, type Unit } from './origin.ts';

/** A number set by hand that the piece can't be made with; the reckoned one is used. */
export interface PinProblem {
  readonly key: string;
  readonly size: number;
  readonly found: number;
  readonly expected: string;
}

/** What a number is reckoned from. */
export interface Reckoned {
  readonly key: string;
  readonly says: string;
  readonly unit: Unit;
  /** The formula in words, naming its inputs. */
  readonly formula: string;
  readonly inputs: readonly Origin[];
  readonly exact: number;
  readonly rounding?: Rounding;
  /** What a number set by hand must keep to beyond being a whole number: null if it does, else what was expected. */
  readonly allows?: (pinned: number) => string | null;
}

/**
 * Reckons the numbers of one size and remembers where each comes from. A pinned number takes the place of the reckoned one,
 * and everything that is reckoned from it follows.
 */
export class Reckoning {
  readonly origins = new Map<string, Origin>();
  readonly problems: PinProblem[] = [];

  constructor(
    readonly size: number,
    private readonly pins: Pins = {},
  ) {}

  /** A number that someone gave. */
  given(key: string, says: string, unit: Unit, value: number, source: string): Origin {
    return this.keep({ key, says, unit, value, from: { kind: 'given', source } });
  }

  /** A number from a published table. */
  table(key: string, says: string, unit: Unit, value: number, source: string): Origin {
    return this.keep({ key, says, unit, value, from: { kind: 'table', source } });
  }

  /** A reckoned number, or the one pinned in its place. */
  reckon({ key, says, unit, formula, inputs, exact, rounding, allows }: Reckoned): Origin {
    const value = rounding ? rounded(exact, rounding) : exact;
    const reckoned: Origin = { key, says, unit, value, from: { kind: 'formula', formula, inputs, exact, rounding: rounding ?? null } };
    const pinned = this.pins[key]?.[this.size];
    if (pinned === undefined || pinned === null) return this.keep(reckoned);
    const fault = pinFault(pinned, rounding) ?? allows?.(pinned) ?? null;
    if (fault !== null) {
      this.problems.push({ key, size: this.size, found: pinned, expected: fault });
      return this.keep(reckoned);
    }
    return this.keep({ key, says, unit, value: pinned, from: { kind: 'pinned', instead: reckoned } });
  }

  private keep(origin: Origin): Origin {
    this.origins.set(origin.key, origin);
    return origin;
  }
}

function pinFault(pinned: number, rounding: Rounding | undefined): string | null {
  if (!Number.isFinite(pinned)) return 'a finite number';
  if (!rounding) return null;
  if (!Number.isInteger(pinned)) return 'a whole number';
  return pinned < rounding.least ? `${rounding.least} or more` : null;
}
