import { amountFor, type Instruction } from '../notation/instruction.ts';
import { placesTaken } from '../notation/patternClause.ts';

/**
 * How often the one counted repeat of a row would have to be worked to use `rest` places more, beside how often it says; null
 * where the row has no such repeat, or several, or would not come out even so.
 */
export function timesThatFit(body: readonly Instruction[], rest: number, size: number): { readonly times: number; readonly fit: number } | null {
  const repeats = body.filter((node) => node.kind === 'repeat' && node.times.kind === 'times');
  const [only] = repeats;
  if (repeats.length !== 1 || only?.kind !== 'repeat' || only.times.kind !== 'times') return null;
  const taken = placesTaken(only.body);
  const step = taken === null ? 0 : amountFor(taken, size);
  const times = amountFor(only.times.times, size);
  return step > 0 && rest % step === 0 ? { times, fit: times + rest / step } : null;
}
