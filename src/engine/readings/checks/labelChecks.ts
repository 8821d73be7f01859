import type { Line, Pattern, Section } from '../../1-pattern/pattern.ts';
import { finding, type Finding } from '../../notation/finding.ts';
import { amountFor } from '../../notation/instruction.ts';

type RowLine = Extract<Line, { kind: 'row' }>;

/**
 * Row numbers that do not follow the row before; a section may count on from the one before it. Where the row after goes on
 * from the number that was expected, the number in between is the slip, and that it follows is its certain mend; where it
 * goes on from the number that stands there, rows are missing or were put in, and only the designer knows which.
 */
export function labelChecks(section: Section, index: number, pattern: Pattern): Finding[] {
  const found: Finding[] = [];
  const lines = section.lines.filter(isNumbered);
  let last = 0;
  let begun = false;
  lines.forEach((line, at) => {
    const { start } = line.label;
    const rows = amountFor(line.label.rows, 0);
    const first = start === null ? last + 1 : amountFor(start, 0);
    const expected = last + 1;
    const wrong = first !== expected && (begun || first !== lastOfSection(pattern, index - 1) + 1);
    const next = lines[at + 1]?.label.start ?? null;
    const slip = wrong && begun && next !== null && amountFor(next, 0) === expected + rows;
    if (wrong) found.push(finding('doubtful', 'labelOrder', { section: section.id, line: line.id, nth: 0 }, { found: first, expected, mend: slip ? { line: line.id, range: [0, 0], text: '', label: String(expected) } : null }));
    begun = true;
    last = (slip ? expected : first) - 1 + rows;
  });
  return found;
}

function isNumbered(line: Line): line is RowLine {
  return line.kind === 'row' && line.label.word !== 'foundation' && line.label.word !== 'setup';
}

function lastOfSection(pattern: Pattern, index: number): number {
  let last = 0;
  for (const line of pattern.sections[index]?.lines ?? []) {
    if (!isNumbered(line)) continue;
    if (line.label.start !== null) last = amountFor(line.label.start, 0) - 1;
    last += amountFor(line.label.rows, 0);
  }
  return last;
}
