import type { FindItem } from './gridIndex.ts';

/**
 * The stitches under the straight line between two points (mm), in order, each once: what a brush touched between two
 * pointer events. The line is sampled every `stepMm`; a third of a cell misses no more than a corner.
 */
export function stitchesBetween(find: FindItem, stitchOfItem: Int32Array, from: readonly [number, number], to: readonly [number, number], stepMm: number): number[] {
  if (!(stepMm > 0)) throw new RangeError(`step is ${stepMm} mm, expected more than 0`);
  const dx = to[0] - from[0], dy = to[1] - from[1];
  const steps = Math.max(1, Math.ceil(Math.hypot(dx, dy) / stepMm));
  const stitches: number[] = [];
  const seen = new Set<number>();
  for (let s = 0; s <= steps; s++) {
    const item = find(from[0] + (dx * s) / steps, from[1] + (dy * s) / steps);
    const stitch = item < 0 ? -1 : stitchOfItem[item]!;
    if (stitch < 0 || seen.has(stitch)) continue;
    seen.add(stitch);
    stitches.push(stitch);
  }
  return stitches;
}
