import { archChains } from './archChains.ts';
import { boxCorners, headOf, setStitch, stitchHeight } from './ground.ts';
import type { Ground, IndexedRow } from './ground.ts';
import type { RowSlots } from './rowSlots.ts';

/** Distance of a turning chain from the row's edge, in stitch widths. */
const CLEAR = 0.2;
/** Height of one chain that stands beside the edge, in single-crochet heights. */
const CHAIN_TALL = 0.44;

/**
 * Places what takes no slot: turning chains that don't count beside the edge where the row starts, joins at the edge where
 * it ends, picots and their like on the stitch before them.
 */
export function placeBeside(ground: Ground, row: IndexedRow, slots: RowSlots): void {
  const { w, h } = ground;
  const start = slots.reversed ? slots.slots.at(-1) : slots.slots[0];
  const finish = slots.reversed ? slots.slots[0] : slots.slots.at(-1);
  const outward: -1 | 1 = slots.reversed ? 1 : -1;
  const [x, top, bottom] = start === undefined ? fallback(ground, row) : slotBox(ground, start, outward);
  if (slots.leading.length > 0 && start !== undefined) placeLeading(ground, row, slots, start, outward);
  const turning = slots.leading.length > 0 ? [] : slots.turning;
  const tall = Math.min(CHAIN_TALL * h, (bottom - top) / Math.max(1, turning.length));
  let y = (top + bottom) / 2 + (tall * turning.length) / 2;
  for (const stitch of turning) {
    const at = x + outward * CLEAR * w;
    setStitch(ground, stitch, [at, y - tall], [at, y], boxCorners(at, y - tall / 2, 0.16 * w, tall / 2));
    y -= tall;
  }
  if (slots.joins.length > 0) {
    const [endX, endTop, endBottom] = finish === undefined ? [x, top, bottom] : slotBox(ground, finish, outward > 0 ? -1 : 1);
    slots.joins.forEach((stitch, n) => {
      const at = endX - outward * (CLEAR + n * 0.3) * w;
      const middle = (endTop + endBottom) / 2;
      setStitch(ground, stitch, [at, middle - 0.12 * h], [at, middle + 0.12 * h], boxCorners(at, middle, 0.14 * w, 0.14 * h));
    });
  }
  for (const stitch of slots.perched) perch(ground, stitch, row);
  if (slots.rings.length > 0 && start !== undefined && finish !== undefined) {
    const middle = (ground.headX[start - ground.first]! + ground.headX[finish - ground.first]!) / 2;
    slots.rings.forEach((stitch, n) => {
      const x = middle + (n - (slots.rings.length - 1) / 2) * w;
      setStitch(ground, stitch, [x, bottom + 0.1 * h], [x, bottom + 0.6 * h], boxCorners(x, bottom + 0.35 * h, 0.25 * w, 0.25 * h));
    });
  }
}

/** Chains that a row begins with, turning chain first: an arch from the stitch made last in the row below to the row's first stitch. */
function placeLeading(ground: Ground, row: IndexedRow, { turning, leading }: RowSlots, start: number, outward: -1 | 1): void {
  const { w, h, headX, headY, first, fabric } = ground;
  const chains = [...turning, ...leading];
  const to = [headX[start - first]!, headY[start - first]!] as const;
  const before = fabric.previous[chains[0]!] ?? -1;
  const from = before >= 0 && before < row.first ? headOf(ground, before) : null;
  const foot = from ?? [to[0] + outward * 2 * w, to[1] + h];
  // An arch rises to the left of its way: with the outer side to the left, whichever side the row starts from.
  if (outward > 0) archChains(ground, chains.toReversed(), to, foot);
  else archChains(ground, chains, foot, to);
}

/** Outer edge of a slot's cell (`outward` 1: the right one), its top and bottom. A slanted edge keeps half a stitch from the head. */
function slotBox(ground: Ground, stitch: number, outward: -1 | 1): readonly [x: number, top: number, bottom: number] {
  const i = stitch - ground.first;
  const c = ground.corners;
  const edge = outward > 0 ? (c[i * 8 + 2]! + c[i * 8 + 4]!) / 2 : (c[i * 8]! + c[i * 8 + 6]!) / 2;
  const least = ground.headX[i]! + outward * 0.5 * ground.w;
  return [outward * edge > outward * least ? edge : least, ground.headY[i]!, (c[i * 8 + 1]! + c[i * 8 + 3]!) / 2];
}

/** A row without any slot (a chain that is joined, a lone slip stitch) stands on its base or at the origin. */
function fallback(ground: Ground, row: IndexedRow): readonly [x: number, top: number, bottom: number] {
  const { fabric, h } = ground;
  for (let b = fabric.baseStart[row.first]!; b < fabric.baseStart[row.end]!; b++) {
    const head = headOf(ground, fabric.bases[b]!);
    if (head) return [head[0], head[1] - h, head[1]];
  }
  ground.frame.isAdrift = true;
  return [0, -h - ground.frame.originY, -ground.frame.originY];
}

/** On top of the stitch made before it; each further one stands on the last. */
function perch(ground: Ground, stitch: number, row: IndexedRow): void {
  const { fabric, w } = ground;
  const below = stitch > row.first ? stitch - 1 : (fabric.bases[fabric.baseStart[stitch]!] ?? stitch);
  const head = headOf(ground, below);
  if (!head) ground.frame.isAdrift = true;
  const [x, y] = head ?? [0, -ground.frame.originY];
  const tall = stitchHeight(ground, stitch);
  setStitch(ground, stitch, [x, y - tall], [x, y], boxCorners(x, y - tall / 2, 0.3 * w, tall / 2));
}
