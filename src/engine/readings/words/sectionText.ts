import type { Line, Pattern, Section } from '../../1-pattern/pattern.ts';
import { mapAmount } from '../../notation/amounts.ts';
import type { Amount } from '../../notation/instruction.ts';
import type { Finding } from '../../notation/finding.ts';
import { readWritten } from '../../notation/readWritten.ts';
import { lastRow, writeLabel } from '../../notation/writeLabel.ts';
import type { WrittenLine } from '../../notation/written.ts';

/** A section as the text that its designer wrote: one line a line, labels with their numbers. */
export function sectionToText(section: Section): string {
  let last: Amount = 0;
  return section.lines
    .map((line) => {
      if (line.kind !== 'row') return line.text;
      const { label } = line;
      const first: Amount = label.start ?? mapAmount(last, (number) => number + 1);
      if (label.word === 'row' || label.word === 'round') last = lastRow(first, label.rows);
      else if (label.word === 'next') last = lastRow(mapAmount(last, (number) => number + 1), label.rows);
      const repeats = label.word === 'next' && /^(rep(eat)?|work)\b/i.test(line.text);
      return repeats ? line.text : `${writeLabel(label, first)}: ${line.text}`;
    })
    .join('\n');
}

/** Lines read from a section's text, without ids, and what reading the labels found (`where.text` in the text given). */
export interface SectionLines {
  readonly lines: readonly Line[];
  readonly findings: readonly Finding[];
}

/** Reads the text of one section of a pattern: rows, steps and notes, in the pattern's terms and sizes. Ids are empty. */
export function linesFromText(text: string, pattern: Pick<Pattern, 'terms' | 'sizes'>): SectionLines {
  const sizes = pattern.sizes.length > 1 ? `Sizes: ${pattern.sizes.join(', ')}\n` : '';
  const head = `T\nTerms: ${pattern.terms.toUpperCase()}\n${sizes}\nSECTION\n`;
  // A row at the end makes a section of any text; it is taken off again.
  const written = readWritten(`${head}${text}\nNext row: sc in next st.`);
  const lines = written.sections.flatMap((section, index): (WrittenLine | { readonly kind: 'note'; readonly text: string })[] => (index === 0 || section.name === '' ? [...section.lines] : [{ kind: 'note', text: section.name }, ...section.lines])).map((line): Line => {
    const own = line.text.replace(/[\r\n\t\u2060]+/g, ' ');
    return line.kind === 'row' ? { kind: 'row', id: '', label: line.label, text: own } : { kind: line.kind, id: '', text: own };
  }).slice(0, -1);
  const findings = written.findings
    .filter(({ rule }) => rule !== 'noRows' && rule !== 'textOutsideSection')
    .map((found) => (found.where.text ? { ...found, where: { ...found.where, text: [found.where.text[0] - head.length, found.where.text[1] - head.length] as const } } : found));
  return { lines, findings };
}
