import type { Fault } from './fault.ts';

/** Whether JSON text nests deeper than `most` objects and lists: looked at before parsing, so that no parser runs out of stack. Linear. */
export function nestingFault(text: string, most: number): Fault | null {
  let depth = 0;
  let isString = false;
  for (let i = 0; i < text.length; i++) {
    const code = text.charCodeAt(i);
    if (isString) {
      if (code === BACKSLASH) i++;
      else if (code === QUOTE) isString = false;
    } else if (code === QUOTE) isString = true;
    else if (code === BRACE || code === BRACKET) {
      if (++depth > most) return { path: '', found: `nesting deeper than ${most} at character ${i}`, expected: `nesting of at most ${most}` };
    } else if (code === BRACE_END || code === BRACKET_END) depth--;
  }
  return null;
}

const QUOTE = 34;
const BACKSLASH = 92;
const BRACE = 123;
const BRACE_END = 125;
const BRACKET = 91;
const BRACKET_END = 93;

const FORBIDDEN = new Set(['__proto__', 'prototype', 'constructor']);

/** The first key in parsed JSON that could reach into the prototype of an object; `null` if there is none. */
export function plainJsonFault(value: unknown, path = ''): Fault | null {
  if (typeof value !== 'object' || value === null) return null;
  const fields = value as Readonly<Record<string, unknown>>;
  const here = (key: string) => (path === '' ? key : `${path}.${key}`);
  for (const key of Object.keys(fields)) {
    if (FORBIDDEN.has(key)) return { path: here(key), found: 'a field of that name', expected: 'no such field' };
    const inner = fields[key];
    const fault = typeof inner === 'object' && inner !== null ? plainJsonFault(inner, here(key)) : null;
    if (fault) return fault;
  }
  return null;
}
