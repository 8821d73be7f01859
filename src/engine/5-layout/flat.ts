import type { Fabric } from '../3-fabric/fabric.ts';
import { finish } from './finish.ts';
import type { Cell } from './gaugeCell.ts';
import { newGround, sectionRows } from './ground.ts';
import type { Ground } from './ground.ts';
import { labelRows } from './labelRows.ts';
import type { Layout } from './layout.ts';
import { outsideGhosts } from './outsideGhosts.ts';
import { placeOutside } from './placeOutside.ts';
import { placeRow } from './placeRow.ts';
import { rowSlots } from './rowSlots.ts';

/** Distance of row numbers from the row's edge, in stitch widths: past the turning chain and the arrow. */
const LABEL_CLEAR = 2.1;

/** A section worked in rows back and forth: every row fitted over its bases, strictly from the first row up. Linear cost. */
export function flat(fabric: Fabric, section: number, cell: Cell): Layout {
  const ground = newGround(fabric, section, cell);
  const rows = sectionRows(fabric, section);
  let below: { readonly middleX: number; readonly topY: number } | null = null;
  const placed = rows.map((row, r) => {
    const slots = rowSlots(fabric, row, rows[r + 1] ?? null);
    if (r === 0) placeOutside(ground, slots.slots);
    placeRow(ground, row, slots, { startX: below ? below.middleX - (slots.slots.length * cell.widthMm) / 2 : 0, baseY: below?.topY ?? 0, inRounds: false, aroundMm: 0, evenMm: 0, leanMm: 0 });
    below = topOf(ground, slots.slots) ?? below;
    return { row: row.index, slots };
  });
  const ghosts = outsideGhosts(ground);
  return finish(ground, 'flat', labelRows(ground, placed, LABEL_CLEAR * cell.widthMm, 'edge'), ghosts, []);
}

/** Middle of a row's heads and the highest of them. */
function topOf({ headX, headY, first }: Ground, slots: Int32Array): { readonly middleX: number; readonly topY: number } | null {
  if (slots.length === 0) return null;
  const ends = [slots[0]!, slots.at(-1)!] as const;
  let topY = Infinity;
  for (const slot of slots) topY = Math.min(topY, headY[slot - first]!);
  return { middleX: (headX[ends[0] - first]! + headX[ends[1] - first]!) / 2, topY };
}
