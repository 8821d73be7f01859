import type { Line } from '../../1-pattern/pattern.ts';
import type { Mend } from '../../notation/finding.ts';

/** A line with a mend put in: the words at its range, or for a label that its number follows the row before. */
export function mendedLine<L extends Line>(line: L, { range: [from, to], text, label }: Mend): L {
  if (label !== undefined) return line.kind === 'row' ? { ...line, label: { ...line.label, start: null } } : line;
  return { ...line, text: line.text.slice(0, from) + text + line.text.slice(to) };
}
