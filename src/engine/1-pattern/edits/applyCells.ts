import * as v from 'valibot';
import { canonicalCells, canonicalRuns, compareRows } from '../canonicalCells.ts';
import type { Applied } from '../edit.ts';
import { LIMITS } from '../limits.ts';
import type { CellRun, Pattern } from '../pattern.ts';
import { unknownLetter } from '../references.ts';
import { rowKeySchema, runSchema } from '../schema.ts';
import { done, refuse, spliced, valueFault, type EditOf } from './outcome.ts';

const runsSchema = v.array(runSchema);

/**
 * Replaces all loose cells of one row in one size; no runs clears it. Runs are kept in one form (`canonicalRuns`).
 * Refuses a row or size that is not there and letters that no yarn has.
 */
export function applyCells(pattern: Pattern, { section: id, row, size, runs }: EditOf<'setCells'>): Applied {
  const section = pattern.sections.find((one) => one.id === id);
  if (!section) return refuse(`There is no section "${id}" to lay cells on.`);
  const fault = valueFault('The row of the cells', rowKeySchema, row) ?? valueFault('The cells', runsSchema, runs);
  if (fault) return refuse(fault);
  if (!section.lines.some((line) => line.kind === 'row' && line.id === row.line)) return refuse(`There is no row "${row.line}" in ${section.name || 'the section'} to lay cells on.`);
  if (!Number.isInteger(size) || size < 0 || size >= pattern.sizes.length) return refuse(`There is no size ${size + 1}: the pattern has ${pattern.sizes.length}.`);
  const letter = unknownLetter(pattern, runs.map((run) => run.letters).join(''));
  if (letter) return refuse(`The cells are of yarn ${letter}, but the pattern has no such yarn.`);

  const place = { section: id, row, size };
  const cells = canonicalCells(pattern.cells);
  const first = lowerBound(cells, (cell) => compareRows(cell, place) < 0);
  let end = first;
  while (end < cells.length && compareRows(cells[end]!, place) === 0) end++;
  const before = cells.slice(first, end).map(({ from, letters }) => ({ from, letters }));
  const after = canonicalRuns(runs).map((run) => ({ section: id, row, size, from: run.from, letters: run.letters }));
  const same = before.length === after.length && before.every((run, i) => run.from === after[i]!.from && run.letters === after[i]!.letters);
  const more = cells.length - before.length + after.length;
  if (more > LIMITS.cellRuns) return refuse(`There would be ${more} runs of loose cells, and ${LIMITS.cellRuns} is the most.`);
  return done(same ? pattern : { ...pattern, cells: spliced(cells, first, end - first, ...after) }, { ...place, kind: 'setCells', runs: before });
}

function lowerBound(cells: readonly CellRun[], isBefore: (cell: CellRun) => boolean): number {
  let low = 0;
  let high = cells.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if (isBefore(cells[middle]!)) low = middle + 1;
    else high = middle;
  }
  return low;
}
