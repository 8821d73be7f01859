import { rounded, type Origin, type Rounding, type Unit } from '../../engine/2-construct/recipes/origin.ts';
import { readerFigure } from '../words/readerFigure.ts';
import { CM_PER_INCH, lengthFigure, lengthWords, METRES_PER_YARD, yarnFigure, yarnWords, type LengthUnit } from './lengths.ts';

/** A number of a tree of origins with its unit, as read. Lengths in the unit chosen. */
export function originValue({ value, unit, key }: Pick<Origin, 'value' | 'unit' | 'key'>, lengths: LengthUnit): string {
  if (unit === 'cm') return lengthWords(value, lengths);
  if (unit === 'm') return yarnWords(value, lengths);
  if (unit === 'g/m' && lengths === 'in') return `${figure(value * METRES_PER_YARD, 3)} g/yd`;
  if (unit === 'money') return readerFigure(value, 2);
  if (unit === 'balls') return `${value} ${value === 1 ? 'ball' : 'balls'}`;
  if (unit === 'share') return /ease|share|margin/i.test(key) ? `${figure(value * 100, 1)} %` : figure(value, 3);
  if (lengths === 'in' && (unit === 'sts/cm' || unit === 'rows/cm')) return `${figure(value * CM_PER_INCH, 3)} ${unit === 'sts/cm' ? 'sts' : 'rows'}/in`;
  return `${figure(value, UNIT_PLACES[unit])}${UNIT_WORDS[unit]}`;
}

/** Words of a tree of origins in the unit chosen: `20 sts in 10 cm` is `20 sts in 3.94 inches`. */
export function originText(words: string, lengths: LengthUnit): string {
  if (lengths === 'cm') return words;
  return words.replace(/\bin 1 cm\b/g, 'in 1 inch').replace(/\bin cm\b/g, 'in inches').replace(/(\d+(?:\.\d+)?) cm\b/g, (_, cm: string) => `${lengthFigure(Number(cm), 'in')} inches`)
    .replace(/(\d+(?:\.\d+)?)(?: to (\d+(?:\.\d+)?))? m\b/g, (_, from: string, to: string | undefined) => `${[from, ...(to === undefined ? [] : [to])].map((metres) => yarnFigure(Number(metres), 'in')).join(' to ')} yd`).replace(/of a metre\b/g, 'of a yard');
}

type Counted = Exclude<Unit, 'cm' | 'm' | 'share' | 'money' | 'balls'>;
const UNIT_WORDS: Readonly<Record<Counted, string>> = { g: ' g', sts: ' sts', rows: ' rows', 'sts/cm': ' sts/cm', 'rows/cm': ' rows/cm', 'g/m': ' g/m', times: ' times', number: '' };
const UNIT_PLACES: Readonly<Record<Counted, number>> = { g: 1, sts: 2, rows: 2, 'sts/cm': 3, 'rows/cm': 3, 'g/m': 3, times: 2, number: 1 };

/** Where a number comes from, in a sentence without its full stop; its inputs are told apart from it. */
export function originHow(origin: Origin, lengths: LengthUnit): string {
  const { from } = origin;
  switch (from.kind) {
    case 'given':
    case 'table':
      return originText(from.source, lengths);
    case 'pinned':
      return `set by hand; reckoned it would be ${originValue(from.instead, lengths)}`;
    case 'formula':
      return from.rounding === null ? originText(from.formula, lengths) : `${originText(from.formula, lengths)}; exactly ${originValue({ ...origin, value: from.exact }, lengths)}, ${roundingWords(from.exact, from.rounding)}`;
  }
}

/** The numbers that a number is reckoned from. */
export function originInputs({ from }: Origin): readonly Origin[] {
  if (from.kind === 'formula') return from.inputs;
  return from.kind === 'pinned' ? originInputs(from.instead) : [];
}

function roundingWords(exact: number, { how, step, plus, least }: Rounding): string {
  const to = step === 1 && plus === 0 ? 'whole number' : `multiple of ${step}${plus === 0 ? '' : ` and ${plus}`}`;
  const floor = rounded(exact, { how, step, plus, least: -Infinity }) < least ? `, at least ${least}` : '';
  return `${how === 'nearest' ? 'to the nearest' : how === 'up' ? 'up to a' : 'down to a'} ${to}${floor}`;
}

function figure(value: number, places: number): string {
  return readerFigure(value, places, 0);
}
