import type { WordsLine, WordsSection } from '../../readings/words/wordsDocument.ts';
import type { Run } from '../type/breakLines.ts';
import { printable } from '../type/printable.ts';
import type { Block } from '../page/block.ts';
import type { Format } from '../page/format.ts';
import { titled } from '../titled.ts';
import { heading, labelled, paragraph } from './setBlocks.ts';

/** The rows of a section under its name: each row with its label beside it and its count in bold, held on one page. */
export function sectionWords(section: WordsSection, format: Format): readonly Block[] {
  const name = printable(section.name) || 'Instructions';
  return [heading(titled(name), 2, format, section.remark), ...section.lines.map((line) => lineBlock(line, format))];
}

function lineBlock(line: WordsLine, format: Format): Block {
  const text = printable(line.text);
  if (line.kind === 'note') return paragraph(text, format, 'italic');
  const only = line.sizes.length === 0 ? '' : `${line.sizes.length > 1 ? 'Sizes' : 'Size'} ${line.sizes.map(printable).join(' and ')} only`;
  const label = [only, printable(line.label).replace(/(\d)-(?=\d)/g, '$1–')].filter((part) => part !== '').join(': ');
  return labelled(label, rowRuns(text), format);
}

/** The row's text with what it ends in, its count, in bold: the number that is looked for when the row is done. */
export function rowRuns(text: string): readonly Run[] {
  const count = /^(.*\S)\s+(\([^()]*(?:\([^()]*\)[^()]*)*\)|—[^—]*\.)$/u.exec(text);
  if (!count) return [{ text, face: 'text' }];
  return [{ text: `${count[1]!} `, face: 'text' }, { text: count[2]!, face: 'bold' }];
}
