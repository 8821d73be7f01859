import type { CellRun, RowKey } from './pattern.ts';

type Run = Pick<CellRun, 'from' | 'letters'>;

/** Order of loose cells in a document: section, line, row, size, column; by the characters of the ids, so the same everywhere. */
export function compareCells(a: Omit<CellRun, 'letters'>, b: Omit<CellRun, 'letters'>): number {
  return compareRows(a, b) || a.from - b.from;
}

/** As `compareCells`, without the column: 0 for runs of the same row and size. */
export function compareRows(a: CellPlace, b: CellPlace): number {
  return compareText(a.section, b.section) || compareText(a.row.line, b.row.line) || a.row.nth - b.row.nth || a.size - b.size;
}

/** The row of one size that runs of loose cells lie on. */
export interface CellPlace {
  readonly section: string;
  readonly row: RowKey;
  readonly size: number;
}

function compareText(a: string, b: string): number {
  return a < b ? -1 : a > b ? 1 : 0;
}

/**
 * The runs of one row in the one form that a document keeps: from left to right, none touching another, no `.` in them.
 * Where runs overlap the later one wins.
 */
export function canonicalRuns(runs: readonly Run[]): readonly Run[] {
  const letters = new Map<number, string>();
  for (const run of runs) {
    for (let i = 0; i < run.letters.length; i++) if (run.letters[i] !== '.') letters.set(run.from + i, run.letters[i]!);
  }
  const out: { from: number; letters: string }[] = [];
  for (const column of [...letters.keys()].sort((a, b) => a - b)) {
    const last = out.at(-1);
    if (last && last.from + last.letters.length === column) last.letters += letters.get(column)!;
    else out.push({ from: column, letters: letters.get(column)! });
  }
  return out;
}

/** All loose cells of a document in the one form that it keeps, see `canonicalRuns` and `compareCells`; the same list if they are in it already. */
export function canonicalCells(cells: readonly CellRun[]): readonly CellRun[] {
  if (areCanonical(cells)) return cells;
  const sorted = [...cells].sort(compareRows);
  const out: CellRun[] = [];
  for (let i = 0; i < sorted.length; ) {
    let end = i;
    while (end < sorted.length && compareRows(sorted[i]!, sorted[end]!) === 0) end++;
    const { section, row, size } = sorted[i]!;
    for (const run of canonicalRuns(sorted.slice(i, end))) out.push({ section, row, size, ...run });
    i = end;
  }
  return out;
}

function areCanonical(cells: readonly CellRun[]): boolean {
  return cells.every((cell, i) => {
    if (cell.letters === '' || cell.letters.includes('.')) return false;
    const before = cells[i - 1];
    if (!before) return true;
    const order = compareRows(before, cell);
    return order < 0 || (order === 0 && before.from + before.letters.length < cell.from);
  });
}
