import type { Pattern } from '../1-pattern/pattern.ts';
import type { PublishedFile } from './publication.ts';
import { printable } from './type/printable.ts';

/** What has changed since earlier editions as a plain text, for a website; none where there were none. */
export function editionsFile({ title, imprint }: Pattern, name: string): readonly PublishedFile[] {
  const editions = imprint?.editions ?? [];
  if (editions.length === 0) return [];
  const parts = editions.map(({ name: edition, date, errata }) => {
    const head = [printable(edition), printable(date)].filter((part) => part !== '').join(', ');
    return `Since ${head || 'an earlier edition'}:\n${errata.split(/[\r\n]+/).map(printable).filter((line) => line !== '').join('\n')}\n`;
  });
  return [{ name: `${name}-errata.txt`, text: `${printable(title) || 'Untitled'}: changes\n\n${parts.join('\n')}` }];
}
