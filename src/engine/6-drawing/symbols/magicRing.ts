import { oval } from './frame.ts';
import type { SymbolDrawing } from './frame.ts';

/** Magic ring: an open circle. */
export const magicRing: SymbolDrawing = ({ w, h, length }) => [oval(0, length / 2, 0.22 * Math.min(w, h), 0.22 * Math.min(w, h))];
