import type { CellRun, Pattern, RowKey } from '../../../engine/1-pattern/pattern.ts';

/** The loose cells of one row in one size, as the edit `setCells` takes them. */
export function cellsOfRow(pattern: Pattern, section: string, key: RowKey, size: number): readonly Pick<CellRun, 'from' | 'letters'>[] {
  return pattern.cells.filter((run) => run.section === section && run.size === size && run.row.line === key.line && run.row.nth === key.nth).map(({ from, letters }) => ({ from, letters }));
}
