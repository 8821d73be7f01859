import type { Line } from '../../1-pattern/pattern.ts';
import { amountFor, type Amount } from '../../notation/instruction.ts';
import { lastRow, writeLabel } from '../../notation/writeLabel.ts';

/** A section as written text: its name and remark, labels with their numbers, steps and notes. Row numbers count from 1. */
export function sectionText(section: { readonly name: string; readonly remark: string; readonly lines: readonly Line[] }): string {
  const texts = [section.remark === '' ? section.name : `${section.name} (${section.remark})`];
  let next: Amount = 1;
  for (const line of section.lines) {
    if (line.kind !== 'row') {
      texts.push(line.text);
      continue;
    }
    const numbered = line.label.word === 'row' || line.label.word === 'round' || line.label.word === 'next';
    const first: Amount = line.label.start ?? next;
    texts.push(`${writeLabel(line.label, first)}: ${line.text}`);
    if (numbered) next = after(lastRow(first, line.label.rows));
  }
  return texts.join('\n');
}

function after(last: Amount): Amount {
  if (typeof last === 'number') return last + 1;
  const numbers = last.map((_, size) => amountFor(last, size) + 1);
  return numbers.every((number) => number === numbers[0]) ? numbers[0]! : numbers;
}
