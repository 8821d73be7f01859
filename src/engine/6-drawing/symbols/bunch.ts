import type { Stroke } from '../drawing.ts';
import { curve, line, oval } from './frame.ts';
import type { SymbolDrawing, SymbolFrame } from './frame.ts';

/** Bobble: legs with their slashes, joined at head and foot. */
export const bobble: SymbolDrawing = (frame) => bundle(frame, 0.38 * frame.w, true);

/** Cluster: as a bobble, under a cap; over several bases its legs stand apart at the foot. */
export const cluster: SymbolDrawing = (frame) => [...bundle(frame, 0.3 * frame.w, true), line(-0.22 * frame.w, 0.06 * frame.h, 0.22 * frame.w, 0.06 * frame.h)];

/** Puff stitch: plain legs joined at head and foot, under a small round cap. */
export const puff: SymbolDrawing = (frame) => bundle(frame, 0.36 * frame.w, false);

/** Popcorn: an oval on top of legs that are joined at the foot, or free when worked in a space. */
export const popcorn: SymbolDrawing = (frame) => {
  const { w, h, length, legs, inSpace } = frame;
  const capY = 0.14 * h;
  const strokes: Stroke[] = [oval(0, capY, 0.3 * w, 0.1 * h)];
  const foot = length - 0.08 * h;
  for (let n = 0; n < legs; n++) {
    const side = legs > 1 ? (n / (legs - 1)) * 2 - 1 : 0;
    const top = side * 0.27 * w;
    strokes.push(curve(top, capY + 0.1 * h, side * 0.34 * w, length * 0.6, inSpace ? side * 0.24 * w : 0, foot));
    strokes.push(...slashesAt(frame, side * 0.27 * w, length * 0.47));
  }
  return strokes;
};

/** Legs side by side that meet at the head, and at the foot unless the stitch has several bases or is worked in a space. */
function bundle(frame: SymbolFrame, half: number, slashed: boolean): Stroke[] {
  const { h, length, legs, feet, inSpace } = frame;
  const strokes: Stroke[] = [];
  const top = 0.06 * h;
  const foot = length - 0.08 * h;
  for (let n = 0; n < legs; n++) {
    const side = legs > 1 ? (n / (legs - 1)) * 2 - 1 : 0;
    const end = feet.length > 1 ? (feet[Math.min(n, feet.length - 1)]?.[0] ?? 0) * 0.9 : inSpace ? side * half * 0.7 : 0;
    // The curve's middle lies halfway between its control and its ends: double the width.
    const control = side * half * 2 - end / 2;
    strokes.push(curve(0, top, control, (top + foot) / 2, end, foot));
    if (slashed) strokes.push(...slashesAt(frame, side * half, (top + foot) / 2));
  }
  return strokes;
}

/** As many slashes as the legs' stitch has, one under another about (x, y). */
function slashesAt({ w, h, slashes }: SymbolFrame, x: number, y: number): Stroke[] {
  return Array.from({ length: slashes }, (_, n) => {
    const at = y + (n - (slashes - 1) / 2) * 0.22 * h;
    return line(x - 0.055 * w, at - 0.06 * h, x + 0.055 * w, at + 0.06 * h);
  });
}
