import type { WordsDocument, WordsLine } from './wordsDocument.ts';

/** The document as plain text, in the form that `patternFromText` reads. */
export function wordsToText(document: WordsDocument): string {
  const lines = [document.title];
  for (const { word, value } of document.header) lines.push(word === '' ? value : `${word}: ${value}`);
  if (document.abbreviations.length > 0) lines.push(`Abbreviations: ${document.abbreviations.map(({ short, meaning }) => `${short} = ${meaning}`).join('; ')}`);
  if (document.special.length > 0) lines.push(`Special stitches: ${document.special.map(({ name, meaning }) => `${name}: ${meaning.replaceAll(';', ',')}`).join('; ')}`);
  for (const section of document.sections) {
    lines.push('');
    if (section.name !== '') lines.push(`${section.name}${section.remark === '' ? '' : ` (${section.remark})`}`);
    lines.push(...section.lines.map(lineText));
  }
  return `${lines.join('\n')}\n`;
}

function lineText({ label, text, sizes }: WordsLine): string {
  const only = sizes.length === 0 ? '' : `${sizes.length > 1 ? 'Sizes' : 'Size'} ${sizes.join(' and ')} only: `;
  return label === '' ? only + text : `${only}${label}: ${text}`;
}
