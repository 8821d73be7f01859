import type { Stroke } from '../drawing.ts';
import { footDot, line } from './frame.ts';
import type { SymbolDrawing, SymbolFrame } from './frame.ts';

/** How far below the head the cross of a single crochet has its middle; in a stitch that reaches far it stays near the head. */
export function crossDepth(length: number, h: number): number {
  return 0.44 * Math.min(length, 1.15 * h);
}

/** Single crochet: a slanted cross; with a thin stem where the foot is shared or far away. Drawn together: one leg a base under a short bar. */
export const singleCrochet: SymbolDrawing = (frame) => (frame.feet.length > 1 ? together(frame) : cross(frame));

function cross(frame: SymbolFrame): Stroke[] {
  const { w, h, length, feet, shared } = frame;
  const arm = 0.27 * Math.min(w, h);
  const y = crossDepth(length, h);
  const strokes = [line(-arm, y - arm, arm, y + arm), line(-arm, y + arm, arm, y - arm)];
  const foot = feet[0] ?? [0, length];
  if (shared || length > 1.3 * h) strokes.push(line(0, y, foot[0], foot[1]));
  if (shared) strokes.push(footDot(frame, foot));
  return strokes;
}

function together({ w, length, feet }: SymbolFrame): Stroke[] {
  const joint = 0.14 * length;
  const bar = 0.17 * w;
  // Legs stop a little short of the bases, so that they don't run into the symbols below.
  const legs = feet.map(([x, y]) => line(0, joint, x * 0.9, joint + (y - joint) * 0.9));
  return [...legs, line(-bar, joint, bar, joint)];
}
