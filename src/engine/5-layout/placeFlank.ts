import { setStitch, within } from './ground.ts';
import type { Ground, IndexedRow } from './ground.ts';
import type { FlankTop } from './flanks.ts';
import type { Ghost } from './layout.ts';
import type { RowSlots } from './rowSlots.ts';

/** A flank as it was placed: the line of its open stitches and the way down into the fabric. */
export interface PlacedFlank {
  readonly tops: readonly FlankTop[];
  readonly heads: readonly (readonly [x: number, y: number])[];
  /** Step along the flank, from the hinge outwards. */
  readonly along: readonly [x: number, y: number];
  /** One row down into the fabric, away from the wedge. */
  readonly down: readonly [x: number, y: number];
  readonly side: -1 | 1;
}

/** Distance of a flank stitch from the slot of the stitch attached to it, and how far below that row's heads it stands (cells). */
const BESIDE = 0.62;
const BELOW = 0.75;
/** One row along the flank's normal, in row heights. */
const ROW = 0.95;
/** Rows a flank rises for each of its stitches where no attaching stitch says so. */
const RISE = 2;

/** Moves a point of the straight rows to where it lies in the picture. */
export type Warp = (point: readonly [x: number, y: number]) => readonly [x: number, y: number];

/**
 * Bends one flank up beside the wedge: each open stitch comes to stand beside the row that is attached to it, and the
 * stitches under it follow along the flank's normal. `warp` is applied to the places of the open stitches. Nothing moves on a side where nothing is attached.
 */
export function placeFlank(ground: Ground, tops: readonly FlankTop[], side: -1 | 1, hinge: readonly [x: number, y: number], warp: Warp): PlacedFlank | null {
  if (!tops.some(({ attached }) => attached >= 0)) return null;
  const { w, h } = ground;
  const heads = flankHeads(ground, tops, side, hinge).map(warp);
  const [first, last] = [heads[0]!, heads.at(-1)!];
  const steps = heads.length - 1;
  const along: [number, number] = steps > 0 ? [(last[0] - first[0]) / steps, (last[1] - first[1]) / steps] : [side * w, -RISE * h];
  const length = Math.hypot(along[0], along[1]);
  const down: [number, number] = [(-side * along[1] * ROW * h) / length, (side * along[0] * ROW * h) / length];
  const flank: PlacedFlank = { tops, heads, along, down, side };
  tops.forEach(({ column }, t) => column.forEach((stitch, depth) => placeInColumn(ground, flank, stitch, t, depth)));
  return flank;
}

/** Heads of the open stitches: from the slot and the row of what is attached to each; where a row takes several, they share the rise. */
function flankHeads(ground: Ground, tops: readonly FlankTop[], side: -1 | 1, hinge: readonly [number, number]): (readonly [number, number])[] {
  const { w, h, fabric } = ground;
  const heads: (readonly [number, number])[] = [];
  let [x, y] = [hinge[0] + side * BESIDE * w, hinge[1] + BELOW * h];
  for (let t = 0; t < tops.length; ) {
    const slot = tops[t]!.attached;
    if (slot < 0) {
      [x, y] = [x + side * w, y - RISE * h];
      heads.push([x, y]);
      t++;
      continue;
    }
    let end = t + 1;
    while (end < tops.length && tops[end]!.attached >= 0 && fabric.row[tops[end]!.attached] === fabric.row[slot]) end++;
    const to = ground.headY[slot - ground.first]! + BELOW * h;
    for (let k = t; k < end; k++) heads.push([ground.headX[tops[k]!.attached - ground.first]! + side * BESIDE * w, y + ((to - y) * (k - t + 1)) / (end - t)]);
    [x, y] = heads.at(-1)!;
    t = end;
  }
  return heads;
}

function placeInColumn(ground: Ground, flank: PlacedFlank, stitch: number, t: number, depth: number): void {
  const at = (rows: number): readonly [number, number] => flankPoint(flank, t, rows);
  const head = at(depth);
  const foot = at(depth + 1);
  const edge = (direction: -1 | 1, rows: number): readonly [number, number] => {
    const middle = halfWay(flank, t, direction);
    return [middle[0] + flank.down[0] * rows, middle[1] + flank.down[1] * rows];
  };
  const [inner, outer] = flank.side > 0 ? ([-1, 1] as const) : ([1, -1] as const);
  setStitch(ground, stitch, head, foot, [...edge(inner, depth + 1), ...edge(outer, depth + 1), ...edge(outer, depth), ...edge(inner, depth)]);
}

/** The point `rows` rows under the head of flank stitch `t`. */
export function flankPoint({ heads, down }: PlacedFlank, t: number, rows: number): readonly [number, number] {
  const [x, y] = heads[t]!;
  return [x + down[0] * rows, y + down[1] * rows];
}

/** Midway between flank stitch `t` and the next outwards (1) or inwards (-1); at the ends half a step on. */
function halfWay({ heads, along }: PlacedFlank, t: number, direction: -1 | 1): readonly [number, number] {
  const [x, y] = heads[t]!;
  const other = heads[t + direction];
  return other ? [(x + other[0]) / 2, (y + other[1]) / 2] : [x + (direction * along[0]) / 2, y + (direction * along[1]) / 2];
}

/** Lean of the flank's stitches, clockwise from up. */
export function flankTurn({ down }: PlacedFlank): number {
  return Math.atan2(-down[0], down[1]);
}

/** Moves the turning chain of a row that starts on the flank to the flank's outer end. */
export function placeFlankTurn(ground: Ground, flank: PlacedFlank, row: IndexedRow, { slots, reversed, turning }: RowSlots): void {
  const start = reversed ? slots.at(-1) : slots[0];
  const t = flank.tops.findIndex(({ column }) => start !== undefined && column.includes(start));
  if (t < 0 || row.end === row.first) return;
  const depth = flank.tops[t]!.column.indexOf(start!);
  const { w, h } = ground;
  const length = Math.hypot(flank.along[0], flank.along[1]);
  const [ux, uy] = [flank.along[0] / length, flank.along[1] / length];
  const [dx, dy] = [flank.down[0] / (ROW * h), flank.down[1] / (ROW * h)];
  const [hx, hy] = flankPoint(flank, t, depth);
  const tall = Math.min(0.44 * h, h / Math.max(1, turning.length));
  const out = length / 2 + 0.2 * w;
  turning.forEach((stitch, n) => {
    const at = (across: number, down: number): readonly [number, number] => [hx + ux * (out + across) + dx * down, hy + uy * (out + across) + dy * down];
    const low = h / 2 + (tall * turning.length) / 2 - n * tall;
    const half = 0.16 * w;
    const box = flank.side > 0 ? [...at(-half, low), ...at(half, low), ...at(half, low - tall), ...at(-half, low - tall)] : [...at(half, low), ...at(-half, low), ...at(-half, low - tall), ...at(half, low - tall)];
    setStitch(ground, stitch, at(0, low - tall), at(0, low), box);
  });
}

/** Stitches of other sections under (or on) the flank, as ghosts, `rows` deep. Their places are kept as outside bases. */
export function flankGhosts(ground: Ground, flank: PlacedFlank, rows: number): Ghost[] {
  const { fabric } = ground;
  const turn = flankTurn(flank);
  return flank.tops.flatMap(({ stitch, column }, t) => {
    const lowest = column.at(-1);
    const ghosts: Ghost[] = [];
    let base: number | undefined = lowest === undefined ? stitch : fabric.bases[fabric.baseStart[lowest]!];
    for (let k = 0; k < rows; k++) {
      if (base === undefined || within(ground, base)) break;
      const [headX, headY] = flankPoint(flank, t, column.length + k);
      ghosts.push({ stitch: base, headX, headY, angle: turn });
      if (k === 0) ground.outside.set(base, [headX, headY]);
      base = fabric.baseStart[base] === fabric.baseStart[base + 1] ? undefined : fabric.bases[fabric.baseStart[base]!];
    }
    return ghosts;
  });
}
