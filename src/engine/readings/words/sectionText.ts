import type { Line, Pattern, Section } from '../../1-pattern/pattern.ts';
import { mapAmount } from '../../notation/amounts.ts';
import { withoutJoiners } from '../../notation/cleanText.ts';
import type { Amount, TextRange } from '../../notation/instruction.ts';
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

/** Lines read from a section's text, without ids, the characters of each one's own text in the text given, and what reading the labels found (`where.text` in the text given). */
export interface SectionLines {
  readonly lines: readonly Line[];
  readonly places: readonly TextRange[];
  readonly findings: readonly Finding[];
}

/** Reads the text of one section of a pattern: rows, steps and notes, in the pattern's terms and sizes. Ids are empty. */
export function linesFromText(text: string, pattern: Pick<Pattern, 'terms' | 'sizes'>): SectionLines {
  const sizes = pattern.sizes.length > 1 ? `Sizes: ${pattern.sizes.join(', ')}\n` : '';
  const head = `T\nTerms: ${pattern.terms.toUpperCase()}\n${sizes}\nSECTION\n`;
  // A row at the end makes a section of any text; it is taken off again.
  const whole = `${head}${text}\nNext row: sc in next st.`;
  const written = readWritten(whole);
  const read = written.sections
    .flatMap((section, index): readonly (WrittenLine | NameAlone)[] => (index === 0 || section.name === '' ? section.lines : [nameAlone(whole, section.lineNumber), ...section.lines]))
    .slice(0, -1);
  const lines = read.map((line): Line => {
    // A break is one space and no more, so that characters keep their places.
    const own = withoutJoiners(line.text.replace(/[\r\n\t]/g, ' '));
    return line.kind === 'row' ? { kind: 'row', id: '', label: line.label, text: own } : { kind: line.kind, id: '', text: own };
  });
  const places = read.map(({ range: [from, to] }): TextRange => [from - head.length, to - head.length]);
  const findings = written.findings
    .filter(({ rule }) => rule !== 'noRows' && rule !== 'textOutsideSection')
    .map((found) => (found.where.text ? { ...found, where: { ...found.where, text: [found.where.text[0] - head.length, found.where.text[1] - head.length] as const } } : found));
  return { lines, places, findings };
}

type NameAlone = Extract<WrittenLine, { kind: 'note' }>;

/** A line that would name another section: in the text of one it is a note, whole as it stands. `lineNumber` counts from 1. */
function nameAlone(whole: string, lineNumber: number): NameAlone {
  const breaks = [...whole.matchAll(/\r\n|\r|\n/g)];
  const before = breaks[lineNumber - 2];
  const from = before ? before.index + before[0].length : 0;
  const to = breaks[lineNumber - 1]?.index ?? whole.length;
  return { kind: 'note', text: whole.slice(from, to), range: [from, to], lineNumber };
}
