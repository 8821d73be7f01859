import type { Amount, Instruction } from './instruction.ts';

/** Fields of clauses that hold an amount. */
const AMOUNTS = new Set(['count', 'each', 'except', 'times', 'nth', 'by']);

/** Whether a field of a clause holds a number, or one number per size. */
export function isAmountField(field: string, value: unknown): value is Amount {
  return AMOUNTS.has(field) && (typeof value === 'number' || (Array.isArray(value) && value.length > 0 && value.every((one) => typeof one === 'number')));
}

/** The same clauses with every amount changed. */
export function changeAmounts(body: readonly Instruction[], change: (amount: Amount) => Amount): readonly Instruction[] {
  const changed = (value: unknown, field: string): unknown => {
    if (field === 'range') return value;
    if (isAmountField(field, value)) return change(value);
    if (Array.isArray(value)) return value.map((part) => changed(part, ''));
    if (typeof value !== 'object' || value === null) return value;
    return Object.fromEntries(Object.entries(value).map(([name, part]) => [name, changed(part, name)]));
  };
  return changed(body, '') as readonly Instruction[];
}

/** The clauses of one size (0-based): its own numbers, and of clauses for some sizes only those for it. */
export function bodyForSize(body: readonly Instruction[], size: number): readonly Instruction[] {
  return flatForSize(changeAmounts(body, (amount) => (typeof amount === 'number' ? amount : (amount[size] ?? amount[0]!))), size);
}

/** Clauses for some sizes put in the place of their group, or left out; the same list where there are none. */
export function flatForSize(body: readonly Instruction[], size: number): readonly Instruction[] {
  if (!body.some(({ kind }) => kind === 'forSizes')) return body;
  return body.flatMap((clause) => (clause.kind !== 'forSizes' ? [clause] : clause.sizes.includes(size) ? flatForSize(clause.body, size) : []));
}
