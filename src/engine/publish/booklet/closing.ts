import type { Block } from '../page/block.ts';
import type { Format } from '../page/format.ts';
import { printable } from '../type/printable.ts';
import type { WorkedPattern } from '../workedSizes.ts';
import { besideHeading, labelled, paragraphs } from './setBlocks.ts';

/** Licence and credits as the designer gives them. */
export function imprintPart({ pattern }: WorkedPattern, format: Format): readonly Block[] {
  const { licence = '', credits = '' } = pattern.imprint ?? {};
  return [
    ...(printable(credits) === '' ? [] : besideHeading('Thanks', paragraphs(credits, format), format)),
    ...(printable(licence) === '' ? [] : besideHeading('Licence', paragraphs(licence, format), format)),
  ];
}

/** What has changed since earlier editions. */
export function editionsPart({ pattern }: WorkedPattern, format: Format): readonly Block[] {
  const editions = pattern.imprint?.editions ?? [];
  if (editions.length === 0) return [];
  return besideHeading('Changes', editions.flatMap(({ name, date, errata }) => {
    const lines = errata.split(/[\r\n]+/).map(printable).filter((line) => line !== '').slice(0, 400);
    const edition = [printable(name), printable(date)].filter((part) => part !== '').join(', ');
    return [labelled('', [{ text: `Since ${edition || 'an earlier edition'}:`, face: 'bold' }], format), ...lines.map((line) => labelled('', [{ text: line, face: 'text' }], format))];
  }), format);
}
