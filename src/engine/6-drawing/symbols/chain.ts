import { oval } from './frame.ts';
import type { SymbolDrawing } from './frame.ts';

/** Chain: an open oval, lying along the row or standing in a turning chain. */
export const chain: SymbolDrawing = ({ w, h, length, standing }) =>
  standing
    ? [oval(0, length / 2, Math.min(0.15 * w, length * 0.4), length * 0.45)]
    : [oval(0, length / 2, 0.36 * w, Math.min(0.15 * h, length * 0.42))];
