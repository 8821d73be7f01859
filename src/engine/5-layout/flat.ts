import { bendRipple } from './bendRipple.ts';
import { fromGuides } from './fromGuides.ts';
import type { Ground, IndexedRow } from './ground.ts';
import { labelRows } from './labelRows.ts';
import type { PlacedPart } from './layout.ts';
import { openBands } from './openBands.ts';
import { outsideGhosts } from './outsideGhosts.ts';
import { placeOutside } from './placeOutside.ts';
import { placeRow } from './placeRow.ts';
import { rippleOf } from './ripple.ts';
import { rowSlots } from './rowSlots.ts';

/** Distance of row numbers from the row's edge, in stitch widths: past the turning chain and the arrow. */
const LABEL_CLEAR = 2.1;

/**
 * Rows back and forth: every row fitted over its bases, strictly from the first row up. Rows that bend at pivots one on another (zigzags,
 * mitres) are bent. Linear cost.
 */
export function flat(ground: Ground, rows: readonly IndexedRow[]): PlacedPart {
  const slots = rows.map((row, r) => rowSlots(ground.fabric, row, rows[r + 1] ?? null));
  const ripple = rippleOf(ground, rows, slots);
  let below: { readonly middleX: number; readonly topY: number } | null = null;
  const placed = rows.map((row, r) => {
    const own = slots[r]!;
    if (r === 0) placeOutside(ground, own.slots);
    const startX = ripple ? -(ripple.firstPivot[r]! + 0.5) * ground.w : below ? below.middleX - (own.slots.length * ground.w) / 2 : 0;
    placeRow(ground, row, own, { startX, baseY: below?.topY ?? 0, inRounds: false, around: null, evenMm: ripple ? ground.w : 0, leanMm: 0 });
    below = topOf(ground, own.slots) ?? below;
    return { row: row.index, slots: own };
  });
  if (ripple) bendRipple(ground, rows, ripple);
  const ghosts = outsideGhosts(ground);
  const guides = [...openBands(ground, rows, slots), ...fromGuides(ground, ghosts)];
  return { kind: 'flat', rows: labelRows(ground, placed, LABEL_CLEAR * ground.w, 'edge'), ghosts, guides };
}

/** Middle of a row's heads and the highest of them. */
function topOf({ headX, headY, first }: Ground, slots: Int32Array): { readonly middleX: number; readonly topY: number } | null {
  if (slots.length === 0) return null;
  const ends = [slots[0]!, slots.at(-1)!] as const;
  let topY = Infinity;
  for (const slot of slots) topY = Math.min(topY, headY[slot - first]!);
  return { middleX: (headX[ends[0] - first]! + headX[ends[1] - first]!) / 2, topY };
}
