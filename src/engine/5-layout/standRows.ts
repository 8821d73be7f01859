import type { Ground, IndexedRow } from './ground.ts';
import type { RowSlots } from './rowSlots.ts';
import { NO_LEVEL, standRow, type Stacking, type StoodRow } from './stoodRow.ts';

/** Places the rows of a piece one on another from the first up. */
export function standRows(ground: Ground, rows: readonly IndexedRow[], slots: readonly RowSlots[], stacking: Stacking): StoodRow[] {
  const stood: StoodRow[] = [];
  rows.forEach((row, r) => stood.push(standRow(ground, row, slots[r]!, r, stood[r - 1]?.level ?? NO_LEVEL, stacking)));
  return stood;
}
