import { isAmountField } from '../../notation/changeAmounts.ts';
import type { Instruction } from '../../notation/instruction.ts';

/**
 * The clauses of several sizes, each with its own numbers, as one: numbers that differ become vectors. Null when the
 * wording differs.
 */
export function mergeSizes(bodies: readonly (readonly Instruction[])[]): readonly Instruction[] | null {
  const [first] = bodies;
  if (!first) return [];
  const merged = merge(bodies, '');
  return merged === null ? null : (merged.value as readonly Instruction[]);
}

/** A number that differs by size as a vector; the number itself where all agree. */
export function mergeNumbers(values: readonly number[]): number | readonly number[] {
  return values.every((value) => value === values[0]) ? values[0]! : [...values];
}

type Merged = { readonly value: unknown } | null;

function merge(values: readonly unknown[], field: string): Merged {
  const [first] = values;
  if (field === 'range') return { value: first };
  if (values.every((value) => isAmountField(field, value))) {
    return values.every((value) => typeof value === 'number') ? { value: mergeNumbers(values) } : null;
  }
  if (Array.isArray(first)) return mergeLists(values, first.length);
  if (typeof first === 'object' && first !== null) return mergeRecords(values as readonly Record<string, unknown>[], first as Record<string, unknown>);
  return values.every((value) => value === first) ? { value: first } : null;
}

function mergeLists(values: readonly unknown[], length: number): Merged {
  if (!values.every((value) => Array.isArray(value) && value.length === length)) return null;
  const list: unknown[] = [];
  for (let index = 0; index < length; index++) {
    const part = merge((values as readonly (readonly unknown[])[]).map((value) => value[index]), '');
    if (part === null) return null;
    list.push(part.value);
  }
  return { value: list };
}

function mergeRecords(values: readonly Record<string, unknown>[], first: Record<string, unknown>): Merged {
  const names = Object.keys(first);
  if (!values.every((value) => value !== null && typeof value === 'object' && Object.keys(value).length === names.length && names.every((name) => name in value))) return null;
  if (first.at === 'fromHook') return values.every((value) => value.nth === first.nth) ? { value: first } : null;
  const record: Record<string, unknown> = {};
  for (const name of names) {
    const part = merge(values.map((value) => value[name]), name);
    if (part === null) return null;
    record[name] = part.value;
  }
  return { value: record };
}
