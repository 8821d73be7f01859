import type { Pattern } from '../../engine/1-pattern/pattern.ts';
import type { Program } from '../../engine/2-construct/program.ts';
import { writeRow } from '../../engine/notation/writeRow.ts';

/** The words of a section's rows for the size of the program, by row index. */
export function sectionWords(pattern: Pattern, program: Program, section: number): ReadonlyMap<number, string> {
  const words = new Map<number, string>();
  program.rows.forEach((row, index) => {
    if (row.section !== section) return;
    const stated = row.stated ? { ...row.stated, of: 'row' as const, step: null } : null;
    words.set(index, writeRow(row.body, stated, { terms: pattern.terms, size: program.size }));
  });
  return words;
}
