import type { PrintMark, Yarn } from '../../engine/1-pattern/pattern.ts';

/** All print marks, as a maker would call them. */
export const MARK_NAMES = {
  none: 'left blank', dot: 'dot', slash: 'slanted line', cross: 'cross', bars: 'three bars', ring: 'ring', wedge: 'half filled', solid: 'filled',
} as const satisfies Readonly<Record<PrintMark, string>>;

const LETTERS = 'ABCDEFGHIJKLMNOPQRSTUVWXYZ';
/** Colours that a new yarn may have at first, far from one another. */
const FRESH = ['#f2efe6', '#34495e', '#c8553d', '#d9a441', '#4f7f6b', '#8a6f9e', '#7a5c43', '#9fb4c0'];

/** The yarns with one more: the first free letter, a mark and a colour that none of them has. The same yarns where all letters are taken. */
export function withYarn(yarns: readonly Yarn[], colour?: string): readonly Yarn[] {
  const letter = [...LETTERS].find((each) => !yarns.some((yarn) => yarn.letter === each));
  if (letter === undefined) return yarns;
  const marks = Object.keys(MARK_NAMES) as PrintMark[];
  const mark = marks.find((each) => !yarns.some((yarn) => yarn.mark === each)) ?? 'dot';
  const fresh = colour ?? FRESH.find((each) => !yarns.some((yarn) => yarn.colour.toLowerCase() === each)) ?? '#808080';
  return [...yarns, { letter, name: 'new yarn', colour: fresh, mark }];
}

/** The yarns with one of them otherwise. */
export function changedYarn(yarns: readonly Yarn[], letter: string, change: Partial<Omit<Yarn, 'letter'>>): readonly Yarn[] {
  return yarns.map((yarn) => (yarn.letter === letter ? { ...yarn, ...change } : yarn));
}

/** Two yarns changed over in the whole piece: each letter gets the other's name, colour and mark. */
export function swappedYarns(yarns: readonly Yarn[], one: string, other: string): readonly Yarn[] {
  const a = yarns.find((yarn) => yarn.letter === one);
  const b = yarns.find((yarn) => yarn.letter === other);
  if (!a || !b) return yarns;
  return yarns.map((yarn) => (yarn === a ? { ...b, letter: a.letter } : yarn === b ? { ...a, letter: b.letter } : yarn));
}

/** The yarns in other colours, in their order; those that have none of their own stay. */
export function recoloured(yarns: readonly Yarn[], colours: readonly string[]): readonly Yarn[] {
  return yarns.map((yarn, i) => ({ ...yarn, colour: colours[i] ?? yarn.colour }));
}

/** `#rrggbb` of what was typed (`#abc`, `ABCDEF`), or null where it is no such colour. */
export function hexColour(typed: string): string | null {
  const digits = typed.trim().replace(/^#/, '').toLowerCase();
  if (/^[0-9a-f]{6}$/.test(digits)) return `#${digits}`;
  return /^[0-9a-f]{3}$/.test(digits) ? `#${[...digits].map((digit) => digit + digit).join('')}` : null;
}
