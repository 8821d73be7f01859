import { stitchCode } from '../craft/stitches.ts';
import { FLAG } from '../3-fabric/fabric.ts';
import { archSpaces } from './archChains.ts';
import { setStitch, stitchHeight } from './ground.ts';
import type { Ground, IndexedRow } from './ground.ts';
import { inRing } from './placeRow.ts';
import { mmToStation, ringPoint, ringRay, stationToMm } from './ringCurve.ts';
import type { RingCurve, RingRay } from './ringCurve.ts';
import type { RoundPlaces } from './roundPlaces.ts';
import type { Annulus } from './roundRadii.ts';
import { meanHeight } from './roundWidths.ts';
import type { RowSlots } from './rowSlots.ts';
import { spaceFeet } from './spaceFeet.ts';

const RING = stitchCode('ring');
const CHAIN = stitchCode('ch');

/** A round with all that places it. */
export interface PlacedRound {
  readonly row: IndexedRow;
  readonly slots: RowSlots;
  /** Slots anticlockwise. */
  readonly order: Int32Array;
  readonly places: RoundPlaces;
  readonly at: Annulus & { readonly inwards: boolean };
  readonly curve: RingCurve;
  /** All heads of the rounds below lie on their lines. */
  readonly onLevel: boolean;
}

const NEW_RAY = (): RingRay => ({ x: 0, y: 0, dx: 0, dy: 0, outX: 0, outY: 0 });

/** Places a round's slots between its two lines, taller and lower stitches further out and in, then what stands beside them. True if all heads lie on the line. */
export function placeRound(ground: Ground, round: PlacedRound): boolean {
  const { slots, order, places, at, curve, row } = round;
  const reach = headReach(ground, round);
  const feet = slots.has & FLAG.inSpace ? spaceFeet(ground, order) : null;
  const ray = NEW_RAY();
  let right = ringRay(curve, places.edges[0]!);
  let left = NEW_RAY();
  const [from, end] = slots.stack;
  for (let k = 0; k < order.length; k++) {
    const slot = order[k]!;
    ringRay(curve, places.stations[k]!, ray);
    ringRay(curve, places.edges[k + 1]!, left);
    const heads = at.heads + (reach ? reach[k]! : 0);
    const aside = feet ? feet[k]! * curve.sense : 0;
    if (slot < from || slot >= end) {
      cell(ground, slot, left, right, at.inwards ? at.feet : at.feet * cosHalf(curve, left, right), heads);
      stand(ground, slot, row.first, ray, at.feet, heads, aside);
    } else placeStack(ground, round, ray, left, right, heads);
    [right, left] = [left, right];
  }
  if (slots.has & FLAG.space) archSpaces(ground, slots.slots, true);
  placeExtras(ground, round);
  return reach === null && !(slots.has & FLAG.space);
}

/** Corners of a cell between two rays and two radii; seen with its head up, what is worked later stands to the left. */
function cell({ corners, first }: Ground, slot: number, left: RingRay, right: RingRay, low: number, high: number): void {
  const c = (slot - first) * 8;
  corners[c] = left.x + low * left.dx;
  corners[c + 1] = left.y + low * left.dy;
  corners[c + 2] = right.x + low * right.dx;
  corners[c + 3] = right.y + low * right.dy;
  corners[c + 4] = right.x + high * right.dx;
  corners[c + 5] = right.y + high * right.dy;
  corners[c + 6] = left.x + high * left.dx;
  corners[c + 7] = left.y + high * left.dy;
}

/** Head on the ray, foot at the mean head of the bases (or straight below where there are none in reach), moved `aside` along the round. */
function stand(ground: Ground, slot: number, rowFirst: number, ray: RingRay, feet: number, heads: number, aside: number): void {
  const { fabric, first, placed, headX, headY, footX, footY, outside, w } = ground;
  const i = slot - first;
  headX[i] = ray.x + heads * ray.dx;
  headY[i] = ray.y + heads * ray.dy;
  let [x, y] = [ray.x + feet * ray.dx, ray.y + feet * ray.dy];
  placed[i] = 1;
  if (!(fabric.flags[slot]! & FLAG.inSpace) || !inRing(ground, slot)) {
    let [sumX, sumY, count] = [0, 0, 0];
    for (let b = fabric.baseStart[slot]!; b < fabric.baseStart[slot + 1]!; b++) {
      const base = fabric.bases[b]!;
      if (base >= first && base < rowFirst) {
        if (!placed[base - first] || fabric.kind[base] === RING) continue;
        sumX += headX[base - first]!;
        sumY += headY[base - first]!;
      } else {
        const head = outside.get(base);
        if (!head) continue;
        sumX += head[0];
        sumY += head[1];
      }
      count++;
    }
    if (count > 0 && Math.hypot(sumX / count - x, sumY / count - y) <= 4 * w) [x, y] = [sumX / count, sumY / count];
  }
  footX[i] = x + ray.outY * aside;
  footY[i] = y - ray.outX * aside;
}

/** A turning chain that counts: its chains one above another from the foot to the head of the last. */
function placeStack(ground: Ground, { slots, row, at }: PlacedRound, ray: RingRay, left: RingRay, right: RingRay, heads: number): void {
  const [from, end] = slots.stack;
  const { headX, headY, footX, footY, first, placed } = ground;
  const top = end - 1 - first;
  stand(ground, end - 1, row.first, ray, at.feet, heads, 0);
  const [fx, fy, hx, hy] = [footX[top]!, footY[top]!, headX[top]!, headY[top]!];
  const count = end - from;
  for (let n = 0; n < count; n++) {
    const i = from + n - first;
    const [low, high] = [n / count, (n + 1) / count];
    footX[i] = fx + (hx - fx) * low;
    footY[i] = fy + (hy - fy) * low;
    headX[i] = fx + (hx - fx) * high;
    headY[i] = fy + (hy - fy) * high;
    placed[i] = 1;
    cell(ground, from + n, left, right, at.feet + (heads - at.feet) * low, at.feet + (heads - at.feet) * high);
  }
}

/** How much nearer to the core the middle of a straight edge between two rays lies than its ends: cells of the next round reach under it. */
function cosHalf({ sides }: RingCurve, a: RingRay, b: RingRay): number {
  return sides > 0 ? 1 : Math.sqrt(Math.max(0, (1 + a.outX * b.outX + a.outY * b.outY) / 2));
}

/** How far each head stands beyond the round's line, mm: by its own height and by what it stands on, smoothed along the round. Null where all are level. */
function headReach(ground: Ground, { row, slots, order, at, curve, onLevel }: PlacedRound): Float64Array | null {
  const { fabric, first, placed } = ground;
  const count = order.length;
  const one = fabric.kind[order[0] ?? 0];
  if (onLevel && order.every((slot) => fabric.kind[slot] === one || (slot >= slots.stack[0] && slot < slots.stack[1]))) return null;
  const reach = new Float64Array(count);
  const mean = meanHeight(ground, slots);
  const out = at.inwards ? -1 : 1;
  let level = true;
  const known: boolean[] = [];
  for (let k = 0; k < count; k++) {
    const slot = order[k]!;
    const standing = slot >= slots.stack[0] && slot < slots.stack[1];
    known[k] = fabric.kind[slot] !== CHAIN || standing;
    if (!known[k]) continue;
    let [sum, found] = [0, 0];
    for (let b = fabric.baseStart[slot]!; b < fabric.baseStart[slot + 1]!; b++) {
      const base = fabric.bases[b]!;
      // The corners of a polygon hang on arches; its sides stay straight.
      if (base < first || base >= row.first || !placed[base - first] || inRing(ground, slot) || (curve.sides > 0 && fabric.kind[base] === CHAIN)) continue;
      [sum, found] = [sum + distance(curve, ground.headX[base - first]!, ground.headY[base - first]!) - at.feet, found + 1];
    }
    const own = standing ? 0 : stitchHeight(ground, slot) - mean;
    reach[k] = out * own + (found > 0 ? sum / found : 0);
    if (Math.abs(reach[k]!) > 1e-6 * ground.h) level = false;
    else reach[k] = 0;
  }
  if (level) return null;
  for (let k = 0; k < count; k++) if (!known[k]) reach[k] = between(reach, known, k);
  const rough = reach.slice();
  for (let k = 0; k < count; k++) reach[k] = 0.65 * rough[k]! + 0.175 * (rough[(k + count - 1) % count]! + rough[(k + 1) % count]!);
  return reach;
}

/** Mean of the nearest known values on either side, round the line. */
function between(values: Float64Array, known: readonly boolean[], k: number): number {
  const count = values.length;
  const look = (step: number): number => {
    for (let n = 1; n <= count; n++) {
      const at = (((k + step * n) % count) + count) % count;
      if (known[at]) return values[at]!;
    }
    return 0;
  };
  return (look(-1) + look(1)) / 2;
}

/** Distance from the core; of a polygon: of the side that the point lies towards. */
function distance({ halfMm, sides }: RingCurve, x: number, y: number): number {
  if (sides > 0) {
    const angle = Math.atan2(x, y);
    const middle = Math.round((angle / (2 * Math.PI)) * sides) * ((2 * Math.PI) / sides);
    return Math.hypot(x, y) * Math.cos(angle - middle);
  }
  return Math.hypot(Math.max(0, Math.abs(x) - halfMm), y);
}

/** Turning chains and joins in the room at the start, the ring in the middle, picots on their stitches. */
function placeExtras(ground: Ground, { slots, places, at, curve }: PlacedRound): void {
  const { w, h } = ground;
  const { turning, joins, rings, perched } = slots;
  const middle = (at.feet + at.heads) / 2;
  const out = at.inwards ? -1 : 1;
  const small = (stitch: number, alongMm: number, low: number, high: number, half: number): void => {
    const station = (mm: number, radius: number): number => mmToStation(curve, stationToMm(curve, places.start, radius) + mm, radius);
    const radius = Math.max(1e-6, middle);
    const [t, left, right] = [station(alongMm, radius), station(alongMm + half, radius), station(alongMm - half, radius)];
    const point = (s: number, r: number): [number, number] => ringPoint(curve, s, r);
    setStitch(ground, stitch, point(t, high), point(t, low), [...point(left, low), ...point(right, low), ...point(right, high), ...point(left, high)]);
  };
  const tall = Math.min(0.44 * h, Math.abs(at.heads - at.feet) / Math.max(1, turning.length));
  turning.forEach((stitch, k) => small(stitch, 0.46 * w, middle + out * (k - turning.length / 2) * tall, middle + out * (k + 1 - turning.length / 2) * tall, 0.16 * w));
  joins.forEach((stitch, k) => {
    const level = at.heads - out * (0.2 + 0.26 * k) * h;
    small(stitch, -0.48 * w, level - out * 0.12 * h, level + out * 0.12 * h, 0.14 * w);
  });
  // A magic ring stands in the middle, a ring of chains lies round it.
  const away = rings.length > 1 ? Math.max(0.3 * h, at.feet - 0.35 * h) : -0.22 * h;
  rings.forEach((stitch, k) => {
    const angle = (2 * Math.PI * (k + 0.5)) / rings.length;
    const polar = (a: number, r: number): [number, number] => [r * Math.sin(a), r * Math.cos(a)];
    setStitch(ground, stitch, polar(angle, away + 0.4 * h), polar(angle, away), [...polar(angle + 0.3, away), ...polar(angle - 0.3, away), ...polar(angle - 0.3, away + 0.4 * h), ...polar(angle + 0.3, away + 0.4 * h)]);
  });
  for (const stitch of perched) perch(ground, stitch, out);
}

/** On the head of the stitch made before it, outwards in that stitch's own direction. */
function perch(ground: Ground, stitch: number, out: 1 | -1): void {
  const { first, headX, headY, footX, footY, w, h } = ground;
  const below = Math.max(0, stitch - 1 - first);
  const [x, y] = [headX[below]!, headY[below]!];
  const [dx, dy] = [x - footX[below]!, y - footY[below]!];
  const long = Math.hypot(dx, dy);
  const [ux, uy] = long > 1e-9 ? [dx / long, dy / long] : [0, out];
  const tall = 0.8 * h;
  const half = 0.3 * w;
  setStitch(ground, stitch, [x + ux * tall, y + uy * tall], [x, y], [x + uy * half, y - ux * half, x - uy * half, y + ux * half, x + ux * tall - uy * half, y + uy * tall + ux * half, x + ux * tall + uy * half, y + uy * tall - ux * half]);
}
