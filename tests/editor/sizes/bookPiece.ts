import type { MeasureName, PieceFacts } from '../../../src/engine/1-pattern/pieceFacts.ts';
import type { Transaction } from '../../../src/engine/1-pattern/edit.ts';
import { applyTransaction } from '../../../src/engine/1-pattern/applyTransaction.ts';
import type { Pattern } from '../../../src/engine/1-pattern/pattern.ts';
import { startPattern } from '../../../src/engine/2-construct/recipes/startPattern.ts';
import type { BenchState, Command } from '../../../src/editor/bench/benchState.ts';

/** A boot sock in one size at 18 stitches and 20 rows, made to 25 cm round, 30 cm high, 24 cm long. */
export function sockPattern(piece: PieceFacts = sockFacts()): Pattern {
  const yarns: Pattern['yarns'] = [{ letter: 'A', name: 'slate', colour: '#4b5a6b', mark: 'none' }];
  const sizes = [{ name: '', girthCm: 25, heightCm: 30, footCm: 24 }];
  return { ...startPattern('bootSock', { title: 'Sock', gauge: { stitches: 18, rows: 20, overCm: 10, stitch: 'sc' }, hookMm: 4, sizes, yarns }), piece };
}

export function sockFacts(): PieceFacts {
  const one = (name: MeasureName, cm: number) => ({ name, cm: [cm], easePercent: 0, easeCm: 0 });
  return { measures: [one('footGirth', 25), one('legLength', 30), one('footLength', 24)] };
}

/** What a command would do to a pattern, and the pattern then. Refused transactions throw: none is expected here. */
export function after(pattern: Pattern, command: Command): { readonly pattern: Pattern; readonly inverse: Transaction } {
  // The commands of this page look at nothing but pattern and time.
  const transaction = command({ pattern, at: 1 } as BenchState);
  if (!transaction) throw new RangeError('the command does nothing');
  const done = applyTransaction(pattern, transaction);
  if (!done.ok) throw new RangeError(done.reason);
  return done;
}
