import { applyTransaction } from '../../../engine/1-pattern/applyTransaction.ts';
import type { Edit } from '../../../engine/1-pattern/edit.ts';
import type { Line, Pattern } from '../../../engine/1-pattern/pattern.ts';
import { freshIds } from './freshIds.ts';
import type { RowOfLine } from './rowOfLine.ts';

/** A row on a line of its own, and the edits that put it there; none where it stands alone already. */
export interface RowAlone {
  readonly edits: readonly Edit[];
  readonly line: Line;
  /** The pattern after those edits. */
  readonly pattern: Pattern;
}

/** Cuts the line of a row so that the row stands alone, in every size. */
export function rowAlone(pattern: Pattern, row: RowOfLine): RowAlone {
  const [first, second] = freshIds(pattern, 'line-', 2) as [string, string];
  const edits: Edit[] = [];
  const alone = row.nth > 0 ? first : row.line.id;
  const common = { kind: 'splitLine', section: row.section.id } as const;
  if (row.nth > 0) edits.push({ ...common, line: row.line.id, at: row.nth, newId: first });
  if (row.most - row.nth > 1) edits.push({ ...common, line: alone, at: 1, newId: row.nth > 0 ? second : first });
  const cut = applyTransaction(pattern, { label: '', at: 0, edits });
  if (!cut.ok) throw new RangeError(`row ${row.nth} of ${row.most} could not be cut out of its line: ${cut.reason}`);
  const line = cut.pattern.sections.find((section) => section.id === row.section.id)!.lines.find((each) => each.id === alone)!;
  return { edits, line, pattern: cut.pattern };
}
