import type { WordsLine, WordsSection } from '../../readings/words/wordsDocument.ts';
import type { Run } from '../type/breakLines.ts';
import { printable } from '../type/printable.ts';
import type { Block } from '../page/block.ts';
import type { Format } from '../page/format.ts';
import { titled } from '../../notation/titled.ts';
import { heading, labelled, paragraph } from './setBlocks.ts';

/** The rows of a section under its name: each row with its label beside it and its count in bold, held on one page. */
export function sectionWords(section: WordsSection, format: Format): readonly Block[] {
  const name = printable(section.name) || 'Instructions';
  const blocks = section.lines.map((line) => lineBlock(line, format));
  const held = blocks.length <= FEW_LINES ? blocks.length : 2;
  // The last line of a section is never alone on a page, nor is a section of few lines parted.
  return [heading(titled(name), 2, format, section.remark), ...blocks.map((one, i) => (i < blocks.length - 1 && i >= blocks.length - held ? { ...one, withNext: true } : one))];
}

/** Sections of so few lines stand on one page. */
const FEW_LINES = 4;

function lineBlock(line: WordsLine, format: Format): Block {
  const text = heldTogether(printable(line.text));
  if (line.kind === 'note') return paragraph(text, format, 'italic');
  const only = line.sizes.length === 0 ? '' : `${line.sizes.length > 1 ? 'Sizes' : 'Size'} ${line.sizes.map(printable).join(' and ')} only`;
  const label = [only, printable(line.label).replace(/(\d)-(?=\d)/g, '$1–')].filter((part) => part !== '').join(': ');
  return labelled(label, rowRuns(text), format);
}

/** Numbers and the short words that they count, held on one line: `2 times`, `17 sts`, `sc 3`. */
function heldTogether(text: string): string {
  return text.replace(/(\d\)?) (?=(?:times|sts?|chs?)\b)/g, '$1\u00a0').replace(/(?<=\b(?:sc|hdc|dc|tr|dtr|htr|ch)) (?=\d)/g, '\u00a0').replace(/(?<=(?:^|[ *(,])[A-Z]) (?=(?:sc|hdc|dc|tr|dtr|htr)\b)/g, '\u00a0');
}

/** Counts longer than this may be parted, characters. */
const LONGEST_HELD = 32;

/** The row's text with what it ends in, its count, in bold: the number that is looked for when the row is done. */
export function rowRuns(text: string): readonly Run[] {
  const count = /^(.*\S)\s+(\([^()]*(?:\([^()]*\)[^()]*)*\)|—[^—]*\.)$/u.exec(text);
  if (!count) return [{ text, face: 'text' }];
  return [{ text: `${count[1]!} `, face: 'text' }, { text: count[2]!.length > LONGEST_HELD ? count[2]! : count[2]!.replaceAll(' ', '\u00a0'), face: 'bold' }];
}
