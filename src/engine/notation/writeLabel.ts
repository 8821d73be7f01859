import { isOne, writeAmount } from './writeAmount.ts';
import { mapAmount } from './amounts.ts';
import { amountFor } from './instruction.ts';
import type { Amount } from './instruction.ts';
import type { RowLabel } from './written.ts';

/**
 * The label of a line whose first row has the number `first`: `Row 4 (WS)`, `Rnds 3-8`, `Rows 2-60 (64, 68)`,
 * `Foundation`. With a size (0-based), its numbers only. Numbers are those of the section.
 */
export function writeLabel(label: RowLabel, first: Amount, size?: number): string {
  const side = label.side ? ` (${label.side})` : '';
  if (label.word === 'foundation') return `Foundation${side}`;
  if (label.word === 'setup') return `Set-up row${side}`;
  if (label.word === 'next') return isOne(label.rows, size) ? `Next row${side}` : `Next ${writeAmount(label.rows, size)} rows${side}`;
  const word = label.word === 'row' ? 'Row' : 'Rnd';
  if (isOne(label.rows, size)) return `${word} ${writeAmount(first, size)}${side}`;
  return `${word}s ${writeAmount(first, size)}-${writeAmount(lastRow(first, label.rows), size)}${side}`;
}

/** Number of the last row of a line. */
export function lastRow(first: Amount, rows: Amount): Amount {
  if (typeof first === 'number') return mapAmount(rows, (count) => first + count - 1);
  return first.map((number, size) => number + amountFor(rows, size) - 1);
}
