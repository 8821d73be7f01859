import { chosenNumbers } from '../../engine/6-drawing/chosenNumbers.ts';
import type { Drawing, Mark } from '../../engine/6-drawing/drawing.ts';
import type { Size, ViewTransform } from './viewTransform.ts';

/** A row's or stitch's number as it stands on the screen. */
export interface RulerLabel {
  readonly key: string;
  readonly text: string;
  /** Row index, null for stitch numbers. */
  readonly row: number | null;
  /** For labels in the drawing: mm. For labels held at an edge: px from the frame's corner (the other coordinate is the edge's). */
  readonly x: number;
  readonly y: number;
  readonly anchor: 'start' | 'middle' | 'end';
  /** Side that the row starts from, and so which way its arrow points; inside: on the fabric of a round, whose way one arrow outside shows. */
  readonly side: 'left' | 'right' | 'bottom' | 'inside';
}

/** Numbers in their places, and those held at an edge of the frame because their places are out of sight. */
export interface Ruler {
  readonly fontPx: number;
  /** Whether numbers had to be left out: then arrows and leaders would only crowd, and the labels carry the arrow. */
  readonly thinned: boolean;
  readonly inPlace: readonly RulerLabel[];
  readonly held: readonly RulerLabel[];
  /** How far words under the chart move down for the numbers, which are larger here than in the drawing, mm. */
  readonly downMm: number;
}

type TextMark = Extract<Mark, { kind: 'text' }>;

/** A row's number, and how far its cells reach to the side that it stands on, mm. */
interface PlannedRow {
  readonly mark: TextMark;
  readonly side: 'left' | 'right';
  readonly row: number;
  readonly edge: number;
  readonly items: readonly number[];
}

/** What is known of a drawing's numbers before any view: made once a drawing. */
export interface RulerPlan {
  readonly rows: readonly PlannedRow[];
  readonly columns: readonly TextMark[];
}

const LEAST_FONT_PX = 11;
const MOST_FONT_PX = 18;
/** Height and width of a digit in parts of the font size, as lining figures of text faces have them (measured on the tool's own face). */
const ASCENT = 0.66;
const DIGIT = 0.5;
/** An arrow and its space, in digits. */
const ARROW = 2.6;
const EDGE_PX = 3;
/** Width of the strips that hold numbers at an edge, as `chart.css` has it, and a little. */
const STRIP_PX = 47;
/** Every how many numbers are left when they would run into each other. */
const STEPS = [1, 5, 10, 20, 50, 100, 200, 500];

/** Sorts out the numbers of a drawing. */
export function planRuler(drawing: Drawing): RulerPlan {
  const { stitches, marks } = drawing;
  const extents = rowExtents(drawing);
  const rows: PlannedRow[] = [];
  const columns: TextMark[] = [];
  for (const mark of marks) {
    if (mark.kind !== 'text') continue;
    if (mark.role === 'stitchNumber') columns.push(mark);
    if (mark.role !== 'rowNumber' || mark.row === null) continue;
    const extent = extents.get(mark.row) ?? { from: 0, to: 0, x0: mark.x, x1: mark.x };
    // Those on the fabric of rounds are one line of numbers.
    const side = mark.anchor !== 'middle' && mark.x < (extent.x0 + extent.x1) / 2 ? 'left' : 'right';
    const items: number[] = [];
    for (let i = extent.from; i < extent.to; i++) if (stitches.row[i] === mark.row && stitches.ghost[i] === 0) items.push(i);
    rows.push({ mark, row: mark.row, side, edge: side === 'left' ? extent.x0 : extent.x1, items });
  }
  return { rows, columns };
}

interface RowExtent {
  /** Range of items that holds the row's. */
  readonly from: number;
  to: number;
  /** Leftmost and rightmost of its corners, mm. */
  x0: number;
  x1: number;
}

function rowExtents({ stitches }: Drawing): Map<number, RowExtent> {
  const extents = new Map<number, RowExtent>();
  let extent: RowExtent | undefined;
  let row = -1;
  for (let i = 0; i < stitches.count; i++) {
    if (stitches.ghost[i] === 1) continue;
    if (stitches.row[i] !== row) {
      row = stitches.row[i]!;
      extent = extents.get(row);
      if (!extent) extents.set(row, (extent = { from: i, to: i, x0: Infinity, x1: -Infinity }));
    }
    extent!.to = i + 1;
    for (let c = i * 8; c < i * 8 + 8; c += 2) {
      const x = stitches.corners[c]!;
      if (x < extent!.x0) extent!.x0 = x;
      if (x > extent!.x1) extent!.x1 = x;
    }
  }
  return extents;
}

/** The numbers for a view at rest. */
export function ruler(drawing: Drawing, plan: RulerPlan, view: ViewTransform, size: Size): Ruler {
  const marks = plan.rows.map((row) => row.mark);
  const natural = (marks[0] ?? plan.columns[0])?.sizeMm ?? 0;
  const fontPx = Math.min(Math.max(natural * view.k, LEAST_FONT_PX), MOST_FONT_PX);
  const inPlace: RulerLabel[] = [];
  const held: RulerLabel[] = [];
  const naturalPx = natural * view.k;
  // Numbers on the fabric itself stand one after another along a line of any slant.
  const first = marks.find((mark) => mark.anchor === 'middle');
  const along = (mark: TextMark): number => (mark.anchor === 'middle' && first ? Math.hypot(mark.x - first.x, mark.y - first.y) : mark.y);
  const { chosen, step } = chosenNumbers(plan.rows.map(({ mark, side }) => ({ number: /^\d+$/.test(mark.text) ? Number(mark.text) : null, side, y: along(mark) * view.k })), 1.15 * fontPx);
  const isThinned = step > 1;
  const look = { fontPx, naturalPx, carriesArrow: isThinned };
  for (const side of ['left', 'right'] as const) {
    const rows = chosen.map((n) => plan.rows[n]!).filter((row) => row.side === side);
    const labels = rows.map((row) => rowLabel(drawing, row, view, size, { ...look, marginPx: EDGE_PX }));
    // Where some are held at the edge, none may stand under the strip that holds them.
    const isHeld = labels.some((label) => label?.held);
    (isHeld ? rows.map((row) => rowLabel(drawing, row, view, size, { ...look, marginPx: STRIP_PX })) : labels).forEach((label) => {
      if (label?.held) held.push(label);
      else if (label) inPlace.push(label);
    });
  }
  const columns = thinned(plan.columns, (mark) => mark.text, (mark) => mark.x * view.k, 2.2 * fontPx);
  for (const mark of columns) {
    const label = { key: `stitch ${mark.text} ${mark.x}`, text: mark.text, row: null, anchor: 'middle' as const, side: 'bottom' as const };
    const y = mark.y * view.k + view.y;
    const x = mark.x * view.k + view.x;
    if (y <= size.height - 4) inPlace.push({ ...label, x: mark.x, y: mark.y + Math.max(0, ASCENT * (fontPx - naturalPx)) / view.k });
    else if (x > 0 && x < size.width) held.push({ ...label, x, y: 0 });
  }
  const downMm = Math.max(0, (ASCENT + 0.5) * (fontPx - naturalPx)) / view.k;
  return { fontPx, thinned: isThinned, inPlace, held, downMm };
}

/** The number of a row that is left out of a ruler, for when it is in hand; null for rows that are there or have no number. */
export function rulerLabelOf(drawing: Drawing, plan: RulerPlan, made: Ruler, row: number | null, view: ViewTransform, size: Size): (RulerLabel & { readonly held: boolean }) | null {
  const planned = row === null ? undefined : plan.rows.find((each) => each.row === row);
  if (!planned || [...made.inPlace, ...made.held].some((label) => label.row === row)) return null;
  const marginPx = made.held.some((label) => label.side === planned.side) ? STRIP_PX : EDGE_PX;
  return rowLabel(drawing, planned, view, size, { fontPx: made.fontPx, naturalPx: planned.mark.sizeMm * view.k, carriesArrow: made.thinned, marginPx });
}

interface LabelSize {
  readonly fontPx: number;
  readonly naturalPx: number;
  readonly carriesArrow: boolean;
  /** Numbers keep this far from the frame's edge. */
  readonly marginPx: number;
}

/** A row's number in its place, or held at the frame's edge; null when none of the row is in sight. */
function rowLabel(drawing: Drawing, { mark, row, edge, items, side }: PlannedRow, view: ViewTransform, size: Size, { fontPx, naturalPx, carriesArrow, marginPx }: LabelSize): (RulerLabel & { readonly held: boolean }) | null {
  const label = { key: `row ${row}`, text: mark.text, row, side };
  if (mark.anchor === 'middle') {
    const [x, y] = [mark.x * view.k + view.x, mark.y * view.k + view.y];
    if (x > 0 && x < size.width && y > 0 && y < size.height) return { ...label, side: 'inside', anchor: 'middle', x: mark.x, y: mark.y + (ASCENT / 2) * Math.max(0, fontPx - naturalPx) / view.k, held: false };
  }
  const place = outward(mark, side, fontPx, naturalPx, view.k);
  const widthPx = (mark.text.length + (carriesArrow ? ARROW : 0)) * DIGIT * fontPx;
  const x = place.x * view.k + view.x;
  const start = place.anchor === 'start' ? x : place.anchor === 'end' ? x - widthPx : x - widthPx / 2;
  const shift = side === 'left' ? Math.max(0, marginPx - start) : Math.min(0, size.width - marginPx - start - widthPx);
  const edgePx = edge * view.k + view.x;
  // A number that would be cut off moves in as long as it stays clear of the row itself.
  const clear = side === 'left' ? start + widthPx + shift <= edgePx : start + shift >= edgePx;
  if (shift === 0 || clear) return { ...label, ...place, x: place.x + shift / view.k, held: false };
  const y = rowAtEdge(drawing, items, view, size, side);
  return y === null ? null : { ...label, anchor: 'middle', x: 0, y, held: true };
}

/** A number larger than the drawing has it grows away from the chart, not into it. */
function outward(mark: TextMark, side: 'left' | 'right', fontPx: number, naturalPx: number, k: number): { x: number; y: number; anchor: 'start' | 'middle' | 'end' } {
  if (fontPx <= naturalPx) return { x: mark.x, y: mark.y, anchor: mark.anchor };
  const width = mark.text.length * DIGIT * mark.sizeMm;
  const left = mark.anchor === 'start' ? mark.x : mark.anchor === 'end' ? mark.x - width : mark.x - width / 2;
  const y = mark.y + ((ASCENT / 2) * (fontPx - naturalPx)) / k;
  return side === 'left' ? { x: left + width, y, anchor: 'end' } : { x: left, y, anchor: 'start' };
}

/** Where a row crosses the edge of the frame that its number is held at, px; null when none of it is in sight. */
function rowAtEdge(drawing: Drawing, items: readonly number[], view: ViewTransform, size: Size, side: 'left' | 'right'): number | null {
  const { x, y } = drawing.stitches;
  const edge = side === 'left' ? 0 : size.width;
  let nearest = Infinity;
  let at: number | null = null;
  for (const item of items) {
    const px = x[item]! * view.k + view.x;
    const py = y[item]! * view.k + view.y;
    if (px < 0 || px > size.width || py < 0 || py > size.height) continue;
    if (Math.abs(px - edge) < nearest) {
      nearest = Math.abs(px - edge);
      at = py;
    }
  }
  return at;
}

/** As many as stand at least `gapPx` apart: all, or those whose number is a multiple of 5, 10, 20 … Names that are no numbers stay. */
function thinned<T>(labels: readonly T[], text: (label: T) => string, at: (label: T) => number, gapPx: number): readonly T[] {
  for (const step of STEPS) {
    const kept = labels.filter((label) => step === 1 || !/^\d+$/.test(text(label)) || Number(text(label)) % step === 0);
    const places = kept.map(at).sort((a, b) => a - b);
    if (places.every((place, i) => i === 0 || place - places[i - 1]! >= gapPx || place === places[i - 1])) return kept;
  }
  return [];
}

/** A label's text, with the arrow of its row if it is to carry it. */
export function withArrow(label: RulerLabel, arrow: boolean): string {
  if (!arrow || label.side === 'bottom' || label.side === 'inside') return label.text;
  return label.side === 'left' ? `${label.text} →` : `← ${label.text}`;
}
