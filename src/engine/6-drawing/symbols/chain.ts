import { oval } from './frame.ts';
import type { SymbolDrawing } from './frame.ts';

/** Chain: an open oval, lying along the row, shorter where chains are close, or standing in a turning chain. */
export const chain: SymbolDrawing = ({ w, h, length, standing, across }) =>
  standing
    ? [oval(0, length / 2, Math.min(0.15 * w, length * 0.4), length * 0.45)]
    : [oval(0, length / 2, Math.max(0.2 * w, Math.min(0.36 * w, 0.46 * across)), Math.min(0.15 * h, length * 0.42))];
