import type { PatternFromText } from '../../engine/1-pattern/patternFromText.ts';
import type { Line, Pattern } from '../../engine/1-pattern/pattern.ts';
import type { Fabric } from '../../engine/3-fabric/fabric.ts';
import type { Finding } from '../../engine/notation/finding.ts';
import { writeLabel } from '../../engine/notation/writeLabel.ts';
import { oncePerWords } from '../words/oncePerWords.ts';

/** A line of a written pattern as it was understood. */
export interface UnderstoodLine {
  readonly line: Line;
  /** Line of the text, counted from 1. */
  readonly lineNumber: number;
  /** `Rows 2-6`; empty for steps and notes. */
  readonly label: string;
  /** What its last row made, and what its rows left open ahead; null where it has no row. */
  readonly made: number | null;
  readonly left: number | null;
  /** The count it states, where it is another than the one made. */
  readonly rows: number;
  readonly findings: readonly Finding[];
}

/** A section as it was understood. */
export interface UnderstoodSection {
  readonly id: string;
  readonly name: string;
  readonly lines: readonly UnderstoodLine[];
}

/** The pattern of a text line by line, beside what its rows make in one size. `findings` are all that were found. */
export function readingLines(pattern: Pattern, fabric: Fabric, findings: readonly Finding[], lines: PatternFromText['lines']): readonly UnderstoodSection[] {
  const rowsOf = new Map<string, number[]>();
  fabric.rows.forEach((row, index) => {
    const known = rowsOf.get(row.key.line);
    if (known) known.push(index);
    else rowsOf.set(row.key.line, [index]);
  });
  const found = new Map<string, Finding[]>();
  for (const each of findings) {
    if (each.where.line === null || typeof each.params['line'] === 'number') continue;
    const known = found.get(each.where.line);
    if (known) known.push(each);
    else found.set(each.where.line, [each]);
  }
  return pattern.sections.map((section) => ({
    id: section.id,
    name: section.name,
    lines: section.lines.map((line): UnderstoodLine => {
      const rows = (rowsOf.get(line.id) ?? []).map((index) => fabric.rows[index]!);
      const last = rows.at(-1);
      const worked = line.kind !== 'note' && last !== undefined && (last.made > 0 || line.kind === 'row');
      return {
        line, lineNumber: lines.get(line.id)?.lineNumber ?? 0,
        label: line.kind === 'row' ? writeLabel(line.label, rows[0]?.number ?? line.label.start ?? 1, 0) : '',
        made: worked ? last.made : null, left: worked ? last.left.ahead : null, rows: rows.length,
        findings: oncePerWords(found.get(line.id) ?? []),
      };
    }),
  }));
}
