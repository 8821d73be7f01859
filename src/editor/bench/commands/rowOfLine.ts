import type { Line, Pattern, RowKey, Section } from '../../../engine/1-pattern/pattern.ts';
import { amountFor } from '../../../engine/notation/instruction.ts';

/** A row of a section with the line that it belongs to. */
export interface RowOfLine {
  readonly section: Section;
  readonly line: Line;
  /** Index of the line in its section. */
  readonly at: number;
  readonly nth: number;
  /** Rows of the line in the size shown. */
  readonly rows: number;
  /** Rows of the line in the size that has most. */
  readonly most: number;
}

/** Finds a row by its key; null where the section has no such row in this size. */
export function rowOfLine(pattern: Pattern, section: string, key: RowKey, size: number): RowOfLine | null {
  const owner = pattern.sections.find((each) => each.id === section);
  const at = owner?.lines.findIndex((line) => line.id === key.line) ?? -1;
  const line = owner?.lines[at];
  if (!owner || !line) return null;
  const amount = line.kind === 'row' ? line.label.rows : 1;
  const rows = amountFor(amount, size);
  const most = typeof amount === 'number' ? amount : Math.max(...amount);
  return key.nth < rows ? { section: owner, line, at, nth: key.nth, rows, most } : null;
}
