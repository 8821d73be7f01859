import type { Placement } from '../1-pattern/pattern.ts';

/** How repeats lie in a row, in columns as seen on the right side. */
export interface Spread {
  /** Column of the first repeat's left edge; may be negative. */
  readonly start: number;
  /** Repeats laid, whole or cut. */
  readonly repeats: number;
  /** Repeats that lie wholly within the row. */
  readonly whole: number;
  /** Stitches not covered left and right of the repeats; negative where they hang over. Their sum with the repeats and gaps is the width. */
  readonly left: number;
  readonly right: number;
}

/**
 * Lays the repeats of a placement in a row of `width` stitches. Left and right: `offset` stitches from that edge. Centre:
 * the middle of all repeats on the middle of the row (an odd stitch over goes to the right), then `offset` to the right.
 * `'fill'`: as many repeats as don't pass the far edge (centre: either edge); an offset that itself hangs over stays.
 */
export function spreadRepeats(width: number, motifWidth: number, placement: Pick<Placement, 'align' | 'offset' | 'across' | 'gap'>): Spread {
  const { align, offset, across, gap } = placement;
  const step = motifWidth + gap;
  const repeats = across === 'fill' ? Math.max(Math.floor((roomFor(width, align, offset) + gap) / step), 0) : across;
  const total = repeats === 0 ? 0 : repeats * step - gap;
  const start = repeats === 0 ? emptyStart(width, align) : align === 'left' ? offset : align === 'right' ? width - offset - total : Math.floor((width - total) / 2) + offset;
  const firstWhole = Math.max(Math.ceil(-start / step), 0);
  const lastWhole = Math.min(Math.floor((width - motifWidth - start) / step), repeats - 1);
  return { start, repeats, whole: Math.max(lastWhole - firstWhole + 1, 0), left: start, right: width - start - total };
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
