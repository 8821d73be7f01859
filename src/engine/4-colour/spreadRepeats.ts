import type { Placement } from '../1-pattern/pattern.ts';

/** What of a placement decides how its repeats lie in a row. */
export type Spreading = Pick<Placement, 'align' | 'offset' | 'across' | 'gap' | 'fill' | 'anchor'>;

/** The row that repeats are spread in. */
export interface SpreadRow {
  /** Stitches of the row. */
  readonly width: number;
  /** Column of the line that the placement is anchored to (`anchorLine`); null where it counts from the row's own ends. */
  readonly line: number | null;
  /** Whether the row's ends meet, so that a motif can go on around the seam. */
  readonly isRing: boolean;
  /** Columns that repeats on to the edges have to reach; the row's own if left out. */
  readonly reach?: readonly [from: number, to: number];
}

/** How repeats lie in a row, in columns as seen on the right side. */
export interface Spread {
  /** Column of the first repeat's left edge; may be negative. */
  readonly start: number;
  /** Repeats laid, whole or cut. */
  readonly repeats: number;
  /** Stitches from one repeat's left edge to the next one's, before `extra`. */
  readonly step: number;
  /** Stitches that repeat i lies further to the right, where gaps were spread; null where they are all the same. */
  readonly extra: readonly number[] | null;
  /** Repeats that lie wholly within the row. */
  readonly whole: number;
  /** Stitches not covered left and right of the repeats; negative where they hang over. 0 where repeats fill the row by their gaps or on to the edges. */
  readonly left: number;
  readonly right: number;
  /** Columns [from, to) that the repeats are kept to; null where only the row's ends cut them. */
  readonly kept: readonly [from: number, to: number] | null;
  /** Whether columns count on around the seam. */
  readonly wraps: boolean;
}

/**
 * Lays the repeats of a placement in a row. Counted from the row: left and right, `offset` stitches from that edge; centre,
 * the middle of all repeats on the middle of the row (an odd stitch over goes to the right), then `offset` to the right.
 * Counted from a line (seam, centre front): the left edge, middle or right edge of the repeats on it, then `offset` to
 * the right. Linear in repeats where gaps are spread, else constant.
 *
 * `'fill'` lays as many whole repeats as don't pass the far edge (centre: either edge; line: both ways from it, on a ring
 * once round); in a row whose ends meet as many as lie there unmoved, and those that are moved past an end go on around
 * the seam; spread: as many, with all that is left in the gaps, which differ by a stitch at most (flat: the outer
 * repeats at the edges; ring: a gap at the seam too); edges: repeats on and on, cut at the edges.
 */
export function spreadRepeats(row: SpreadRow, motifWidth: number, placement: Spreading): Spread {
  const fill = placement.across === 'fill' ? (placement.fill ?? 'whole') : 'whole';
  if (fill === 'edges') return toTheEdges(row, motifWidth, placement);
  if (fill === 'spread') {
    const spread = spreadGaps(row, motifWidth, placement);
    if (spread) return spread;
  }
  return row.line === null ? fromTheRow(row, motifWidth, placement) : fromTheLine(row, row.line, motifWidth, placement);
}

/** Column of a repeat's left edge. */
export function repeatStart(spread: Spread, repeat: number): number {
  return spread.start + repeat * spread.step + (spread.extra?.[repeat] ?? 0);
}

function fromTheRow({ width, isRing }: SpreadRow, motifWidth: number, { align, offset, across, gap }: Spreading): Spread {
  const step = motifWidth + gap;
  const room = isRing ? width : roomFor(width, align, offset);
  const repeats = across === 'fill' ? Math.max(Math.floor((room + gap) / step), 0) : across;
  const total = repeats === 0 ? 0 : repeats * step - gap;
  const start = repeats === 0 ? emptyStart(width, align) : align === 'left' ? offset : align === 'right' ? width - offset - total : Math.floor((width - total) / 2) + offset;
  if (across === 'fill' && isRing && repeats > 0 && (start < 0 || start + total > width)) {
    const left = Math.floor((width - total) / 2);
    return { start, repeats, step, extra: null, whole: repeats, left, right: width - total - left, kept: null, wraps: true };
  }
  return { start, repeats, step, extra: null, whole: wholeWithin(start, step, repeats, motifWidth, width), left: start, right: width - start - total, kept: null, wraps: false };
}

function fromTheLine({ width, isRing }: SpreadRow, line: number, motifWidth: number, placement: Spreading): Spread {
  const { align, offset, across, gap } = placement;
  const step = motifWidth + gap;
  if (across !== 'fill') {
    const total = across * step - gap;
    const start = partOnLine(line, total, align) + offset;
    const wraps = isRing && total <= width;
    const [left, right] = isRing ? sides(width - total, placement) : [start, width - start - total];
    return { start, repeats: across, step, extra: null, whole: wraps ? across : wholeWithin(start, step, across, motifWidth, width), left, right, kept: null, wraps };
  }
  const first = partOnLine(line, motifWidth, align) + offset;
  if (!isRing) {
    const before = Math.floor(first / step);
    const start = first - before * step;
    const repeats = Math.max(Math.floor((width - motifWidth - start) / step) + 1, 0);
    if (repeats === 0) return { start: emptyStart(width, align), repeats, step, extra: null, whole: 0, left: emptyStart(width, align), right: width - emptyStart(width, align), kept: null, wraps: false };
    return { start, repeats, step, extra: null, whole: repeats, left: start, right: width - start - repeats * step + gap, kept: null, wraps: false };
  }
  const repeats = timesRound(width, motifWidth, gap);
  const start = first - beforeLine(repeats, placement) * step;
  const [left, right] = sides(repeats === 0 ? width : width - repeats * step + gap, placement);
  return { start, repeats, step, extra: null, whole: repeats, left, right, kept: null, wraps: true };
}

/** Null where there is nothing to spread: no repeat fits, or only one. */
function spreadGaps(row: SpreadRow, motifWidth: number, placement: Spreading): Spread | null {
  const { width, line, isRing } = row;
  const { align, offset, gap } = placement;
  const repeats = isRing ? timesRound(width, motifWidth, gap) : Math.floor((width + gap) / (motifWidth + gap));
  if (repeats < 2) return null;
  const [total, gaps] = isRing ? [width, repeats] : [width - motifWidth, repeats - 1];
  const at = (i: number) => Math.floor((2 * i * total + gaps) / (2 * gaps));
  const fixed = line === null || !isRing ? 0 : beforeLine(repeats, placement);
  // Counted from a ring's own ends, the gap at the seam lies beyond the repeats that are aligned to an edge, and is halved for the centre.
  const slack = width - motifWidth - at(repeats - 1);
  const origin = line !== null && isRing ? partOnLine(line, motifWidth, align) + offset : align === 'left' ? 0 : align === 'right' ? slack : Math.floor(slack / 2);
  const lefts = Array.from({ length: repeats }, (_, i) => origin + at(i - fixed));
  const start = lefts[0]!;
  const step = Math.floor(total / gaps);
  return { start, repeats, step, extra: lefts.map((left, i) => left - start - i * step), whole: repeats, left: 0, right: 0, kept: null, wraps: isRing && line !== null };
}

function toTheEdges({ width, line, isRing, reach }: SpreadRow, motifWidth: number, placement: Spreading): Spread {
  const { align, offset, gap } = placement;
  const step = motifWidth + gap;
  const wraps = isRing && line !== null;
  let phase: number;
  if (line !== null) phase = partOnLine(line, motifWidth, align) + offset;
  else if (align === 'centre') phase = fromTheRow({ width, line, isRing }, motifWidth, { ...placement, across: Math.max(Math.floor((width + gap) / step), 1) }).start;
  else phase = align === 'left' ? offset : width - offset - motifWidth;
  const cut = wraps ? partOnLine(line, width, placement.anchor === 'seam' ? align : 'centre') : 0;
  const [from, to] = wraps ? [cut, cut + width] : (reach ?? [0, width]);
  const start = phase - Math.floor((phase - from + motifWidth - 1) / step) * step;
  const repeats = Math.max(Math.ceil((to - start) / step), 0);
  const firstWhole = Math.max(Math.ceil((cut - start) / step), 0);
  const lastWhole = Math.min(Math.floor((cut + width - motifWidth - start) / step), repeats - 1);
  return { start, repeats, step, extra: null, whole: Math.max(lastWhole - firstWhole + 1, 0), left: 0, right: 0, kept: wraps ? [from, to] : null, wraps };
}

/** Left edge of something `total` wide of which the aligned part lies on the line; half stitches go to the left. */
function partOnLine(line: number, total: number, align: Placement['align']): number {
  if (align === 'left') return Math.floor(line);
  if (align === 'right') return Math.floor(line) - total;
  return Math.floor(line - total / 2);
}

/** Whole repeats that go round a ring, each with its gap; one if only it fits without. */
function timesRound(width: number, motifWidth: number, gap: number): number {
  const repeats = Math.floor(width / (motifWidth + gap));
  return repeats === 0 && motifWidth <= width ? 1 : repeats;
}

/** Repeats that lie to the left of the one on the line: what is left over comes at the seam, or opposite to a centred line. */
function beforeLine(repeats: number, { anchor, align }: Spreading): number {
  if (anchor === 'seam' && align === 'left') return 0;
  if (anchor === 'seam' && align === 'right') return Math.max(repeats - 1, 0);
  return align === 'right' ? Math.max(repeats - 1 - Math.floor(repeats / 2), 0) : Math.floor(repeats / 2);
}

/** What is left over on a ring, by sides: at the seam it is on the far side, elsewhere halved. */
function sides(over: number, { anchor, align }: Spreading): readonly [left: number, right: number] {
  if (anchor === 'seam' && align === 'left') return [0, over];
  if (anchor === 'seam' && align === 'right') return [over, 0];
  return [Math.floor(over / 2), over - Math.floor(over / 2)];
}

function wholeWithin(start: number, step: number, repeats: number, motifWidth: number, width: number): number {
  const first = Math.max(Math.ceil(-start / step), 0);
  const last = Math.min(Math.floor((width - motifWidth - start) / step), repeats - 1);
  return Math.max(last - first + 1, 0);
}

/** Stitches that all repeats together may take. */
function roomFor(width: number, align: Placement['align'], offset: number): number {
  if (align !== 'centre') return width - offset;
  // Centred on floor((width - total) / 2): a shift to the right uses the odd stitch first.
  return offset > 0 ? width - (2 * offset - 1) : width + 2 * offset;
}

function emptyStart(width: number, align: Placement['align']): number {
  return align === 'left' ? 0 : align === 'right' ? width : Math.floor(width / 2);
}

/** The shift, in columns, from a row of `width` stitches to one of `otherWidth` that keeps the aligned edge or the centre. */
export function shiftOfRow(align: Placement['align'], width: number, otherWidth: number): number {
  if (align === 'left') return 0;
  if (align === 'right') return otherWidth - width;
  return -Math.floor((width - otherWidth) / 2);
}

/** As `shiftOfRow`, for a placement anchored to a line that lies at `line` in the first row and at `otherLine` in the other. */
export function shiftOfLine(align: Placement['align'], total: number, line: number, otherLine: number): number {
  return partOnLine(otherLine, total, align) - partOnLine(line, total, align);
}
