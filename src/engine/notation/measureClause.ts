import type { Instruction } from './instruction.ts';
import type { RowReader } from './rowReader.ts';

const NUMBER = String.raw`(\d{1,4}(?:[.,]\d{1,2})?)(?:[ -]?([½¼¾]|[1357]\/[248]))?`;
const SIZES = String.raw`(?:[ ]*[([]((?:[ ]*\d{1,4}(?:[.,]\d{1,2})?[ ]?[½¼¾]?[ ]*[,;]?)+)[)\]])?`;
const UNIT = String.raw`[ -]?(cm|centimet(?:er|re)s?|mm|millimet(?:er|re)s?|inch(?:es)?|ins?\b|["”″])`;
const MEASURE = new RegExp(String.raw`\b(until|for)\b([^.;]*?)\b(?:measures?|is|for|until)?[ ]*(?:about[ ]|approx(?:imately)?\.?[ ]|a total of[ ])?${NUMBER}${SIZES}${UNIT}\.?([^.;()]*)`, 'iu');
const CM: Readonly<Record<string, number>> = { c: 1, m: 0.1, i: 2.54 };
const FRACTION: Readonly<Record<string, number>> = { '½': 0.5, '¼': 0.25, '¾': 0.75, '1/2': 0.5, '1/4': 0.25, '3/4': 0.75, '1/8': 0.125, '3/8': 0.375, '5/8': 0.625, '7/8': 0.875 };

/** A length that rows are worked to: of the whole part so far, or of these rows alone. One number, or one per size. */
export interface Measured {
  readonly cm: readonly number[];
  readonly from: 'beginning' | 'here';
  /** Characters of the words. */
  readonly range: readonly [number, number];
}

/** `until piece measures 10 cm`, `until it measures 4 ins from beg`, `for 12 (13, 14) cm`; null for other words. Linear in the text. */
export function measuredIn(text: string): Measured | null {
  if (!/\b(?:until|for)\b/i.test(text)) return null;
  const match = MEASURE.exec(text.length > 2000 ? text.slice(0, 2000) : text);
  if (!match) return null;
  const until = /until/i.test(match[1]!);
  if (until && !/\bmeasures?\b|\blong\b|\bis\b/i.test(match[0])) return null;
  if (!until && match[2]!.trim() !== '' && !/^[ ]*(?:about|a further|another)[ ]*$/i.test(match[2]!)) return null;
  const scale = CM[match[6]![0]!.toLowerCase()] ?? 2.54;
  const numbers = [valueOf(match[3]!, match[4]), ...(match[5] ?? '').split(/[,;](?![ ]*\d+[ ]*$)|[,;]/).filter((part) => part.trim() !== '').map((part) => valueOf(part, /[½¼¾]/.exec(part)?.[0]))];
  if (numbers.some((value) => !(value > 0))) return null;
  return { cm: numbers.map((value) => Number((value * scale).toFixed(3))), from: until ? 'beginning' : 'here', range: [match.index, match.index + match[0].trimEnd().replace(/[.,]$/, '').length] };
}

function valueOf(digits: string, fraction: string | undefined): number {
  return Number(digits.replace(/[^\d.,]/g, '').replace(',', '.')) + (fraction === undefined ? 0 : (FRACTION[fraction] ?? 0));
}

/** The words of a length, kept: how many rows they are is the label's affair. */
export function readMeasure(reader: RowReader): Instruction | null {
  if (!reader.is('until') && !reader.is('for')) return null;
  const { from } = reader.token();
  const measured = measuredIn(reader.text.slice(from, from + 300));
  if (!measured || measured.range[0] !== 0) return null;
  const start = reader.at;
  while (reader.at < reader.end && reader.token().to <= from + measured.range[1]) reader.at++;
  return reader.at > start ? { kind: 'remark', text: reader.slice(start), range: reader.range(start) } : null;
}
