import type * as v from 'valibot';

/** What is wrong with a value: where (a path such as `sections.0.lines.3.text`; '' for the whole), what stands there and what was expected. */
export interface Fault {
  readonly path: string;
  readonly found: string;
  readonly expected: string;
}

const BOUNDS: Readonly<Record<string, string>> = {
  min_value: 'a number of at least ',
  max_value: 'a number of at most ',
  gt_value: 'a number above ',
  min_length: 'a length of at least ',
  max_length: 'a length of at most ',
  max_entries: 'a length of at most ',
};

/** A value in a few words, cut short: what stands in the place of what was expected. */
export function describeValue(value: unknown): string {
  if (value === undefined) return 'nothing';
  if (typeof value === 'string') return value.length > 40 ? `"${value.slice(0, 40)}…"` : `"${value}"`;
  if (Array.isArray(value)) return `a list of ${value.length}`;
  if (typeof value === 'object' && value !== null) return 'an object';
  return String(value);
}

/** A fault of a validation, in words. The issue of a union is followed to the choice that came furthest. */
export function faultOfIssue(issue: v.BaseIssue<unknown>): Fault {
  const [inner, keys] = furthest(issue, keysOf(issue));
  const path = keys.join('.');
  const found = describeValue(inner.input);
  const bound = BOUNDS[inner.type];
  if (bound) {
    const counted = /_length$|_entries$/.test(inner.type);
    return { path, found: counted ? `a length of ${inner.received}` : found, expected: `${bound}${inner.expected?.replace(/^[<>=]+/, '') ?? ''}` };
  }
  if (inner.type === 'integer') return { path, found, expected: 'a whole number' };
  if (inner.type === 'finite') return { path, found, expected: 'a finite number' };
  if (inner.type === 'strict_object' && inner.expected === 'never') return { path, found: 'a field of that name', expected: 'no such field' };
  if (inner.type === 'strict_object' && inner.expected?.startsWith('"')) return { path, found: 'no such field', expected: `a field ${inner.expected}` };
  if (inner.type === 'regex' || inner.type === 'check') return { path, found, expected: inner.message.replace(/^Expected /, '') };
  return { path, found, expected: wordsOfExpected(inner.expected ?? '') };
}

function keysOf(issue: v.BaseIssue<unknown>): readonly string[] {
  return (issue.path ?? []).map((item) => String(item.key));
}

function furthest(issue: v.BaseIssue<unknown>, keys: readonly string[]): readonly [v.BaseIssue<unknown>, readonly string[]] {
  let best = [issue, keys] as const;
  for (const inner of issue.type === 'union' ? (issue.issues ?? []) : []) {
    const found = furthest(inner, [...keys, ...keysOf(inner)]);
    if (found[1].length > best[1].length || (best[0] === issue && found[0].kind === 'validation')) best = [found[0], found[1]];
  }
  return best;
}

function wordsOfExpected(expected: string): string {
  const plain: Readonly<Record<string, string>> = { string: 'text', number: 'a number', boolean: 'true or false', Array: 'a list', Object: 'an object', null: 'null' };
  return expected
    .replace(/^\((.*)\)$/, '$1')
    .split(' | ')
    .map((word) => plain[word] ?? word)
    .join(' or ');
}
