import type { Fabric } from '../3-fabric/fabric.ts';
import type { Layout } from '../5-layout/layout.ts';
import type { Mark } from './drawing.ts';
import { countsFromRight } from './gridMarks.ts';
import type { Block } from './gridMarks.ts';

/** A repeat to bracket under the chart: stitches `from` to `to` (1-based, both included), counted as the stitch numbers are. */
export interface RepeatBracket {
  readonly from: number;
  readonly to: number;
  /** What is printed under it; empty: the count, as `11 sts = 1 repeat`. */
  readonly text: string;
}

/** Stitch numbers under the lowest block of columns (first, every 5th, last) and brackets of repeats under those. */
export function columnMarks(fabric: Fabric, layout: Layout, block: Block, sizeMm: number, numbers: boolean, brackets: readonly RepeatBracket[]): Mark[] {
  const { x0, x1, y0, columns } = block;
  const fromRight = countsFromRight(fabric, layout);
  const edge = (n: number): number => (fromRight ? x1 - ((x1 - x0) * n) / columns : x0 + ((x1 - x0) * n) / columns);
  const below = lowest(layout, y0) + 0.35 * sizeMm;
  const marks: Mark[] = [];
  if (numbers) {
    for (const n of shownNumbers(columns, (x1 - x0) / columns, sizeMm)) {
      marks.push({ kind: 'text', role: 'stitchNumber', x: (edge(n - 1) + edge(n)) / 2, y: below + sizeMm * 0.75, text: String(n), sizeMm, anchor: 'middle', turnRad: 0, row: null });
    }
  }
  const y = below + (numbers ? 1.25 * sizeMm : 0);
  for (const { from, to, text } of brackets) {
    if (from < 1 || to > columns || to < from) continue;
    const [a, b] = [Math.min(edge(from - 1), edge(to)), Math.max(edge(from - 1), edge(to))];
    const inset = 0.06 * ((x1 - x0) / columns);
    marks.push({ kind: 'line', role: 'repeat', points: [a + inset, y, a + inset, y + 0.5 * sizeMm, b - inset, y + 0.5 * sizeMm, b - inset, y], row: null });
    const words = text || `${to - from + 1} sts = 1 repeat`;
    marks.push({ kind: 'text', role: 'repeatText', x: (a + b) / 2, y: y + 1.5 * sizeMm, text: words, sizeMm, anchor: 'middle', turnRad: 0, row: null });
  }
  return marks;
}

/** First, last and every fifth (tenth where cells are small), leaving out what would touch. */
function shownNumbers(columns: number, cellMm: number, sizeMm: number): number[] {
  const wide = sizeMm * 0.56 * String(columns).length + 0.4 * sizeMm;
  const step = cellMm * 5 >= wide ? 5 : 10;
  const numbers = [1];
  for (let n = step; n <= columns; n += step) numbers.push(n);
  if (columns - numbers.at(-1)! >= wide / cellMm) numbers.push(columns);
  return numbers;
}

/** The lowest cell edge of the chart at or under `y0`: numbers stand clear of foundations and ghosts. */
function lowest(layout: Layout, y0: number): number {
  let y = y0;
  for (let i = 1; i < layout.corners.length; i += 2) if (layout.corners[i]! > y) y = layout.corners[i]!;
  for (const ghost of layout.ghosts) y = Math.max(y, ghost.headY + layout.cellHeightMm);
  return y;
}
