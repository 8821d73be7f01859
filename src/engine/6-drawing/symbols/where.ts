import type { Stroke } from '../drawing.ts';
import { curve } from './frame.ts';
import type { SymbolFrame } from './frame.ts';

/** Loop arcs, as seen on the right side: the front loop's opens up, the back loop's opens down. */
export function loopArc({ w, h, length }: SymbolFrame, loop: 'front' | 'back'): Stroke {
  const y = length - 0.02 * h;
  const bend = 0.16 * h;
  return loop === 'front' ? curve(-0.26 * w, y - bend, 0, y + bend * 0.6, 0.26 * w, y - bend) : curve(-0.26 * w, y, 0, y - bend * 1.6, 0.26 * w, y);
}

/** The hook at the foot of a post stitch, as seen on the right side: to the right round the front, to the left round the back. */
export function postHook({ w, h, length }: SymbolFrame, post: 'front' | 'back'): Stroke {
  const side = post === 'front' ? 1 : -1;
  return curve(0, length - 0.12 * h, side * 0.06 * w, length + 0.16 * h, side * 0.3 * w, length - 0.06 * h);
}
