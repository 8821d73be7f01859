import { within } from './ground.ts';
import type { Ground } from './ground.ts';
import type { Ghost } from './layout.ts';
import { ringPoint, ringRay, turnOf } from './ringCurve.ts';
import type { RingCurve } from './ringCurve.ts';
import type { Annulus } from './roundRadii.ts';
import { anticlockwise } from './roundWidths.ts';
import type { RowSlots } from './rowSlots.ts';

/** Stitches of other sections that a first round is worked on: evenly round its feet, as ghosts, with their stations. */
export function outsideRing(ground: Ground, curve: RingCurve, slots: RowSlots | undefined, at: Annulus | undefined): { readonly ghosts: Ghost[]; readonly stations: ReadonlyMap<number, number> } {
  const { fabric, outside } = ground;
  const bases: number[] = [];
  for (const slot of slots ? anticlockwise(slots) : []) {
    for (let b = fabric.baseStart[slot]!; b < fabric.baseStart[slot + 1]!; b++) {
      const base = fabric.bases[b]!;
      if (!within(ground, base) && bases.at(-1) !== base && bases[0] !== base) bases.push(base);
    }
  }
  const stations = new Map<number, number>();
  const ghosts = bases.map((base, k): Ghost => {
    const station = ((k + 0.5) * turnOf(curve)) / bases.length;
    const [x, y] = ringPoint(curve, station, at!.feet);
    const { outX, outY } = ringRay(curve, station);
    const up = at!.heads < at!.feet ? -1 : 1;
    stations.set(base, station);
    outside.set(base, [x, y]);
    return { stitch: base, headX: x, headY: y, angle: Math.atan2(up * outX, -up * outY) };
  });
  return { ghosts, stations };
}
