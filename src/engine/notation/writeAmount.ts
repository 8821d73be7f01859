import { amountFor } from './instruction.ts';
import type { Amount } from './instruction.ts';
import { ordinalWord } from './numberWords.ts';

/** A number as print has it: the one of a size (0-based), or all sizes as `20 (24, 28)` when no size is asked for. */
export function writeAmount(amount: Amount, size: number | undefined): string {
  return writeNumbers(amount, size, String);
}

/** An ordinal, or all sizes as `12th (13th, 14th)`. */
export function writeOrdinal(amount: Amount, size: number | undefined): string {
  return writeNumbers(amount, size, ordinalWord);
}

function writeNumbers(amount: Amount, size: number | undefined, word: (value: number) => string): string {
  if (typeof amount === 'number') return word(amount);
  if (size !== undefined) return word(amountFor(amount, size));
  const [first, ...others] = amount.map(word);
  return others.length === 0 ? first! : `${first!} (${others.join(', ')})`;
}

/** Whether an amount is the number one in every size asked for, so that its noun stands in the singular. */
export function isOne(amount: Amount, size: number | undefined): boolean {
  return typeof amount === 'number' ? amount === 1 : size !== undefined && amountFor(amount, size) === 1;
}
