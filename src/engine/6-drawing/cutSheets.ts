import type { Box } from '../5-layout/layout.ts';
import { cutSpan } from './cutSpan.ts';
import type { Span } from './cutSpan.ts';
import type { Drawing } from './drawing.ts';
import { landscape, SHEET_FOOT_MM, SHEET_HEAD_MM, SHEET_MARGIN_MM, SHEET_NUMBERS_MM } from './paper.ts';
import type { Paper } from './paper.ts';

/** One sheet of a chart that was cut: which part of the drawing it shows and where that lies on the paper. */
export interface Sheet {
  /** From 0, left to right and then down. */
  readonly index: number;
  readonly column: number;
  readonly row: number;
  readonly columns: number;
  readonly rows: number;
  readonly paper: Paper;
  /** Part of the drawing that is shown, in the drawing's mm. */
  readonly window: Box;
  /** Edges at which the chart goes on. */
  readonly cut: { readonly left: boolean; readonly right: boolean; readonly top: boolean; readonly bottom: boolean };
  /** Added to the drawing's coordinates to get those of the paper, mm. */
  readonly shiftX: number;
  readonly shiftY: number;
  /** Where the neighbours' windows begin or end inside this one: x on the left and right, y above and below; null without neighbour. */
  readonly seam: { readonly left: number | null; readonly right: number | null; readonly top: number | null; readonly bottom: number | null };
}

/** How sheets are cut. */
export interface SheetOptions {
  /** `'auto'`: whichever takes fewer sheets, upright if equal. Default. */
  readonly orientation?: 'portrait' | 'landscape' | 'auto';
  /** Stitches of a repeat: cuts fall between repeats where the paper allows it. Default 1. */
  readonly repeatStitches?: number;
}

/** Stitches and rows that neighbouring sheets share. */
const OVERLAP = 2;

/**
 * Cuts a drawing at its own scale to sheets with a margin of 10 mm: at row and repeat boundaries, neighbours sharing two
 * stitches or rows. A drawing that fits gives one sheet. Refuses cells too large for the paper.
 */
export function cutSheets(drawing: Drawing, paper: Paper, options: SheetOptions = {}): Sheet[] {
  const upright = cut(drawing, paper, options);
  if ((options.orientation ?? 'auto') === 'portrait') return upright;
  const lying = cut(drawing, landscape(paper), options);
  return options.orientation === 'landscape' || lying.length < upright.length ? lying : upright;
}

function cut(drawing: Drawing, paper: Paper, { repeatStitches = 1 }: SheetOptions): Sheet[] {
  const { bounds, cellWidthMm: w, cellHeightMm: h } = drawing;
  const roomX = paper.widthMm - 2 * SHEET_MARGIN_MM;
  const roomY = paper.heightMm - 2 * SHEET_MARGIN_MM - SHEET_HEAD_MM - SHEET_FOOT_MM;
  const whole = { x: bounds.x1 - bounds.x0 <= roomX, y: bounds.y1 - bounds.y0 <= roomY };
  const { xs, ys } = boundaries(drawing, repeatStitches);
  const across = cutSpan(bounds.x0, bounds.x1, whole.x ? roomX : roomX - 2 * SHEET_NUMBERS_MM, OVERLAP * w, xs);
  const down = cutSpan(bounds.y0, bounds.y1, whole.y ? roomY : roomY - 2 * SHEET_NUMBERS_MM, OVERLAP * h, ys);
  return down.flatMap((y, row) => across.map((x, column) => sheet(paper, across, down, x, y, column, row)));
}

function sheet(paper: Paper, across: readonly Span[], down: readonly Span[], x: Span, y: Span, column: number, row: number): Sheet {
  const before = (spans: readonly Span[], i: number): number | null => spans[i - 1]?.[1] ?? null;
  const after = (spans: readonly Span[], i: number): number | null => spans[i + 1]?.[0] ?? null;
  const seam = { left: before(across, column), right: after(across, column), top: before(down, row), bottom: after(down, row) };
  return {
    index: row * across.length + column, column, row, columns: across.length, rows: down.length, paper,
    window: { x0: x[0], y0: y[0], x1: x[1], y1: y[1] },
    cut: { left: seam.left !== null, right: seam.right !== null, top: seam.top !== null, bottom: seam.bottom !== null },
    shiftX: SHEET_MARGIN_MM + (across.length > 1 ? SHEET_NUMBERS_MM : (paper.widthMm - 2 * SHEET_MARGIN_MM - (x[1] - x[0])) / 2) - x[0],
    shiftY: SHEET_MARGIN_MM + SHEET_HEAD_MM + (down.length > 1 ? SHEET_NUMBERS_MM : 0) - y[0],
    seam,
  };
}

/** Edges of rows (y) and of columns or repeats (x), ascending; rows that bend give none. */
function boundaries(drawing: Drawing, repeat: number): { xs: number[]; ys: number[] } {
  const { stitches, bounds, cellWidthMm: w } = drawing;
  const c = stitches.corners;
  const ys = new Set<number>();
  let [left, right] = [Infinity, -Infinity];
  for (let i = 0; i < stitches.count; i++) {
    if (!stitches.filled[i] || stitches.ghost[i]) continue;
    left = Math.min(left, c[i * 8]!);
    right = Math.max(right, c[i * 8 + 2]!);
    if (c[i * 8 + 1] === c[i * 8 + 3]) ys.add(c[i * 8 + 1]!);
  }
  const xs: number[] = [];
  // Repeats are counted from the right, where right-side rows start.
  for (let x = right; x > bounds.x0 && left < Infinity; x -= w * repeat) xs.push(x);
  return { xs: xs.reverse(), ys: [...ys].sort((a, b) => a - b) };
}
