import type { Block } from '../page/block.ts';
import type { Format } from '../page/format.ts';
import { printable } from '../type/printable.ts';
import type { WorkedPattern } from '../workedSizes.ts';
import { heading, labelled, paragraphs } from './setBlocks.ts';

/** Licence and credits as the designer gives them. */
export function imprintPart({ pattern }: WorkedPattern, format: Format): readonly Block[] {
  const { licence = '', credits = '' } = pattern.imprint ?? {};
  return [
    ...(printable(credits) === '' ? [] : [heading('Thanks', 3, format), ...paragraphs(credits, format)]),
    ...(printable(licence) === '' ? [] : [heading('Licence', 3, format), ...paragraphs(licence, format)]),
  ];
}

/** What has changed since earlier editions. */
export function editionsPart({ pattern }: WorkedPattern, format: Format): readonly Block[] {
  const editions = pattern.imprint?.editions ?? [];
  if (editions.length === 0) return [];
  return [
    heading('Changes since earlier editions', 3, format),
    ...editions.flatMap(({ name, date, errata }) => {
      const lines = errata.split(/[\r\n]+/).map(printable).filter((line) => line !== '');
      const label = [printable(name), printable(date)].filter((part) => part !== '').join(', ');
      return lines.slice(0, 400).map((line, i) => labelled(i === 0 ? label : '', [{ text: line, face: 'text' }], format));
    }),
  ];
}
