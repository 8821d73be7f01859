/** What a number counts. `number` is a bare one, `money` in the currency that the designer names. */
export type Unit = 'cm' | 'm' | 'g' | 'sts' | 'rows' | 'sts/cm' | 'rows/cm' | 'g/m' | 'share' | 'times' | 'balls' | 'money' | 'number';

/** How an exact number became a whole one. */
export interface Rounding {
  readonly how: 'nearest' | 'up' | 'down';
  /** To a multiple of this, plus `plus`. */
  readonly step: number;
  readonly plus: number;
  /** Nothing below this. */
  readonly least: number;
}

/**
 * A number that says where it comes from: a tree whose leaves are what was given or looked up. Fractions are kept until
 * the rounding that is named. Plain data; `value` is the number to use.
 */
export interface Origin {
  /** Name within its piece, such as `heel.stitches`: what a pin refers to. */
  readonly key: string;
  /** In words: "stitches round the foot". */
  readonly says: string;
  readonly unit: Unit;
  readonly value: number;
  readonly from:
    | { readonly kind: 'given'; readonly source: string }
    | { readonly kind: 'table'; readonly source: string }
    | { readonly kind: 'formula'; readonly formula: string; readonly inputs: readonly Origin[]; readonly exact: number; readonly rounding: Rounding | null }
    /** Set by hand; `instead` is what would have been reckoned. */
    | { readonly kind: 'pinned'; readonly instead: Origin };
}

/** A whole number by a rounding: halves go up. A step that is not above 0 is refused. */
export function rounded(exact: number, { how, step, plus, least }: Rounding): number {
  if (!(step > 0)) throw new RangeError(`a rounding step of ${step}, expected more than 0`);
  const steps = (exact - plus) / step;
  const whole = how === 'nearest' ? Math.round(steps) : how === 'up' ? Math.ceil(steps - 1e-9) : Math.floor(steps + 1e-9);
  const value = whole * step + plus;
  return value >= least ? value : Math.ceil((least - plus) / step - 1e-9) * step + plus;
}

/** To the nearest multiple of `step` plus `plus`, at least `least`. */
export function nearest(least: number, step = 1, plus = 0): Rounding {
  return { how: 'nearest', step, plus, least };
}
