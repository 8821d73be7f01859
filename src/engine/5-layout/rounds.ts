import { FLAG } from '../3-fabric/fabric.ts';
import type { IndexedRow, Ground } from './ground.ts';
import type { Guide, LaidRow, PlacedPart } from './layout.ts';
import type { OvalCore } from './ovalCore.ts';
import { lengthAt, mmToStation, ringPoint, ringRay, stationToMm } from './ringCurve.ts';
import type { RingCurve } from './ringCurve.ts';
import { outsideRing } from './outsideRing.ts';
import { polygonCorners } from './polygonCorners.ts';
import { polygonPlaces } from './polygonPlaces.ts';
import { placeCore } from './placeCore.ts';
import { placeRound } from './placeRound.ts';
import type { PlacedRound } from './placeRound.ts';
import { roundBand } from './roundBand.ts';
import { ALONG, fitRound, INWARDS, OUTWARDS } from './roundPlaces.ts';
import type { RoundFit } from './roundPlaces.ts';
import { isCentre, radiiInwards, radiiOutwards } from './roundRadii.ts';
import type { Annulus } from './roundRadii.ts';
import { anticlockwise, roundWidths } from './roundWidths.ts';
import { rowSlots } from './rowSlots.ts';
import { inRing } from './placeRow.ts';

/** Which way rounds are drawn about their middle. */
export interface RoundsOptions {
  readonly inwards: boolean;
  /** The foundation chain of an oval; null: about a point. */
  readonly core: OvalCore | null;
}

/**
 * Rounds about a point or a foundation chain, right side facing: outwards anticlockwise for a right-handed maker, or inwards and
 * clockwise, as a toe is seen from its tip. The circle is full; between the last and the first stitch of a round stand its turning
 * chain, its number and its join, one under another along one radius. Radii grow by stitch height, and never so slowly that a
 * round is squeezed below four fifths of its width, so a ruffled disc stays legible (not isometric). Linear cost.
 */
export function rounds(ground: Ground, rows: readonly IndexedRow[], { inwards, core }: RoundsOptions): PlacedPart {
  const { fabric, w, h } = ground;
  const slots = rows.map((row, r) => rowSlots(fabric, row, rows[r + 1] ?? null));
  const widths = slots.map((row) => roundWidths(ground, row));
  const orders = slots.map(anticlockwise);
  const polygon = inwards || core ? null : polygonCorners(fabric, rows, orders, slots.map(({ has }) => has));
  const curve: RingCurve = { halfMm: core ? ((core.chains.length - 1) * w) / 2 : 0, unit: w, sense: inwards ? -1 : 1, sides: polygon?.sides ?? 0 };
  const radii = inwards ? radiiInwards(ground, curve, slots, widths) : radiiOutwards(ground, curve, slots, widths);
  const stations = new Float64Array(ground.end - ground.first).fill(NaN);
  const coreStation = core ? placeCore(ground, curve, core, slots[0]!) : null;
  const outside = outsideRing(ground, curve, slots[0], radii[0]);
  const stationOf = (base: number, slot: number): number => {
    if (fabric.flags[slot]! & FLAG.inSpace && inRing(ground, slot)) return NaN;
    if (base < ground.first || base >= ground.end) return outside.stations.get(base) ?? NaN;
    return coreStation?.(base, slot) ?? stations[base - ground.first]!;
  };
  // The first round of an oval begins where its stitches say.
  let start: number | null = core ? null : 0;
  let level = true;
  const laid: LaidRow[] = [];
  const guides: Guide[] = [];
  rows.forEach((row, r) => {
    if (core && r === 0) return;
    const own = slots[r]!;
    const order = orders[r]!;
    const corners = polygon?.corners[r] ?? [];
    const at = { ...radii[r]!, inwards };
    const places = corners.length > 0 ? polygonPlaces(curve, at.heads, widths[r]!, corners) : fitRound(ground, row, order, widths[r]!, curve, at, stationOf, start, fitOf(rows, r, inwards ? INWARDS : core ? ALONG : OUTWARDS));
    order.forEach((slot, k) => (stations[slot - ground.first] = places.stations[k]!));
    const round: PlacedRound = { row, slots: own, order, places, at, curve, onLevel: level };
    level = placeRound(ground, round);
    if (places.stations.length > 0 && !isCentre(ground, own)) start = places.start;
    if (!row.round) return;
    laid.push(labelOf(round, h));
    if (own.joins.length === 0 && own.turning.length === 0 && own.slots.length > 0) guides.push(startOf(round, w, h));
  });
  const last = laid.at(-1);
  const outermost = Math.max(0, ...radii.map(({ feet, heads }) => Math.max(feet, heads)));
  if (last) guides.push({ kind: 'way', points: wayArrow(curve, start ?? 0, outermost, w), row: last.row });
  return { kind: core ? 'oval' : 'disc', rows: laid, ghosts: outside.ghosts, guides };
}

/** A round that is not worked all the way round stands over its bases only, as far as it goes. */
function fitOf(rows: readonly IndexedRow[], r: number, whole: RoundFit): RoundFit {
  const [row, below] = [rows[r]!, rows[r - 1]];
  const part = !below || r < 2 || below.made === 0 ? 1 : row.used / below.made;
  return part < 0.95 ? { ...whole, even: 0, part: Math.max(0.02, part) } : whole;
}

/** A round's number in the room at its start, near the heads, where there is most room. */
function labelOf(round: PlacedRound, h: number): LaidRow {
  const { row, places, at, curve } = round;
  const [x, y] = ringPoint(curve, places.start, numberRadius(at, h));
  return { row: row.index, startsAt: 'right', labelX: x, labelY: y, startX: x, startY: y, stands: 'inside', band: roundBand(round) };
}

function startOf({ row, places, at, curve }: PlacedRound, w: number, h: number): Guide {
  const radius = numberRadius(at, h);
  const station = mmToStation(curve, stationToMm(curve, places.edges[0]!, radius) - 0.16 * w, radius);
  const [x, y] = ringPoint(curve, station, radius);
  const { outX, outY } = ringRay(curve, station);
  return { kind: 'start', x, y, turnRad: Math.atan2(outX, -outY), row: row.index };
}

function numberRadius({ feet, heads }: Annulus, h: number): number {
  return heads + Math.sign(feet - heads) * Math.min(Math.abs(feet - heads) / 2, 0.48 * h);
}

/** An arrow outside all rounds, from where the last one begins. */
function wayArrow(curve: RingCurve, start: number, outermost: number, w: number): number[] {
  const radius = outermost + 0.6 * w;
  const from = stationToMm(curve, start, radius);
  const long = Math.min(2.7 * w, lengthAt(curve, radius) / 4);
  const at = (mm: number, away = 0): readonly [number, number] => ringPoint(curve, mmToStation(curve, from + mm, radius), radius + away);
  const points: number[] = [];
  for (let k = 0; k <= 8; k++) points.push(...at(0.5 * w + (long * k) / 8));
  const tip = 0.5 * w + long;
  points.push(...at(tip - 0.5 * w, 0.3 * w), ...at(tip), ...at(tip - 0.5 * w, -0.3 * w));
  return points;
}
