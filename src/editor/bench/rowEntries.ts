import type { Line, Pattern, RowKey } from '../../engine/1-pattern/pattern.ts';
import type { Fabric, WorkedRow } from '../../engine/3-fabric/fabric.ts';
import type { Finding } from '../../engine/notation/finding.ts';
import { amountFor } from '../../engine/notation/instruction.ts';

/** A row of the section shown as ledger and words tell it. */
export interface RowEntry {
  /** Row index in the fabric; -1 for a note, which is no row. */
  readonly row: number;
  readonly key: RowKey;
  /** "Row 12", "Foundation", "Seam": how the row is called. */
  readonly name: string;
  readonly line: Line;
  /** Rows of its line in this size. */
  readonly rows: number;
  readonly worked: WorkedRow | null;
  readonly findings: readonly Finding[];
}

/** The rows, steps and notes of a section in worked order. */
export function rowEntries(pattern: Pattern, fabric: Fabric, section: number, size: number, findings: readonly Finding[]): RowEntry[] {
  const owner = pattern.sections[section];
  const laid = fabric.sections[section];
  if (!owner || !laid) return [];
  const workedOf = new Map<string, number>();
  for (let row = laid.firstRow; row < laid.endRow; row++) {
    const { key } = fabric.rows[row]!;
    workedOf.set(`${key.line} ${key.nth}`, row);
  }
  return owner.lines.flatMap((line) => {
    const rows = line.kind === 'row' ? amountFor(line.label.rows, size) : 1;
    const found = findings.filter((each) => each.where.line === line.id);
    return Array.from({ length: rows }, (_, nth) => {
      const row = workedOf.get(`${line.id} ${nth}`) ?? -1;
      const worked = fabric.rows[row] ?? null;
      const own = found.filter((each) => each.where.nth === null || each.where.nth === nth);
      return { row, key: { line: line.id, nth }, name: rowName(line, worked), line, rows, worked, findings: own };
    });
  });
}

/** How a row is called in the editor. */
export function rowName(line: Line, worked: WorkedRow | null): string {
  if (line.kind !== 'row') return line.kind === 'step' ? 'Step' : 'Note';
  if (line.label.word === 'foundation') return 'Foundation';
  const number = worked?.number ?? null;
  if (number === null) return line.label.word === 'setup' ? 'Set-up row' : 'Next row';
  return `${line.label.word === 'round' ? 'Round' : 'Row'} ${number}`;
}
