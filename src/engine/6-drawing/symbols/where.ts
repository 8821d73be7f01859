import type { Stroke } from '../drawing.ts';
import { curve, line } from './frame.ts';
import type { SymbolFrame } from './frame.ts';
import type { Facing } from './rightSide.ts';

/**
 * The mark of the loop worked into, as seen on the right side, under the symbol: an arc that opens up for the front loop and down
 * for the back loop; the second set has a bar for the ridge that the back loop leaves.
 */
export function loopMark({ w, h, length, set }: SymbolFrame, loop: Facing): Stroke {
  const y = length - 0.02 * h;
  const bend = 0.13 * h;
  if (loop === 'front') return curve(-0.26 * w, y - bend, 0, y + bend * 0.8, 0.26 * w, y - bend);
  return set === 'jis' ? line(-0.28 * w, y - 0.06 * h, 0.28 * w, y - 0.06 * h) : curve(-0.26 * w, y, 0, y - bend * 1.8, 0.26 * w, y);
}

/** The hook at the foot of a post stitch, as seen on the right side: to the right round the front, to the left round the back. It reaches down round the post below. */
export function postHook({ w, h, length, set }: SymbolFrame, post: Facing): Stroke[] {
  const side = post === 'front' ? 1 : -1;
  const [reach, deep] = set === 'us' ? [0.32 * w, 0.34 * h] : [0.4 * w, 0.46 * h];
  const turn = length + deep - 0.16 * h;
  const strokes = [line(0, length - 0.12 * h, 0, turn), curve(0, turn, 0, length + deep, side * reach * 0.55, length + deep)];
  // The long hook comes up again.
  const tip = set === 'us' ? curve(side * reach * 0.55, length + deep, side * reach, length + deep, side * reach, turn) : curve(side * reach * 0.55, length + deep, side * reach, length + deep, side * reach, turn - 0.14 * h);
  return [...strokes, tip];
}
