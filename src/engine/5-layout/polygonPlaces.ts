import type { Corner } from './polygonCorners.ts';
import { lengthAt, mmToStation } from './ringCurve.ts';
import type { RingCurve } from './ringCurve.ts';
import type { RoundPlaces } from './roundPlaces.ts';
import type { RoundWidths } from './roundWidths.ts';

/**
 * Places of a round of a polygon: its corners on the corners, what lies between two of them evenly along the side at its own
 * widths, the start of the round on the first side. Linear cost.
 */
export function polygonPlaces(curve: RingCurve, radius: number, widths: RoundWidths, corners: readonly Corner[]): RoundPlaces {
  const { own, room } = widths;
  const count = own.length;
  const side = lengthAt(curve, radius) / curve.sides;
  const places = new Float64Array(count);
  const edges = new Float64Array(count + 1);
  let start = 0;
  corners.forEach((corner, c) => {
    // From this corner's middle to the next one's; the last side goes on over the round's start.
    const next = corners[(c + 1) % corners.length]!;
    const closes = c === corners.length - 1;
    const steps: number[] = [];
    for (let k = corner.end; k < (closes ? count + next.from : next.from); k++) steps.push(k);
    const half = (one: Corner): number => own.subarray(one.from, one.end).reduce((sum, width) => sum + width, 0) / 2;
    let whole = half(corner) + half(next) + (closes ? room : 0);
    for (const k of steps) whole += own[k % count]!;
    const scale = side / whole;
    let at = (c + 1) * side + half(corner) * scale;
    edges[corner.end] = at;
    for (const k of steps) {
      if (k === count) {
        edges[count] = at;
        start = at + (room / 2) * scale - curve.sides * side;
        at += room * scale;
      }
      const back = k >= count ? curve.sides * side : 0;
      if (k >= count) edges[k - count] = at - back;
      places[k % count] = at + (own[k % count]! / 2) * scale - back;
      at += own[k % count]! * scale;
      edges[(k % count) + 1] = at - back;
    }
    if (closes && next.from === 0) {
      edges[count] = at;
      start = at + (room / 2) * scale - curve.sides * side;
      edges[0] = at + room * scale - curve.sides * side;
    }
    // The corner's own slots, close about its middle.
    let along = (c + 1) * side - half(corner) * scale;
    for (let k = corner.from; k < corner.end; k++) {
      edges[k] = along;
      places[k] = along + (own[k]! / 2) * scale;
      along += own[k]! * scale;
    }
  });
  const station = (mm: number): number => mmToStation(curve, mm, radius);
  return { stations: places.map(station), edges: edges.map(station), start: station(start) };
}
