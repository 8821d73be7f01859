import { stitchCode } from '../craft/stitches.ts';
import { archSpaces } from './archChains.ts';
import { setStitch, stitchHeight } from './ground.ts';
import type { Ground, IndexedRow } from './ground.ts';
import { inRing } from './placeRow.ts';
import { mmToStation, ringPoint, stationToMm } from './ringCurve.ts';
import type { RingCurve } from './ringCurve.ts';
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
}

/** Places a round's slots between its two lines, taller and lower stitches further out and in, then what stands beside them. */
export function placeRound(ground: Ground, round: PlacedRound): void {
  const { slots, order, places, at, curve, row } = round;
  const reach = headReach(ground, round);
  const point = (station: number, radius: number): [number, number] => {
    const { x, y } = ringPoint(curve, station, radius);
    return [x, y];
  };
  const feet = spaceFeet(ground, order);
  order.forEach((slot, k) => {
    const [t, left, right] = [places.stations[k]!, places.edges[k + 1]!, places.edges[k]!];
    const heads = at.heads + reach[k]!;
    const inner = at.feet * cosHalf(curve, left, right);
    const cell = (low: number, high: number): number[] => [...point(left, low), ...point(right, low), ...point(right, high), ...point(left, high)];
    const [from, end] = slots.stack;
    if (slot < from || slot >= end) {
      const [footX, footY] = footOf(ground, slot, point(t, at.feet), row.first);
      const { outX, outY } = ringPoint(curve, t, 1);
      const aside = (feet?.[k] ?? 0) * curve.sense;
      setStitch(ground, slot, point(t, heads), [footX + outY * aside, footY - outX * aside], cell(at.inwards ? at.feet : inner, heads));
      return;
    }
    const [footX, footY] = footOf(ground, slot, point(t, at.feet), row.first);
    const [headX, headY] = point(t, heads);
    const along = (n: number): [number, number] => [footX + ((headX - footX) * n) / (end - from), footY + ((headY - footY) * n) / (end - from)];
    const radius = (n: number): number => at.feet + ((heads - at.feet) * n) / (end - from);
    for (let n = 0; n < end - from; n++) setStitch(ground, from + n, along(n + 1), along(n), cell(radius(n), radius(n + 1)));
  });
  archSpaces(ground, slots.slots, true);
  placeExtras(ground, round);
}

/** How much nearer to the core the middle of a straight edge between two stations lies than its ends: cells of the next round reach under it. */
function cosHalf(curve: RingCurve, one: number, other: number): number {
  const [a, b] = [ringPoint(curve, one, 1), ringPoint(curve, other, 1)];
  return Math.sqrt(Math.max(0, (1 + a.outX * b.outX + a.outY * b.outY) / 2));
}

/** How far each head stands beyond the round's line, mm: by its own height and by what it stands on, smoothed along the round. Level rounds give zeros. */
function headReach(ground: Ground, { row, slots, order, at, curve }: PlacedRound): Float64Array {
  const { fabric, first, placed } = ground;
  const count = order.length;
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
      if (base < first || base >= row.first || !placed[base - first] || inRing(ground, slot)) continue;
      [sum, found] = [sum + distance(curve, ground.headX[base - first]!, ground.headY[base - first]!) - at.feet, found + 1];
    }
    const own = standing ? 0 : stitchHeight(ground, slot) - mean;
    reach[k] = out * own + (found > 0 ? sum / found : 0);
    if (Math.abs(reach[k]!) > 1e-6 * ground.h) level = false;
    else reach[k] = 0;
  }
  if (level) return reach.fill(0);
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

/** Distance from the core. */
function distance({ halfMm }: RingCurve, x: number, y: number): number {
  return Math.hypot(Math.max(0, Math.abs(x) - halfMm), y);
}

/** Mean head of the bases; straight below where there are none, or where the base is a ring as a whole. */
function footOf(ground: Ground, slot: number, below: [number, number], rowFirst: number): [number, number] {
  const { fabric, first, placed, headX, headY, w, outside } = ground;
  if (inRing(ground, slot)) return below;
  let [x, y, count] = [0, 0, 0];
  for (let b = fabric.baseStart[slot]!; b < fabric.baseStart[slot + 1]!; b++) {
    const base = fabric.bases[b]!;
    const out = outside.get(base);
    if (out) [x, y, count] = [x + out[0], y + out[1], count + 1];
    if (base < first || base >= rowFirst || !placed[base - first] || fabric.kind[base] === RING) continue;
    [x, y, count] = [x + headX[base - first]!, y + headY[base - first]!, count + 1];
  }
  return count === 0 || Math.hypot(x / count - below[0], y / count - below[1]) > 4 * w ? below : [x / count, y / count];
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
    const point = (s: number, r: number): [number, number] => {
      const { x, y } = ringPoint(curve, s, r);
      return [x, y];
    };
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
