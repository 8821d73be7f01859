import { applyTransaction } from '../../engine/1-pattern/applyTransaction.ts';
import { writePatternFile } from '../../engine/1-pattern/file.ts';
import type { Pins } from '../../engine/1-pattern/pieceFacts.ts';
import type { Pattern } from '../../engine/1-pattern/pattern.ts';
import { gradePattern, type Graded } from '../../engine/2-construct/recipes/gradePattern.ts';
import type { PieceSettings } from '../../engine/2-construct/recipes/settings.ts';
import { missingMeasures, type Missing } from './neededMeasures.ts';

/** What the measurements and swatches of a pattern give, when it is made anew from them. */
export type GradedPiece =
  /** No recipe made it: rows are as written. */
  | { readonly kind: 'written' }
  | { readonly kind: 'missing'; readonly missing: readonly Missing[] }
  /** The numbers can't be worked; why, in words. */
  | { readonly kind: 'refused'; readonly reason: string }
  /** `pattern` is as it would be; `isSame`: as it is already. */
  | { readonly kind: 'graded'; readonly graded: Graded; readonly pattern: Pattern; readonly isSame: boolean };

/** Grades a pattern to what it says of itself, or to another make and numbers set by hand, without changing it. */
export function gradedPiece(pattern: Pattern, settings: PieceSettings | null, pins: Pins = pattern.piece?.pins ?? {}): GradedPiece {
  if (!settings) return { kind: 'written' };
  const { measures = [], swatches = [] } = pattern.piece ?? {};
  const missing = missingMeasures(settings, measures, pattern.sizes.length);
  if (missing.length > 0) return { kind: 'missing', missing };
  try {
    const sizes = pattern.sizes.map((name, from) => ({ name, from }));
    const graded = gradePattern(pattern, { sizes, measures, pins, swatches, gauge: null, settings });
    if (!graded) return { kind: 'written' };
    const done = applyTransaction(pattern, { label: '', at: 0, edits: graded.edits });
    if (!done.ok) return { kind: 'refused', reason: done.reason };
    // As files, since what was kept and read again has its fields in another order.
    const isSame = writePatternFile(done.pattern) === writePatternFile(pattern);
    return { kind: 'graded', graded, pattern: done.pattern, isSame };
  } catch (error) {
    if (!(error instanceof RangeError)) throw error;
    return { kind: 'refused', reason: `These measurements give a piece that can’t be worked: ${error.message}.` };
  }
}
