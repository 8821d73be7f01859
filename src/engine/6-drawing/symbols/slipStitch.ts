import { oval } from './frame.ts';
import type { SymbolDrawing } from './frame.ts';

/** Slip stitch: the oval of a chain, filled and small. */
export const slipStitch: SymbolDrawing = ({ w, h, length }) => [oval(0, length / 2, 0.17 * w, Math.min(0.1 * h, length * 0.45), true)];
