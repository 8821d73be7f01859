import type { Stroke } from '../drawing.ts';
import { curve, footDot, line, oval } from './frame.ts';
import type { SymbolDrawing, SymbolFrame } from './frame.ts';

/** How far below the head the cross of a single crochet has its middle; in a stitch that reaches far it stays near the head. */
export function crossDepth(length: number, h: number): number {
  return 0.44 * Math.min(length, 1.15 * h);
}

/** Arm of the slanted cross and of the upright one, as parts of the cell's smaller side. */
const ARM = { jis: 0.27, us: 0.33 } as const;

/** Single crochet: a cross, upright or slanted; with a thin stem where the foot is shared or far away. Drawn together: a leg a base, joined at the top. */
export const singleCrochet: SymbolDrawing = (frame) => (frame.feet.length > 1 ? together(frame) : cross(frame));

/** Reverse single crochet (crab stitch): the cross under a wave that runs back along the row. Published chart guides: a cross with a curved line over it. */
export const reverseSingle: SymbolDrawing = (frame) => {
  const { w, h } = frame;
  const [y, half, bend] = [0.07 * h, 0.17 * w, 0.08 * h];
  return [...singleCrochet(frame), curve(-2 * half, y, -half, y - 2 * bend, 0, y), curve(0, y, half, y + 2 * bend, 2 * half, y)];
};

/** Twisted single crochet: the cross under a small circle. Published chart guides: a cross with a small circle on top. */
export const twistedSingle: SymbolDrawing = (frame) => {
  const { w, h, length } = frame;
  const r = 0.1 * Math.min(w, h);
  return [...singleCrochet(frame), oval(0, crossDepth(length, h) - ARM[frame.set] * Math.min(w, h) - r, r, r)];
};

function cross(frame: SymbolFrame): Stroke[] {
  const { w, h, length, feet, shared, set } = frame;
  const arm = ARM[set] * Math.min(w, h);
  const y = crossDepth(length, h);
  const strokes = set === 'us' ? [line(-arm, y, arm, y), line(0, y - arm, 0, y + arm)] : [line(-arm, y - arm, arm, y + arm), line(-arm, y + arm, arm, y - arm)];
  const foot = feet[0] ?? [0, length];
  if (shared || length > 1.3 * h) strokes.push(line(0, y, foot[0], foot[1]));
  if (shared) strokes.push(footDot(frame, foot));
  return strokes;
}

function together({ w, length, feet, set }: SymbolFrame): Stroke[] {
  const joint = 0.14 * length;
  const strokes: Stroke[] = [];
  for (const [x, y] of feet) {
    // Legs stop a little short of the bases, so that they don't run into the symbols below.
    const [endX, endY] = [x * 0.9, joint + (y - joint) * 0.9];
    strokes.push(line(0, joint, endX, endY));
    const long = Math.hypot(endX, endY - joint);
    if (set === 'jis' || long === 0) continue;
    const [ux, uy] = [endX / long, (endY - joint) / long];
    const [px, py, half] = [endX * 0.55, joint + (endY - joint) * 0.55, 0.15 * w];
    strokes.push(line(px - half * uy, py + half * ux, px + half * uy, py - half * ux));
  }
  if (set === 'jis') strokes.push(line(-0.17 * w, joint, 0.17 * w, joint));
  return strokes;
}
