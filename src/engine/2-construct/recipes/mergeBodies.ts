import type { Amount, Instruction } from '../../notation/instruction.ts';

/** Fields that hold a number or one per size. */
const AMOUNTS = new Set(['count', 'each', 'except', 'times', 'nth']);

/** One number where all are the same, else one per size; sizes that have none get `absent`. */
export function mergeNumbers(numbers: readonly number[], sizes: readonly number[], all: number, absent: number): Amount {
  if (sizes.length === all && numbers.every((number) => number === numbers[0])) return numbers[0]!;
  const vector = Array.from({ length: all }, () => absent);
  sizes.forEach((size, i) => (vector[size] = numbers[i]!));
  return vector.every((number) => number === vector[0]) ? vector[0]! : vector;
}

/**
 * The clauses of several sizes as one: the same clauses with one number per size where they differ. Clauses that are worked
 * 0 times in every size drop out, repeats worked once are written out. Null where the wording differs. `sizes` says which of `all` sizes the bodies are of; the
 * numbers of the others are those of the first.
 */
export function mergeBodies(bodies: readonly (readonly Instruction[])[], sizes: readonly number[], all: number): readonly Instruction[] | null {
  const merged = merge(bodies, sizes, all, '');
  return merged && withoutIdle(merged.value as readonly Instruction[]);
}

type Merged = { readonly value: unknown } | null;

function merge(values: readonly unknown[], sizes: readonly number[], all: number, field: string): Merged {
  const first = values[0];
  if (typeof first === 'number' && AMOUNTS.has(field) && values.every((value) => typeof value === 'number')) {
    const numbers = values as readonly number[];
    if (numbers.every((number) => number === numbers[0])) return { value: numbers[0] };
    return { value: mergeNumbers(numbers, sizes, all, numbers[0]!) };
  }
  if (Array.isArray(first)) {
    if (!values.every((value) => Array.isArray(value) && value.length === first.length)) return null;
    return mergeParts(first.map((_, i) => ({ name: '', values: (values as readonly (readonly unknown[])[]).map((value) => value[i]) })), sizes, all, (parts) => parts.map((part) => part.value));
  }
  if (typeof first === 'object' && first !== null) {
    const names = Object.keys(first);
    if (!values.every((value) => typeof value === 'object' && value !== null && Object.keys(value).join() === names.join())) return null;
    // Which chain from the hook is part of the wording.
    const fixed = (first as { at?: string }).at === 'fromHook';
    const parts = names.map((name) => ({ name: fixed ? '' : name, values: (values as readonly Readonly<Record<string, unknown>>[]).map((value) => value[name]) }));
    return mergeParts(parts, sizes, all, (merged) => Object.fromEntries(names.map((name, i) => [name, merged[i]!.value])));
  }
  return values.every((value) => value === first) ? { value: first } : null;
}

function mergeParts(parts: readonly { readonly name: string; readonly values: readonly unknown[] }[], sizes: readonly number[], all: number, build: (parts: readonly { readonly value: unknown }[]) => unknown): Merged {
  const merged: { readonly value: unknown }[] = [];
  for (const { name, values } of parts) {
    const one = merge(values, sizes, all, name);
    if (!one) return null;
    merged.push(one);
  }
  return { value: build(merged) };
}

function withoutIdle(body: readonly Instruction[]): readonly Instruction[] {
  return body.flatMap((clause): readonly Instruction[] => {
    if (isIdle(clause)) return [];
    if (clause.kind !== 'repeat') return [clause];
    // What is worked once is written out.
    const inner = withoutIdle(clause.body);
    const { times } = clause;
    if (inner.length === 0) return [];
    if (times.kind === 'times' && times.times === 1) return inner;
    const only = inner.length === 1 ? inner[0]! : null;
    // One stitch so many times goes into so many places.
    if (times.kind === 'times' && only?.kind === 'work' && only.into.at === 'next' && only.into.count === 1) return [{ ...only, into: { ...only.into, count: times.times } }];
    return [{ ...clause, body: inner }];
  });
}

function isIdle(clause: Instruction): boolean {
  switch (clause.kind) {
    case 'work':
      return 'count' in clause.into && clause.into.count === 0;
    case 'chain':
    case 'skip':
    case 'leave':
      return clause.count === 0;
    case 'repeat':
      return clause.times.kind === 'times' && clause.times.times === 0;
    default:
      return false;
  }
}
