import { canonicalRuns } from '../1-pattern/canonicalCells.ts';
import type { Edit } from '../1-pattern/edit.ts';
import type { Pattern, RowKey } from '../1-pattern/pattern.ts';
import { colour } from './colour.ts';
import type { ColourGrid } from './colourGrid.ts';
import { columnCount } from './rowColumns.ts';

/** Columns of one row, as seen on the right side from the left. */
export interface LaidRow {
  readonly section: string;
  readonly row: RowKey;
  readonly columns: readonly number[];
}

/**
 * The edits that lay a yarn on columns of rows in one size, or with `isEverySize` in every size that `grids` has (by size
 * index): there a column counts from the row's centre, column c of n being c - floor((n - n') / 2) of n'. `letter` null
 * takes the loose cells off. Where the yarn already lies there without loose cells none is laid, and one that was there is
 * taken off. Rows and columns that are not there in a size are passed over; edits that would change nothing are left out.
 */
export function layCells(pattern: Pattern, grids: readonly ColourGrid[], size: number, rows: readonly LaidRow[], letter: string | null, isEverySize = false): readonly Edit[] {
  const own = grids[size];
  if (!own) throw new RangeError(`size ${size} asked of ${grids.length} fabrics`);
  const sizes = isEverySize ? grids.map((_, index) => index) : [size];
  return sizes.flatMap((one) => {
    const grid = grids[one]!;
    const below = letter === null ? null : colour({ ...pattern, cells: [] }, grid.fabric, one, grid).yarn;
    const index = pattern.yarns.findIndex((yarn) => yarn.letter === letter);
    return byRow(rows).flatMap(({ section, row, columns }) => {
      const r = grid.rows.indexOf(section, row);
      const ownRow = own.rows.indexOf(section, row);
      if (r < 0 || ownRow < 0) return [];
      const width = columnCount(grid.columns, r);
      const shift = Math.floor((columnCount(own.columns, ownRow) - width) / 2);
      const now = cellsOf(pattern, section, row, one);
      const next = new Map(now);
      for (const column of columns) {
        const at = column - shift;
        if (at < 0 || at >= width) continue;
        const isBelow = below !== null && below[grid.columns.stitches[grid.columns.start[r]! + at]!] === index;
        if (letter === null || isBelow) next.delete(at);
        else next.set(at, letter);
      }
      return isSame(now, next) ? [] : [{ kind: 'setCells' as const, section, row, size: one, runs: canonicalRuns([...next].map(([from, letters]) => ({ from, letters }))) }];
    });
  });
}

/** A row that comes more than once gets all its columns in one edit. */
function byRow(rows: readonly LaidRow[]): readonly LaidRow[] {
  const merged = new Map<string, LaidRow>();
  for (const one of rows) {
    const key = JSON.stringify([one.section, one.row.line, one.row.nth]);
    merged.set(key, { ...one, columns: [...(merged.get(key)?.columns ?? []), ...one.columns] });
  }
  return [...merged.values()];
}

function cellsOf(pattern: Pattern, section: string, row: RowKey, size: number): ReadonlyMap<number, string> {
  const letters = new Map<number, string>();
  for (const run of pattern.cells) {
    if (run.size !== size || run.row.line !== row.line || run.row.nth !== row.nth || run.section !== section) continue;
    for (let i = 0; i < run.letters.length; i++) if (run.letters[i] !== '.') letters.set(run.from + i, run.letters[i]!);
  }
  return letters;
}

function isSame(a: ReadonlyMap<number, string>, b: ReadonlyMap<number, string>): boolean {
  return a.size === b.size && [...a].every(([column, letter]) => b.get(column) === letter);
}
