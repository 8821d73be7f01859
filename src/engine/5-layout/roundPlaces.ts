import { circularSpaced } from './circularSpaced.ts';
import type { Ground, IndexedRow } from './ground.ts';
import { lengthAt, mmToStation, stationToMm } from './ringCurve.ts';
import type { RingCurve } from './ringCurve.ts';
import type { Annulus } from './roundRadii.ts';
import type { RoundWidths } from './roundWidths.ts';

/** How a round is fitted: how far it is drawn towards even spacing, and the least spacing as a part of even. */
export interface RoundFit {
  readonly even: number;
  readonly least: number;
  /** How far round it is worked. */
  readonly part: number;
}

/** Outwards: increases show where they are without crowding. */
export const OUTWARDS: RoundFit = { even: 0.5, least: 0.85, part: 1 };
/** Along a foundation chain: the long sides stay columns. */
export const ALONG: RoundFit = { even: 0.15, least: 0.8, part: 1 };
/** Inwards: paired decreases stay on straight lines, like mitres; any pull towards even spacing skews them. */
export const INWARDS: RoundFit = { even: 0, least: 0.62, part: 1 };

/** Spread of stitches that share a base, in even steps. */
const SHARE = 0.9;

/** Most that a round is turned so that it begins where the one below did, in stitch widths: more would make its stitches lean. */
const MOST_TURN = 0.7;

/** Where a round's slots stand on their line, and where it begins. */
export interface RoundPlaces {
  /** Station of each slot, in anticlockwise order, ascending. */
  readonly stations: Float64Array;
  /** Stations of the edges between them: `edges[i]` before slot i, one more at the end. */
  readonly edges: Float64Array;
  /** Middle of the room between the last and the first slot. */
  readonly start: number;
}

/**
 * Fits a round of `order` (slots anticlockwise) to its line at the heads' radius: each slot over its bases (`stationOf`, NaN where it has none),
 * spread where they are shared, drawn towards even spacing and kept apart by PAVA round the line. The round is then turned by a
 * little so that it begins at the station `start`, where the round below began; null: it begins where it falls. A round on a ring as a whole (no stations) is spaced evenly. Linear cost.
 */
export function fitRound(ground: Ground, row: IndexedRow, order: Int32Array, widths: RoundWidths, curve: RingCurve, { heads: radius, feet }: Annulus, stationOf: (base: number, slot: number) => number, start: number | null, fit: RoundFit): RoundPlaces {
  const count = order.length;
  const length = lengthAt(curve, radius);
  const narrowing = curve.halfMm > 0 ? 1 : Math.min(1.7, Math.max(1, (2 * radius) / (radius + Math.min(radius, feet))));
  const scale = (length * fit.part) / (widths.sum + widths.room * (narrowing - 1));
  const own = widths.own.map((width) => width * scale);
  // Where lines converge to the feet, the room must do for what stands halfway.
  const room = widths.room * scale * narrowing;
  const begin = stationToMm(curve, start ?? 0, radius);
  const even = new Float64Array(count);
  let at = begin + room / 2;
  for (let k = 0; k < count; k++) {
    even[k] = at + own[k]! / 2;
    at += own[k]!;
  }
  const wanted = overBases(ground, row, order, own, curve, radius, stationOf);
  let places: Float64Array = even;
  if (wanted) {
    const gap = own.map((width, k) => fit.least * ((width + own[(k + 1) % count]!) / 2 + (k === count - 1 ? room : 0)));
    let shift = 0;
    for (let k = 0; k < count; k++) shift += (wanted[k]! - even[k]!) / count;
    const drawn = wanted.map((mm, k) => (1 - fit.even) * mm + fit.even * (even[k]! + shift));
    places = circularSpaced(drawn, new Float64Array(count).fill(1), gap, length);
    if (start !== null && fit.part === 1) turnTo(places, begin, length, ground.w);
  }
  return asStations(places, own, room, length, curve, radius, fit.part < 1);
}

/** Turns a round so that the middle of its start room lies at `begin`, if it is off by no more than about a stitch. */
function turnTo(places: Float64Array, begin: number, length: number, w: number): void {
  const last = places.length - 1;
  if (last < 0) return;
  const middle = (places[0]! + places[last]! - length) / 2;
  const off = begin - middle - Math.round((begin - middle) / length) * length;
  if (Math.abs(off) <= MOST_TURN * w) for (let k = 0; k <= last; k++) places[k]! += off;
}

function asStations(places: Float64Array, own: Float64Array, room: number, length: number, curve: RingCurve, radius: number, begun: boolean): RoundPlaces {
  const count = places.length;
  const edges = new Float64Array(count + 1);
  for (let k = 1; k < count; k++) edges[k] = mmToStation(curve, (places[k - 1]! + places[k]!) / 2, radius);
  const free = count === 0 ? length : places[0]! - (places[count - 1]! - length);
  // The start room is what the outermost stitches leave of the way between them.
  const [first, last] = [own[0] ?? 0, own[count - 1] ?? 0];
  const part = begun ? 1 : free / (room + first / 2 + last / 2);
  edges[0] = mmToStation(curve, (places[0] ?? 0) - (first / 2) * part, radius);
  edges[count] = mmToStation(curve, (places[count - 1] ?? length) + (last / 2) * part, radius);
  return { stations: places.map((mm) => mmToStation(curve, mm, radius)), edges, start: mmToStation(curve, (places[0] ?? 0) - (first / 2 + room / 2) * part, radius) };
}

/** Distance along the line over the bases of each slot, ascending; null where most have none or stand on one base all together. */
function overBases(ground: Ground, row: IndexedRow, order: Int32Array, own: Float64Array, curve: RingCurve, radius: number, stationOf: (base: number, slot: number) => number): Float64Array | null {
  const { fabric } = ground;
  const count = order.length;
  const wanted = new Float64Array(count).fill(NaN);
  const length = lengthAt(curve, radius);
  let [anchored, before] = [0, NaN];
  for (let k = 0; k < count; k++) {
    let [sum, found] = [0, 0];
    for (let b = fabric.baseStart[order[k]!]!; b < fabric.baseStart[order[k]! + 1]!; b++) {
      const base = fabric.bases[b]!;
      if (base >= row.first) continue;
      const station = stationOf(base, order[k]!);
      if (Number.isNaN(station)) continue;
      let mm = stationToMm(curve, station, radius);
      const near = found > 0 ? sum / found : before;
      if (!Number.isNaN(near)) mm += Math.round((near - mm) / length) * length;
      sum += mm;
      found++;
    }
    if (found === 0) continue;
    wanted[k] = sum / found;
    // Working on, a round goes forward: a base that lies far behind is a turn on.
    if (!Number.isNaN(before) && wanted[k]! < before - length / 4) wanted[k]! += length;
    before = wanted[k]!;
    anchored++;
  }
  if (anchored * 2 < count || anchored === 0) return spreadFew(wanted, anchored, own, length);
  return spreadShared(ground, order, wanted, own) ? fillBetween(wanted, own, length) : null;
}

/** Lace has more chains than stitches: its few anchors still hold it, if they go round. */
function spreadFew(wanted: Float64Array, anchored: number, own: Float64Array, length: number): Float64Array | null {
  if (anchored < 3) return null;
  const held = wanted.filter((mm) => !Number.isNaN(mm));
  return held.at(-1)! - held[0]! < length / 3 ? null : fillBetween(wanted, own, length);
}

/** Moves stitches into the same base apart, also across the start of the round; false where all have one base. */
function spreadShared({ fabric }: Ground, order: Int32Array, wanted: Float64Array, own: Float64Array): boolean {
  const count = order.length;
  const base = (k: number): number => {
    const from = fabric.baseStart[order[k]!]!;
    return Number.isNaN(wanted[k]!) ? -1 - k : (fabric.bases[from] ?? -1 - k);
  };
  let first = 0;
  while (first < count && base(first) === base((first + count - 1) % count)) first++;
  if (first === count) return count === 1;
  for (let k = first; k < first + count; ) {
    let end = k + 1;
    while (end < first + count && base(end % count) === base(k % count)) end++;
    for (let j = k; j < end; j++) wanted[j % count]! += (j - (k + end - 1) / 2) * SHARE * own[j % count]!;
    k = end;
  }
  return true;
}

/** Fills what has no base between its neighbours, in proportion to the slots' widths, round the line. */
function fillBetween(wanted: Float64Array, own: Float64Array, length: number): Float64Array {
  const count = wanted.length;
  const first = wanted.findIndex((mm) => !Number.isNaN(mm));
  for (let k = 0; k < count; ) {
    const from = (first + k) % count;
    let steps = 1;
    while (steps < count && Number.isNaN(wanted[(from + steps) % count]!)) steps++;
    const to = (from + steps) % count;
    const reach = wanted[to]! + (to <= from ? length : 0) - wanted[from]!;
    let whole = 0;
    for (let j = 0; j < steps; j++) whole += (own[(from + j) % count]! + own[(from + j + 1) % count]!) / 2;
    let along = 0;
    for (let j = 1; j < steps; j++) {
      along += (own[(from + j - 1) % count]! + own[(from + j) % count]!) / 2;
      const mm = wanted[from]! + (reach * along) / whole;
      wanted[(from + j) % count] = from + j >= count ? mm - length : mm;
    }
    k += steps;
  }
  return wanted;
}
