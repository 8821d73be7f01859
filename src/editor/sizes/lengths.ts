import { readerFigure } from '../words/readerFigure.ts';

/** What lengths are read and typed in. The document keeps centimetres. */
export type LengthUnit = 'cm' | 'in';

/** The inch, by definition. */
export const CM_PER_INCH = 2.54;

/** A length in cm as a number of the unit. */
export function inUnit(cm: number, unit: LengthUnit): number {
  return unit === 'cm' ? cm : cm / CM_PER_INCH;
}

/** A number of the unit as cm, to a hundredth of a millimetre so that inches come back as they were typed. */
export function cmOf(value: number, unit: LengthUnit): number {
  return unit === 'cm' ? value : Number((value * CM_PER_INCH).toFixed(3));
}

/** A length without its unit: cm to one place, inches to two. */
export function lengthFigure(cm: number, unit: LengthUnit): string {
  return readerFigure(inUnit(cm, unit), places(unit));
}

/** A length with its unit. */
export function lengthWords(cm: number, unit: LengthUnit): string {
  return `${lengthFigure(cm, unit)} ${unit}`;
}

/** A difference with its sign; nothing to see is 0. */
export function differenceFigure(cm: number, unit: LengthUnit): string {
  if (Number(inUnit(Math.abs(cm), unit).toFixed(places(unit))) === 0) return '0';
  return `${cm < 0 ? '−' : '+'}${lengthFigure(Math.abs(cm), unit)}`;
}

/** A length as a field shows it: no more places than were typed or are worth showing. */
export function lengthTyped(cm: number | null, unit: LengthUnit): string {
  return cm === null ? '' : String(Number(inUnit(cm, unit).toFixed(places(unit))));
}

/** The yard, by definition. */
export const METRES_PER_YARD = 0.9144;

/** A length of yarn as a figure: metres, or yards where lengths are read in inches; below ten to one place. */
export function yarnFigure(metres: number, unit: LengthUnit): string {
  const value = unit === 'cm' ? metres : metres / METRES_PER_YARD;
  return readerFigure(value, value < 9.95 && value > 0 ? 1 : 0);
}

/** The unit that lengths of yarn are read in. */
export function yarnUnit(unit: LengthUnit): 'm' | 'yd' {
  return unit === 'cm' ? 'm' : 'yd';
}

/** A length of yarn with its unit. */
export function yarnWords(metres: number, unit: LengthUnit): string {
  return `${yarnFigure(metres, unit)} ${yarnUnit(unit)}`;
}

function places(unit: LengthUnit): number {
  return unit === 'cm' ? 1 : 2;
}
