import { bendRipple } from './bendRipple.ts';
import { fromGuides } from './fromGuides.ts';
import type { Ground, IndexedRow } from './ground.ts';
import { labelRows, labelStarts, startOf } from './labelRows.ts';
import type { PlacedPart } from './layout.ts';
import { openBands } from './openBands.ts';
import { outsideGhosts } from './outsideGhosts.ts';
import { placeOutside } from './placeOutside.ts';
import { placeRow } from './placeRow.ts';
import { rippleOf } from './ripple.ts';
import type { RowSlots } from './rowSlots.ts';
import { rowSlots } from './rowSlots.ts';
import { standRows } from './standRows.ts';
import type { Level, Stacking, StoodRow } from './stoodRow.ts';

/** Distance of row numbers from the row's edge, in stitch widths: past the turning chain and the arrow. */
const LABEL_CLEAR = 2.1;

/**
 * Rows back and forth: every row fitted over its bases, strictly from the first row up. Rows that bend at pivots one on another (zigzags,
 * mitres) are bent. Linear cost.
 */
export function flat(ground: Ground, rows: readonly IndexedRow[]): PlacedPart {
  const slots = rows.map((row, r) => rowSlots(ground.fabric, row, rows[r + 1] ?? null));
  const ripple = rippleOf(ground, rows, slots);
  placeOutside(ground, slots[0]?.slots ?? new Int32Array());
  if (!ripple) return flatPart(ground, rows, slots, standRows(ground, rows, slots, flatStacking()), () => ground);
  rows.forEach((row, r) => {
    const [under, own] = [slots[r - 1]?.slots, slots[r]!];
    const baseY = under ? levelOf(ground, under).topY : 0;
    placeRow(ground, row, own, { startX: -(ripple.firstPivot[r]! + 0.5) * ground.w, baseY, inRounds: false, around: null, evenMm: ground.w, leanMm: 0 });
  });
  bendRipple(ground, rows, ripple);
  const ghosts = outsideGhosts(ground);
  const placed = rows.map((row, r) => ({ row: row.index, slots: slots[r]! }));
  return { kind: 'flat', rows: labelRows(ground, placed, LABEL_CLEAR * ground.w, 'edge'), ghosts, guides: [...openBands(ground, rows, slots, () => ground), ...fromGuides(ground, ghosts)] };
}

/** How rows back and forth stand one on another: those without any base over the middle of the row below. */
export function flatStacking(): Stacking {
  return {
    place: (ground, row, own, _, on) => {
      const startX = on.isBegun ? on.left - (own.slots.length * ground.w) / 2 : 0;
      placeRow(ground, row, own, { startX, baseY: 0, inRounds: false, around: null, evenMm: 0, leanMm: 0 });
    },
    level: (ground, { slots }, _, on) => (slots.length === 0 ? on : levelOf(ground, slots)),
    marks: (ground, _, slots) => ({ start: startOf(ground, slots), cut: [], repeats: [], begin: null }),
  };
}

/** The piece of rows that stand; `groundAt`: a ground with the stitches of row `r` in it. */
export function flatPart(ground: Ground, rows: readonly IndexedRow[], slots: readonly RowSlots[], stood: readonly StoodRow[], groundAt: (r: number) => Ground): PlacedPart {
  const ghosts = outsideGhosts(ground);
  const labels = labelStarts(rows.map(({ index }, r) => ({ row: index, start: stood[r]!.marks.start })), ground.h, LABEL_CLEAR * ground.w, 'edge');
  return { kind: 'flat', rows: labels, ghosts, guides: [...openBands(ground, rows, slots, groundAt), ...fromGuides(ground, ghosts)], stood };
}

/** Middle of a row's heads and the highest of them. */
function levelOf({ headX, headY, first }: Ground, slots: Int32Array): Level {
  if (slots.length === 0) return { left: 0, right: 0, topY: 0, isBegun: false };
  const ends = [slots[0]!, slots.at(-1)!] as const;
  let topY = Infinity;
  for (const slot of slots) topY = Math.min(topY, headY[slot - first]!);
  const middleX = (headX[ends[0] - first]! + headX[ends[1] - first]!) / 2;
  return { left: middleX, right: middleX, topY, isBegun: true };
}
