import type { Fabric } from '../3-fabric/fabric.ts';
import { FLAG } from '../3-fabric/fabric.ts';
import { finish } from './finish.ts';
import { findFlanks } from './flanks.ts';
import type { Flanks } from './flanks.ts';
import type { Cell } from './gaugeCell.ts';
import { headOf, newGround, sectionRows, within } from './ground.ts';
import type { Ground, IndexedRow } from './ground.ts';
import { labelRows } from './labelRows.ts';
import type { Ghost, Layout } from './layout.ts';
import { flankGhosts, placeFlank, placeFlankTurn } from './placeFlank.ts';
import type { PlacedFlank } from './placeFlank.ts';
import { placeOutside } from './placeOutside.ts';
import { placeRow } from './placeRow.ts';
import { rowSlots } from './rowSlots.ts';
import type { RowSlots } from './rowSlots.ts';
import { turnedGuides } from './turnedGuides.ts';

/** Rows of the section below that are shown in grey. */
const GHOST_ROWS = 2;

/**
 * Turned short rows as a wedge: rows straight, and the stitches left open on either side bent up as flanks, so that each
 * open stitch stands beside the row that is worked into it and every attaching stitch is short. Which row that is comes
 * from the graph, so sides may differ and a row may take several. Where the open stitches make no two plain flanks, the
 * columns of the plain grid are kept and attaching stitches reach down. Linear cost.
 */
export function turned(fabric: Fabric, section: number, cell: Cell): Layout {
  const ground = newGround(fabric, section, cell);
  const rows = sectionRows(fabric, section);
  const slots = rows.map((row, r) => rowSlots(fabric, row, rows[r + 1] ?? null));
  rows.forEach((row, r) => {
    if (r === 0) placeOutside(ground, slots[0]!.slots);
    placeRow(ground, row, slots[r]!, { startX: 0, baseY: 0, inRounds: false, aroundMm: 0, evenMm: 0, leanMm: 0 });
  });
  const flanks = findFlanks(ground, rows, slots);
  const bent = flanks.plain ? bend(ground, rows, slots, flanks) : [];
  const ghosts = [...coreGhosts(ground, bent, GHOST_ROWS), ...bent.flatMap((flank) => flankGhosts(ground, flank, GHOST_ROWS))];
  attach(ground, slots);
  const placed = rows.map((row, r) => ({ row: row.index, slots: slots[r]! }));
  const deep = Math.max(0, ...bent.flatMap(({ tops }) => tops.map(({ column }) => column.length + GHOST_ROWS)));
  const labels = labelRows(ground, placed, (2.1 + 0.62 * deep) * cell.widthMm, 'column');
  return finish(ground, 'turned', labels, ghosts, turnedGuides(ground, rows, flanks, bent, ghosts));
}

function bend(ground: Ground, rows: readonly IndexedRow[], slots: readonly RowSlots[], { turnRow, left, right }: Flanks): PlacedFlank[] {
  const hingeRow = slots[Math.max(0, turnRow - 1)]!.slots;
  const hinge = (slot: number): readonly [number, number] => [ground.headX[slot - ground.first]!, ground.headY[slot - ground.first]!];
  const bent: PlacedFlank[] = [];
  for (const [tops, side, edge] of [[left, -1, hingeRow[0]], [right, 1, hingeRow.at(-1)]] as const) {
    const flank = edge === undefined ? null : placeFlank(ground, tops, side, hinge(edge));
    if (!flank) continue;
    bent.push(flank);
    rows.forEach((row, r) => placeFlankTurn(ground, flank, row, slots[r]!));
  }
  return bent;
}

/** Ghosts straight below: bases of other sections that belong to no bent flank, and the rows under them. */
function coreGhosts(ground: Ground, bent: readonly PlacedFlank[], rows: number): Ghost[] {
  const { fabric, h } = ground;
  const onFlank = new Set<number>();
  for (const { tops } of bent) {
    for (const { stitch, column } of tops) {
      const lowest = column.at(-1);
      onFlank.add(lowest === undefined ? stitch : (fabric.bases[fabric.baseStart[lowest]!] ?? -1));
    }
  }
  const ghosts: Ghost[] = [];
  for (const [stitch, [headX, headY]] of ground.outside) {
    if (onFlank.has(stitch)) continue;
    let base: number | undefined = stitch;
    for (let k = 0; k < rows && base !== undefined && !within(ground, base); k++) {
      ghosts.push({ stitch: base, headX, headY: headY + k * h, angle: 0 });
      base = fabric.baseStart[base] === fabric.baseStart[base + 1] ? undefined : fabric.bases[fabric.baseStart[base]!];
    }
  }
  return ghosts;
}

/** Feet of the attaching stitches: the open stitches they hold to, now that these have their place. */
function attach(ground: Ground, slots: readonly RowSlots[]): void {
  const { fabric } = ground;
  for (const row of slots) {
    for (const slot of row.slots) {
      if (!(fabric.flags[slot]! & FLAG.attaching)) continue;
      let [x, y, count] = [0, 0, 0];
      for (let b = fabric.baseStart[slot]!; b < fabric.baseStart[slot + 1]!; b++) {
        const head = headOf(ground, fabric.bases[b]!);
        if (head) [x, y, count] = [x + head[0], y + head[1], count + 1];
      }
      if (count > 0) [ground.footX[slot - ground.first], ground.footY[slot - ground.first]] = [x / count, y / count];
    }
  }
}
