/** How finely blocks are drawn. Lengths are parts of a cell's shorter side, so a block stays right at any scale. */
export interface Detail {
  readonly level: 'far' | 'plain' | 'small' | 'work' | 'close';
  /** Cells along the side of a block. An edit draws its block again, which close to is dear; from afar fewer, larger blocks make the first picture sooner. */
  readonly side: number;
  /** Whether symbols are drawn. */
  readonly symbols: boolean;
  /** Width of a symbol's line. */
  readonly lineWidth: number;
  /** Points of a full oval, and segments of a curve (a third of it). */
  readonly points: number;
  /** How far a fill reaches under its neighbours, so that no hairline shows between them. */
  readonly grow: number;
  /** How far a corner may be off its line and still be left out of a run's outline. */
  readonly tolerance: number;
}

/** For cells under 4 px. */
export const FAR: Detail = { level: 'far', side: 32, symbols: false, lineWidth: 0, points: 0, grow: 0.12, tolerance: 0.1 };
const PLAIN: Detail = { level: 'plain', side: 16, symbols: false, lineWidth: 0, points: 0, grow: 0.08, tolerance: 0.06 };
const SMALL: Detail = { level: 'small', side: 16, symbols: true, lineWidth: 0.13, points: 8, grow: 0.06, tolerance: 0.04 };
const WORK: Detail = { level: 'work', side: 16, symbols: true, lineWidth: 0.085, points: 14, grow: 0.025, tolerance: 0.01 };
const CLOSE: Detail = { level: 'close', side: 16, symbols: true, lineWidth: 0.07, points: 28, grow: 0.01, tolerance: 0.005 };

/**
 * The detail for a cell whose shorter side is `cellPx` on the screen: no symbols under 4 px, and on filled cells none under
 * 6.5 px, where they would only grey the colours.
 */
export function detailFor(cellPx: number, onFills: boolean): Detail {
  if (cellPx < 4) return FAR;
  if (onFills && cellPx < 6.5) return PLAIN;
  if (cellPx < 10) return SMALL;
  return cellPx < 30 ? WORK : CLOSE;
}
