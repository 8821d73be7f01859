import type { Terms } from '../../craft/terms.ts';
import type { Stated } from '../../notation/instruction.ts';
import { writeRow } from '../../notation/writeRow.ts';
import type { WordStyle } from '../../notation/writeWork.ts';
import { plainTimes } from './plainTimes.ts';
import { printedRow } from './printedRow.ts';
import type { WorkedSize } from './printedRow.ts';
import { rowCount } from './rowCount.ts';

/**
 * The words of one worked row of one size, with its count: for the words beside a chart, in the designer's wording. `row` is the row's index in the
 * fabric; one outside it is a programmer's slip. Linear in the row's stitches (quadratic where its yarns change).
 */
export function writeRowWords(worked: WorkedSize, row: number, terms: Terms, style: WordStyle = {}): string {
  const words = worked.program.rows[row];
  if (!words) throw new RangeError(`row ${row} asked of ${worked.program.rows.length}`);
  const { body, runs } = printedRow(worked, row);
  const count = rowCount(worked.fabric, row, words.stated);
  const stated: Stated | null = count ? { count: count.made, unit: count.unit, of: 'row', step: null, range: [0, 0] } : words.stated;
  const text = writeRow(plainTimes(body, worked.program.size), stated, { terms, size: worked.program.size, runs, style, round: worked.fabric.rows[row]!.round });
  return words.word === 'step' ? text.charAt(0).toUpperCase() + text.slice(1) : text;
}
