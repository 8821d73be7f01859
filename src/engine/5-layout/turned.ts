import { fanWarp } from './fanWarp.ts';
import { FLAG } from '../3-fabric/fabric.ts';
import { findFlanks } from './flanks.ts';
import type { Flanks } from './flanks.ts';
import { fromGuides } from './fromGuides.ts';
import { headOf, within } from './ground.ts';
import type { Ground, IndexedRow } from './ground.ts';
import { labelRows } from './labelRows.ts';
import type { Ghost, PlacedPart, TurnedView } from './layout.ts';
import { flankGhosts, placeFlank, placeFlankTurn } from './placeFlank.ts';
import type { PlacedFlank, Warp } from './placeFlank.ts';
import { placeOutside } from './placeOutside.ts';
import { placeRow } from './placeRow.ts';
import { rowSlots } from './rowSlots.ts';
import type { RowSlots } from './rowSlots.ts';
import { turnedGuides } from './turnedGuides.ts';

/** Rows of the section below that are shown in grey. */
const GHOST_ROWS = 2;
/** Room for words beside the outermost column, in stitch widths. */
const WORDS_ROOM = 1.3;
/** Distance of the line under the grey rows from their lowest heads, in rows: clear of the seam's end. */
const NAME_CLEAR = 2.6;

/**
 * Turned short rows. As a wedge: rows straight, and the stitches left open on either side bent up as flanks, so that each
 * open stitch stands beside the row that is worked into it and every attaching stitch is short. As a fan the rows are bent too. In
 * columns (grid) nothing moves, and attaching stitches reach down. Which row takes which open stitch comes from the graph, so sides
 * may differ and a row may take several. Where the open stitches make no two plain flanks (an hourglass heel: one left by each
 * row) columns are kept in every view: the rows that leave and the rows that take back lie as two wedges tip to tip, and the
 * attaching stitches cross the gap between them. Linear cost.
 */
export function turned(ground: Ground, rows: readonly IndexedRow[], view: TurnedView): PlacedPart {
  const slots = rows.map((row, r) => rowSlots(ground.fabric, row, rows[r + 1] ?? null));
  rows.forEach((row, r) => {
    if (r === 0) placeOutside(ground, slots[0]!.slots);
    placeRow(ground, row, slots[r]!, { startX: 0, baseY: 0, inRounds: false, around: null, evenMm: 0, leanMm: 0 });
  });
  const flanks = findFlanks(ground, rows, slots);
  const bends = flanks.plain && view !== 'grid';
  const warp = bends && view === 'fan' ? fanOf(ground, slots, flanks.turnRow) : null;
  const bent = bends ? bend(ground, rows, slots, flanks, warp ?? ((point) => point)) : [];
  if (warp) warpRows(ground, rows.slice(flanks.turnRow), warp);
  const ghosts = [...coreGhosts(ground, bent, GHOST_ROWS), ...bent.flatMap((flank) => flankGhosts(ground, flank, GHOST_ROWS))];
  attach(ground, slots);
  const placed = rows.map((row, r) => ({ row: row.index, slots: slots[r]! }));
  const deep = Math.max(0, ...bent.flatMap(({ tops }) => tops.map(({ column }) => column.length + GHOST_ROWS)));
  const labels = labelRows(ground, placed, (2.1 + 0.62 * deep + (bent.length === 0 ? WORDS_ROOM : 0)) * ground.w, 'column');
  return { kind: 'turned', keepsColumns: !flanks.plain, rows: labels, ghosts, guides: [...turnedGuides(ground, rows, flanks, bent, ghosts), ...fromGuides(ground, ghosts, NAME_CLEAR)] };
}

function bend(ground: Ground, rows: readonly IndexedRow[], slots: readonly RowSlots[], { turnRow, left, right }: Flanks, warp: Warp): PlacedFlank[] {
  const hingeRow = slots[Math.max(0, turnRow - 1)]!.slots;
  const hinge = (slot: number): readonly [number, number] => [ground.headX[slot - ground.first]!, ground.headY[slot - ground.first]!];
  const bent: PlacedFlank[] = [];
  for (const [tops, side, edge] of [[left, -1, hingeRow[0]], [right, 1, hingeRow.at(-1)]] as const) {
    const flank = edge === undefined ? null : placeFlank(ground, tops, side, hinge(edge), warp);
    if (!flank) continue;
    bent.push(flank);
    rows.forEach((row, r) => placeFlankTurn(ground, flank, row, slots[r]!));
  }
  return bent;
}

/** The fan of the rows from the first one that takes an open stitch. */
function fanOf(ground: Ground, slots: readonly RowSlots[], turnRow: number): Warp | null {
  const hinge = slots[turnRow - 1]?.slots;
  const top = slots.at(-1)?.slots;
  if (!hinge || !top || hinge.length === 0 || top.length === 0) return null;
  const x = (slot: number): number => ground.headX[slot - ground.first]!;
  const half = (row: Int32Array): number => (x(row.at(-1)!) - x(row[0]!)) / 2 + ground.w / 2;
  return fanWarp({ middleX: (x(hinge[0]!) + x(hinge.at(-1)!)) / 2, hingeY: ground.headY[hinge[0]! - ground.first]!, hingeHalf: half(hinge), topY: ground.headY[top[0]! - ground.first]!, topHalf: half(top) });
}

function warpRows({ first, headX, headY, footX, footY, corners }: Ground, rows: readonly IndexedRow[], warp: Warp): void {
  for (const row of rows) {
    for (let i = row.first - first; i < row.end - first; i++) {
      [headX[i], headY[i]] = warp([headX[i]!, headY[i]!]);
      [footX[i], footY[i]] = warp([footX[i]!, footY[i]!]);
      for (let c = i * 8; c < i * 8 + 8; c += 2) [corners[c], corners[c + 1]] = warp([corners[c]!, corners[c + 1]!]);
    }
  }
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
