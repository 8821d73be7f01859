/** Ways in which a pattern file goes wrong, each in the hands of seeded numbers. */

type Draw = () => number;
type Fields = Record<string, unknown>;

const below = (draw: Draw, most: number) => Math.floor(draw() * most);
const pick = <T>(draw: Draw, list: readonly T[]): T => list[below(draw, list.length)]!;

/** Values that no field expects, or none of that size. */
const ODD: readonly unknown[] = [
  null, true, false, 0, -0, -1, 0.5, 1e300, -1e300, 2 ** 53, 100_001, 1e21, '', 'A', 'Q', '.', '\u0000', '\ud800', 'x'.repeat(500), [], {}, [[]], [null], [1, 2, 3], { kind: 'row' },
  { length: 1e9 }, 'constructor', { toString: null }, { then: 1 }, ['A', 'A'], { line: 'leg-2', nth: 1e9 },
];
const TOKENS = ['{', '}', '[', ']', '"', ',', ':', '-', '0', '1e999', '-1e999', '00', 'NaN', 'null', 'true', '"__proto__":', '"constructor":{},', '\\u', '\\u0000', '/*', '//', '\n', '\u2028', '\uFEFF', '\u0000'];
const DANGEROUS = ['__proto__', 'constructor', 'prototype', 'toString', 'hasOwnProperty', 'valueOf', '__defineGetter__', 'length', 'id', ''];

/** The ways, by name: each makes another text of a sound file's text. */
export const MUTATIONS: Readonly<Record<string, (text: string, draw: Draw) => string>> = {
  'bytes changed': (text, draw) => edited(text, draw, (bytes, at) => (bytes[at] = below(draw, 256))),
  'bits flipped': (text, draw) => edited(text, draw, (bytes, at) => (bytes[at]! ^= 1 << below(draw, 8))),
  'cut off': (text, draw) => text.slice(0, below(draw, text.length)),
  'beginning lost': (text, draw) => text.slice(below(draw, text.length)),
  'a piece lost': (text, draw) => spliced(text, draw, ''),
  'a piece twice': (text, draw) => {
    const from = below(draw, text.length);
    return spliced(text, draw, text.slice(from, from + below(draw, 300)));
  },
  'tokens put in': (text, draw) => Array.from({ length: 1 + below(draw, 4) }).reduce<string>((now) => spliced(now, draw, pick(draw, TOKENS), 3), text),
  'types swapped': (text, draw) => changed(text, draw, (holder, key) => (holder[key] = pick(draw, ODD))),
  'huge numbers': (text, draw) => text.replace(/-?\d+(\.\d+)?/g, (number) => (draw() < 0.1 ? pick(draw, ['1e308', '9'.repeat(1 + below(draw, 400)), '-1', '0.000000001', '100000', '99999', '1e-400']) : number)),
  'nested deep': (text, draw) => {
    const depth = 1 + below(draw, 3_000);
    const [open, close] = pick(draw, [['[', ']'], ['{"a":', '}']] as const);
    return spliced(text, draw, `${open.repeat(depth)}1${draw() < 0.7 ? close.repeat(depth) : ''}`, 0);
  },
  'a way into the prototype': (text, draw) => text.replace(/\{/g, (brace) => (draw() < 0.05 ? `{${JSON.stringify(pick(draw, DANGEROUS))}:${pick(draw, ['1', '{"polluted":true}', 'null', '[]'])},` : brace)),
  'a field lost or renamed': (text, draw) => changed(text, draw, (holder, key) => {
    const value = holder[key];
    if (Array.isArray(holder)) holder.splice(Number(key), 1);
    else Reflect.deleteProperty(holder, key);
    if (draw() < 0.5 && !Array.isArray(holder)) holder[`${key}s`] = value;
  }),
  'lists grown': (text, draw) => changed(text, draw, (holder, key) => {
    const value = holder[key];
    if (Array.isArray(value)) holder[key] = Array.from({ length: below(draw, 60) }, () => value[0] as unknown);
    else if (typeof value === 'string') holder[key] = value.repeat(below(draw, 12));
  }),
  'a part in the place of another': (text, draw) => {
    let taken: unknown;
    changed(text, draw, (holder, key) => (taken = holder[key]));
    const part = JSON.stringify(taken);
    return changed(text, draw, (holder, key) => (holder[key] = JSON.parse(part) as unknown));
  },
};

function edited(text: string, draw: Draw, change: (bytes: Uint8Array, at: number) => void): string {
  const bytes = new TextEncoder().encode(text);
  for (let i = 0; i <= below(draw, 4); i++) change(bytes, below(draw, bytes.length));
  return new TextDecoder().decode(bytes);
}

function spliced(text: string, draw: Draw, put: string, cut = 300): string {
  const at = below(draw, text.length);
  return text.slice(0, at) + put + text.slice(at + below(draw, cut + 1));
}

// Parsed once; a change is taken back before the next one.
const parsed = new Map<string, { readonly file: Fields; readonly spots: ReturnType<typeof spotsOf> }>();

function changed(text: string, draw: Draw, change: (holder: Fields, key: string) => void): string {
  let known = parsed.get(text);
  if (!known) {
    const file = JSON.parse(text) as Fields;
    parsed.set(text, (known = { file, spots: spotsOf(file) }));
  }
  const { holder, key } = pick(draw, known.spots);
  const before = Array.isArray(holder) ? [...(holder as unknown[])] : { ...holder };
  change(holder, key);
  const broken = JSON.stringify(known.file);
  if (Array.isArray(holder)) holder.length = 0;
  else for (const each of Object.keys(holder)) Reflect.deleteProperty(holder, each);
  Object.assign(holder, before);
  return broken;
}

function spotsOf(value: unknown): readonly { readonly holder: Fields; readonly key: string }[] {
  if (typeof value !== 'object' || value === null) return [];
  const holder = value as Fields;
  return Object.keys(holder).flatMap((key) => [{ holder, key }, ...spotsOf(holder[key])]);
}
