import { oval } from './frame.ts';
import type { SymbolDrawing } from './frame.ts';

/** Slip stitch: a filled dot, or the oval of a chain filled. */
export const slipStitch: SymbolDrawing = ({ w, h, length, set }) => {
  const tall = Math.min(0.1 * h, length * 0.45);
  return set === 'us' ? [oval(0, length / 2, Math.min(0.12 * w, 1.2 * tall), tall, true)] : [oval(0, length / 2, 0.18 * w, 0.85 * tall, true)];
};
