import type { Stroke } from '../drawing.ts';
import type { SymbolSet } from './symbolSet.ts';

/** What a symbol is drawn in: origin at the stitch's head, foot straight below it at (0, `length`); mm, y down. */
export interface SymbolFrame {
  /** Width and height of a single crochet on this chart. */
  readonly w: number;
  readonly h: number;
  readonly length: number;
  /** Where the stitch is rooted: one point a base, left to right. */
  readonly feet: readonly (readonly [x: number, y: number])[];
  /** Legs of a bobble and its like, chains of a picot. */
  readonly legs: number;
  /** Yarn overs of the stitch or of its legs: the slashes. */
  readonly slashes: number;
  /** Other stitches stand on the same base: the symbol shows its foot. */
  readonly shared: boolean;
  /** Worked around a space: legs stand free at the foot. */
  readonly inSpace: boolean;
  /** A chain of a turning chain, standing upright. */
  readonly standing: boolean;
  /** Room across for a chain: squeezed ones are drawn shorter. */
  readonly across: number;
  readonly set: SymbolSet;
}

/** Draws one symbol in its frame. */
export type SymbolDrawing = (frame: SymbolFrame) => Stroke[];

/** A straight stroke from (x0, y0) to (x1, y1). */
export function line(x0: number, y0: number, x1: number, y1: number): Stroke {
  return { kind: 'line', points: [x0, y0, x1, y1] };
}

/** A quadratic curve. */
export function curve(x0: number, y0: number, cx: number, cy: number, x1: number, y1: number): Stroke {
  return { kind: 'curve', points: [x0, y0, cx, cy, x1, y1] };
}

/** An upright oval, open or filled; `turnRad` turns it clockwise. */
export function oval(x: number, y: number, rx: number, ry: number, filled = false, turnRad = 0): Stroke {
  return { kind: 'oval', x, y, rx, ry, turnRad, filled };
}

/** The dot that shows where stitches share a foot or hold to an open stitch. */
export function footDot(frame: SymbolFrame, [x, y]: readonly [number, number]): Stroke {
  const r = 0.075 * Math.min(frame.w, frame.h);
  return oval(x, y - r * 0.4, r, r, true);
}
