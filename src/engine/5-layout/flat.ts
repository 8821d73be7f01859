import type { Fabric } from '../3-fabric/fabric.ts';
import { finish } from './finish.ts';
import type { Cell } from './gaugeCell.ts';
import { newGround, sectionRows } from './ground.ts';
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
  const placed = rows.map((row, r) => {
    const slots = rowSlots(fabric, row, rows[r + 1] ?? null);
    if (r === 0) placeOutside(ground, slots.slots);
    placeRow(ground, row, slots, { startX: 0, baseY: 0, inRounds: false, aroundMm: 0, evenMm: 0, leanMm: 0 });
    return { row: row.index, slots };
  });
  const ghosts = outsideGhosts(ground);
  return finish(ground, 'flat', labelRows(ground, placed, LABEL_CLEAR * cell.widthMm, 'edge'), ghosts, []);
}
