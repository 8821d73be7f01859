import { sectionShape } from '../../5-layout/layOutSection.ts';
import { columnCount } from '../../4-colour/rowColumns.ts';
import type { WorkedSize } from '../workedSizes.ts';

/** Sizes that share one chart: that of the size with the most stitches, and the columns of it that each size works. */
export interface SharedChart {
  readonly drawn: WorkedSize;
  readonly spans: readonly { readonly size: WorkedSize; readonly from: number; readonly to: number }[];
}

/**
 * Groups sizes whose charts of a section are one: the same rows, and in every row the same stitches in the same yarns but for
 * columns at either side. Sizes that agree with none stand alone. Columns count from the left as seen on the right side, `to` is
 * not included. With `apart` every size stands alone, but for sizes that are the same stitch for stitch.
 */
export function sizesTogether(sizes: readonly WorkedSize[], section: string, apart: boolean): readonly SharedChart[] {
  const byWidth = [...sizes].sort((a, b) => widest(b, section) - widest(a, section) || b.size - a.size);
  const left = new Set(byWidth);
  const charts: SharedChart[] = [];
  for (const drawn of byWidth) {
    if (!left.delete(drawn)) continue;
    const spans = [{ size: drawn, from: 0, to: widest(drawn, section) }];
    for (const other of [...left]) {
      const from = columnInside(drawn, other, section);
      if (from === null || (apart && widest(other, section) !== widest(drawn, section))) continue;
      spans.push({ size: other, from, to: from + widest(other, section) });
      left.delete(other);
    }
    charts.push({ drawn, spans: spans.sort((a, b) => a.size.size - b.size.size) });
  }
  return charts.sort((a, b) => a.spans[0]!.size.size - b.spans[0]!.size.size);
}

function rowsOf({ grid }: WorkedSize, section: string): readonly number[] {
  return grid.rows.of(section);
}

function widest(size: WorkedSize, section: string): number {
  return rowsOf(size, section).reduce((most, row) => Math.max(most, columnCount(size.grid.columns, row)), 0);
}

/** The column of the wider size at which the narrower one begins, nearest to the middle; null where it is not found in it. */
function columnInside(wide: WorkedSize, narrow: WorkedSize, section: string): number | null {
  const [a, b] = [rowsOf(wide, section), rowsOf(narrow, section)];
  if (a.length !== b.length) return null;
  const counts = a.map((row, i) => [columnCount(wide.grid.columns, row), columnCount(narrow.grid.columns, b[i]!)] as const);
  const more = widest(wide, section) - widest(narrow, section);
  // Different widths share a chart only where each has straight sides.
  if (more > 0 && (counts.some(([w, n]) => w !== counts[0]![0] || n !== counts[0]![1]) || !isStraight(wide, section) || !isStraight(narrow, section))) return null;
  if (more === 0 && counts.some(([w, n]) => w !== n)) return null;
  const tries = Array.from({ length: more + 1 }, (_, from) => from).sort((one, two) => Math.abs(one - more / 2) - Math.abs(two - more / 2) || one - two);
  return tries.find((from) => a.every((row, i) => sameRow(wide, row, narrow, b[i]!, from))) ?? null;
}

function isStraight({ fabric }: WorkedSize, section: string): boolean {
  const shape = sectionShape(fabric, fabric.sections.findIndex(({ id }) => id === section));
  return shape === 'flat' || shape === 'tube';
}

function sameRow(wide: WorkedSize, row: number, narrow: WorkedSize, other: number, from: number): boolean {
  const [a, b] = [wide.grid.columns, narrow.grid.columns];
  if (wide.fabric.rows[row]!.side !== narrow.fabric.rows[other]!.side || wide.fabric.rows[row]!.round !== narrow.fabric.rows[other]!.round) return false;
  for (let column = 0; column < columnCount(b, other); column++) {
    const one = a.stitches[a.start[row]! + from + column]!;
    const two = b.stitches[b.start[other]! + column]!;
    if (wide.dressed.kind[one] !== narrow.dressed.kind[two] || wide.dressed.flags[one] !== narrow.dressed.flags[two] || wide.colours.yarn[one] !== narrow.colours.yarn[two]) return false;
  }
  return true;
}
