import type { Stroke } from '../drawing.ts';
import { footDot, line } from './frame.ts';
import type { SymbolDrawing, SymbolFrame } from './frame.ts';

/** How far a stem stops short of its base, in single-crochet heights. */
const SHORT = 0.1;

/**
 * Half double, double, treble and double treble crochet: a T with a slash for each yarn over beyond the first one's stitch
 * (none for half double). Drawn together: a leg a base, joined under one cap.
 */
export const post: SymbolDrawing = (frame) => {
  const { w, h, feet, shared } = frame;
  const cap = 0.08 * h;
  const many = feet.length > 1;
  const bar = (many ? 0.2 : 0.31) * w;
  const strokes: Stroke[] = [line(-bar, cap, bar, cap)];
  for (const foot of feet) strokes.push(...leg(frame, [0, cap], shared ? foot : shorten(foot, SHORT * h), shared ? 0.66 : 0.56));
  if (shared && feet[0]) strokes.push(footDot(frame, feet[0]));
  return strokes;
};

/** A stem with its slashes; `at` is the height of their middle, as a part of the way from foot to top. */
export function leg(frame: SymbolFrame, [x0, y0]: readonly [number, number], [x1, y1]: readonly [number, number], at = 0.56): Stroke[] {
  const strokes = [line(x0, y0, x1, y1)];
  const length = Math.hypot(x1 - x0, y1 - y0);
  if (length === 0) return strokes;
  const [ux, uy] = [(x1 - x0) / length, (y1 - y0) / length];
  const half = 0.17 * frame.w;
  const apart = Math.min(0.28 * frame.h, (0.5 * length) / Math.max(1, frame.slashes - 1));
  for (let n = 0; n < frame.slashes; n++) {
    const t = length * (1 - at) + (n - (frame.slashes - 1) / 2) * apart;
    const [x, y] = [x0 + ux * t, y0 + uy * t];
    // Across the stem and tipped down by a third of a right angle.
    const [sx, sy] = [uy * 0.87 + ux * 0.5, -ux * 0.87 + uy * 0.5];
    strokes.push(line(x - half * sx, y - half * sy, x + half * sx, y + half * sy));
  }
  return strokes;
}

function shorten([x, y]: readonly [number, number], by: number): readonly [number, number] {
  const length = Math.hypot(x, y);
  return length > by ? [x * (1 - by / length), y * (1 - by / length)] : [x, y];
}
