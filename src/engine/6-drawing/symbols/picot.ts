import { oval } from './frame.ts';
import type { SymbolDrawing } from './frame.ts';

/** Picot: its chains as a ring of ovals, closed by the dot of a slip stitch on the stitch below. */
export const picot: SymbolDrawing = ({ w, h, length, legs }) => {
  const chains = Math.max(1, legs);
  const strokes = [oval(0, length - 0.06 * h, 0.09 * w, 0.07 * h, true)];
  const radius = Math.min(0.27 * w, 0.36 * length);
  const middle = length - 0.1 * h - radius * 1.15;
  for (let n = 0; n < chains; n++) {
    // From the dot upwards on either side; the ovals lie along the ring.
    const turn = ((n + 0.5) / chains) * 2 * Math.PI;
    strokes.push(oval(-Math.sin(turn) * radius, middle + Math.cos(turn) * radius, Math.min(0.26 * w, (2.7 * radius) / chains), Math.min(0.11 * w, 0.4 * radius), false, turn));
  }
  return strokes;
};
