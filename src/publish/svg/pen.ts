import { SheetProblem } from './readSvg.ts';

/** What elements inherit and what is done with them: the presentation attributes as read, lengths in the element's own units. */
export interface Pen {
  readonly fill: string;
  readonly stroke: string;
  readonly fillOpacity: number;
  readonly strokeOpacity: number;
  /** Product of the opacities of the element and all around it. */
  readonly opacity: number;
  readonly evenOdd: boolean;
  readonly clipEvenOdd: boolean;
  readonly strokeWidth: number;
  readonly cap: 'butt' | 'round' | 'square';
  readonly join: 'miter' | 'round' | 'bevel';
  readonly miterLimit: number;
  readonly dash: readonly number[];
  readonly dashOffset: number;
  readonly strokeFirst: boolean;
  readonly family: string;
  readonly sizeOfText: number;
  readonly bold: boolean;
  readonly italic: boolean;
  readonly anchor: 'start' | 'middle' | 'end';
  readonly baseline: 'alphabetic' | 'central' | 'middle' | 'hanging';
  readonly letterSpacing: number;
  readonly keepSpaces: boolean;
  readonly hidden: boolean;
}

/** The initial values of SVG 2. */
export const FIRST_PEN: Pen = {
  fill: '#000000', stroke: 'none', fillOpacity: 1, strokeOpacity: 1, opacity: 1, evenOdd: false, clipEvenOdd: false, strokeWidth: 1, cap: 'butt', join: 'miter',
  miterLimit: 4, dash: [], dashOffset: 0, strokeFirst: false, family: 'serif', sizeOfText: 16, bold: false, italic: false, anchor: 'start',
  baseline: 'alphabetic', letterSpacing: 0, keepSpaces: false, hidden: false,
};

type Reader = (value: string, pen: Pen) => Partial<Pen>;

/** How each presentation attribute changes the pen. */
const READERS: Readonly<Record<string, Reader>> = {
  fill: (value, pen) => ({ fill: paint(value, pen.fill) }),
  stroke: (value, pen) => ({ stroke: paint(value, pen.stroke) }),
  'fill-opacity': (value) => ({ fillOpacity: part(value) }),
  'stroke-opacity': (value) => ({ strokeOpacity: part(value) }),
  opacity: (value, pen) => ({ opacity: pen.opacity * part(value) }),
  'fill-rule': (value) => ({ evenOdd: oneOf(value, ['nonzero', 'evenodd']) === 'evenodd' }),
  'clip-rule': (value) => ({ clipEvenOdd: oneOf(value, ['nonzero', 'evenodd']) === 'evenodd' }),
  'stroke-width': (value) => ({ strokeWidth: length(value) }),
  'stroke-linecap': (value) => ({ cap: oneOf(value, ['butt', 'round', 'square']) }),
  'stroke-linejoin': (value) => ({ join: oneOf(value, ['miter', 'round', 'bevel']) }),
  'stroke-miterlimit': (value) => ({ miterLimit: length(value) }),
  'stroke-dasharray': (value) => ({ dash: value === 'none' ? [] : value.trim().split(/[\s,]+/).map(length) }),
  'stroke-dashoffset': (value) => ({ dashOffset: length(value) }),
  'paint-order': (value) => ({ strokeFirst: oneOf(value, ['normal', 'fill', 'stroke', 'stroke fill', 'fill stroke']).startsWith('stroke') }),
  'font-family': (value) => ({ family: value }),
  'font-size': (value) => ({ sizeOfText: length(value) }),
  'font-weight': (value) => ({ bold: value === 'bold' || value === 'bolder' || Number(value) >= 600 }),
  'font-style': (value) => ({ italic: oneOf(value, ['normal', 'italic', 'oblique']) !== 'normal' }),
  'text-anchor': (value) => ({ anchor: oneOf(value, ['start', 'middle', 'end']) }),
  'dominant-baseline': (value) => ({ baseline: value === 'auto' ? 'alphabetic' : oneOf(value, ['alphabetic', 'central', 'middle', 'hanging']) }),
  'letter-spacing': (value) => ({ letterSpacing: value === 'normal' ? 0 : length(value) }),
  'xml:space': (value) => ({ keepSpaces: oneOf(value, ['default', 'preserve']) === 'preserve' }),
  'white-space': (value) => ({ keepSpaces: oneOf(value, ['normal', 'nowrap', 'pre']) === 'pre' }),
  visibility: (value) => ({ hidden: oneOf(value, ['visible', 'hidden']) === 'hidden' }),
};

/** Attributes that say nothing about how an element looks. */
const SILENT = /^(id|class|role|lang|xml:lang|tabindex|version|xmlns(:.*)?|aria-.*|data-.*|shape-rendering|text-rendering|font-kerning)$/;

/**
 * The pen for an element: the one around it, changed by its attributes and its style attribute. `own` are the attributes that the
 * element itself understands (its geometry); any other that is not known is a SheetProblem.
 */
export function penFor(element: string, attributes: Readonly<Record<string, string>>, around: Pen, own: ReadonlySet<string>): Pen {
  let pen = around;
  const { style, ...plain } = attributes;
  const styles = (style ?? '').split(';').flatMap((one) => {
    const [name, ...value] = one.split(':');
    return name!.trim() === '' ? [] : [[name!.trim(), value.join(':').trim()] as const];
  });
  for (const [name, value] of [...Object.entries(plain), ...styles]) {
    if (own.has(name) || SILENT.test(name)) continue;
    const reader = Object.hasOwn(READERS, name) ? READERS[name] : undefined;
    if (!reader) throw new SheetProblem(`the attribute ${name}="${value}" of a ${element} is not known to the writer of PDF`);
    try {
      if (value !== 'inherit') pen = { ...pen, ...reader(value, pen) };
    } catch (error) {
      throw new SheetProblem(`${name}="${value}" of a ${element}: ${(error as Error).message}`, { cause: error });
    }
  }
  return pen;
}

/** A length in user units (a unit of px is one; mm and % would hide mistakes of scale). */
export function length(value: string): number {
  const made = Number(value.trim().replace(/px$/, ''));
  if (value.trim() === '' || !Number.isFinite(made)) throw new SheetProblem(`“${value}” is not a number of user units`);
  return made;
}

function part(value: string): number {
  return Math.min(1, Math.max(0, value.endsWith('%') ? length(value.slice(0, -1)) / 100 : length(value)));
}

function paint(value: string, around: string): string {
  return value === 'currentColor' ? around : value;
}

function oneOf<T extends string>(value: string, words: readonly T[]): T {
  const found = words.find((word) => word === value);
  if (found === undefined) throw new SheetProblem(`${words.join(', ')} was expected`);
  return found;
}
