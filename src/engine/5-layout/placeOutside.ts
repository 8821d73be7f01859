import { within } from './ground.ts';
import type { Ground } from './ground.ts';

/**
 * Gives the stitches of other sections that a first row is worked on their place: side by side in the order in which the row
 * takes them, heads at y = 0. Later bases of other sections stay without a place.
 */
export function placeOutside(ground: Ground, slots: Int32Array): void {
  const { fabric, outside, w } = ground;
  for (const slot of slots) {
    const order: number[] = [];
    for (let b = fabric.baseStart[slot]!; b < fabric.baseStart[slot + 1]!; b++) order.push(fabric.bases[b]!);
    // Bases drawn together are listed in working order; slots come left to right.
    if (slots.length > 1 && slots[0]! > slots[1]!) order.reverse();
    for (const base of order) {
      if (!within(ground, base) && !outside.has(base)) outside.set(base, [(outside.size + 0.5) * w, 0]);
    }
  }
}
