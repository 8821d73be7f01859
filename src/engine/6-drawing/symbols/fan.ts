import { footDot, line, oval } from './frame.ts';
import type { SymbolDrawing } from './frame.ts';
import { leg } from './post.ts';

/** Shell made as one: legs with caps, spread from one foot. */
export const fan: SymbolDrawing = (frame) => {
  const { w, h, length, legs } = frame;
  const foot = [0, length] as const;
  const spread = (legs - 1) * 0.34 * w;
  const strokes = [footDot(frame, foot)];
  for (let n = 0; n < legs; n++) {
    const side = legs > 1 ? (n / (legs - 1)) * 2 - 1 : 0;
    const top = [side * spread, 0.08 * h + side * side * 0.16 * length] as const;
    const away = Math.hypot(top[0] - foot[0], top[1] - foot[1]);
    const [cx, cy] = [((foot[1] - top[1]) / away) * 0.2 * w, ((top[0] - foot[0]) / away) * 0.2 * w];
    strokes.push(line(top[0] - cx, top[1] - cy, top[0] + cx, top[1] + cy), ...leg(frame, top, foot, 0.66));
  }
  return strokes;
};

/** V-stitch made as one: its legs with a chain between their heads. */
export const vStitch: SymbolDrawing = (frame) => [...fan(frame), oval(0, 0.2 * frame.h, 0.22 * frame.w, 0.12 * frame.h)];
