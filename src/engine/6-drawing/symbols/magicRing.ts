import type { Stroke } from '../drawing.ts';
import { curve, line, oval } from './frame.ts';
import type { SymbolDrawing } from './frame.ts';

/** Magic ring: an open circle, or the syllable wa (わ), "ring", as written by hand. */
export const magicRing: SymbolDrawing = ({ w, h, length, set }) => {
  const size = Math.min(w, h);
  return set === 'us' ? [oval(0, length / 2, 0.22 * size, 0.22 * size)] : wa(0.27 * size, length / 2);
};

/** Half as tall as `half` says, about (0, y): a stem; a stroke to the right, back down to the left and round in a wide bow. */
function wa(half: number, y: number): Stroke[] {
  const at = (u: number, v: number): readonly [number, number] => [u * half, y + v * half];
  const straight = (u0: number, v0: number, u1: number, v1: number): Stroke => line(...at(u0, v0), ...at(u1, v1));
  const bow = (u0: number, v0: number, cu: number, cv: number, u1: number, v1: number): Stroke => curve(...at(u0, v0), ...at(cu, cv), ...at(u1, v1));
  return [straight(-0.42, -1, -0.42, 1), straight(-0.9, -0.5, -0.2, -0.6), straight(-0.2, -0.6, -0.95, 0.5), bow(-0.95, 0.5, -0.05, -0.55, 0.55, -0.3), bow(0.55, -0.3, 1.15, 0.1, 0.3, 0.95)];
}
