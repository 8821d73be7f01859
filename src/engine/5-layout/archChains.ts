import { stitchCode } from '../craft/stitches.ts';
import { FLAG } from '../3-fabric/fabric.ts';
import { setStitch } from './ground.ts';
import type { Ground } from './ground.ts';

const CHAIN = stitchCode('ch');

/** Length of a chain that hangs free, in stitch widths. */
const CHAIN_LONG = 0.66;
/** Part of the way that stays free of chains at either end. */
const END_FREE = 0.35;

type Point = readonly [x: number, y: number];

/**
 * Lays the chains of each space of a row along an arch between the stitches on either side: the more chains for the way, the
 * higher. `slots` left to right with heads up, so that an arch rises outwards; `closed`: the last slot is the neighbour of the first. A
 * run without a stitch on one side stays as it is. Linear cost.
 */
export function archSpaces(ground: Ground, slots: Int32Array, closed: boolean): void {
  const { fabric } = ground;
  const count = slots.length;
  const isSpace = (k: number): boolean => fabric.kind[slots[k]!] === CHAIN && (fabric.flags[slots[k]!]! & FLAG.space) !== 0;
  let first = 0;
  while (first < count && isSpace(first)) first++;
  if (first === count) return;
  const end = closed ? first + count : count;
  for (let k = first; k < end; k++) {
    if (!isSpace(k % count)) continue;
    const from = k;
    while (k < end && isSpace(k % count)) k++;
    if (k === end && !closed) return;
    const chains: number[] = [];
    for (let j = from; j < k; j++) chains.push(slots[j % count]!);
    archChains(ground, chains, headAt(ground, slots[(from - 1) % count]!), headAt(ground, slots[k % count]!));
  }
}

function headAt({ headX, headY, first }: Ground, stitch: number): Point {
  return [headX[stitch - first]!, headY[stitch - first]!];
}

/** Lays chains along an arch between two points, rising to the left of the way from one to the other (y down: upwards when it goes right). */
export function archChains(ground: Ground, chains: readonly number[], [ax, ay]: Point, [bx, by]: Point): void {
  const { w, h } = ground;
  const chord = Math.hypot(bx - ax, by - ay);
  if (chord < 1e-9) return;
  const [ux, uy] = [(bx - ax) / chord, (by - ay) / chord];
  const long = (chains.length * CHAIN_LONG + END_FREE) * w;
  const rise = Math.min(0.55 * chord, long > chord ? chord * Math.sqrt((3 / 8) * (long / chord - 1)) : 0);
  // A quadratic curve whose middle stands `rise` above the chord.
  const control: Point = [(ax + bx) / 2 + 2 * rise * uy, (ay + by) / 2 - 2 * rise * ux];
  const free = Math.min(0.4, (END_FREE * w) / Math.max(long, chord));
  chains.forEach((chain, k) => {
    const t = free + ((1 - 2 * free) * (k + 0.5)) / chains.length;
    const [x, y] = [(1 - t) ** 2 * ax + 2 * t * (1 - t) * control[0] + t * t * bx, (1 - t) ** 2 * ay + 2 * t * (1 - t) * control[1] + t * t * by];
    const [dx, dy] = [(1 - t) * (control[0] - ax) + t * (bx - control[0]), (1 - t) * (control[1] - ay) + t * (by - control[1])];
    const speed = Math.hypot(dx, dy);
    const [tx, ty] = speed > 1e-9 ? [dx / speed, dy / speed] : [ux, uy];
    const half = Math.min(0.5 * w, (0.5 * (1 - 2 * free) * Math.max(long, chord)) / chains.length);
    const thick = 0.2 * h;
    const at = (along: number, up: number): [number, number] => [x + tx * along + ty * up, y + ty * along - tx * up];
    setStitch(ground, chain, at(0, thick), at(0, -thick), [...at(-half, -thick), ...at(half, -thick), ...at(half, thick), ...at(-half, thick)]);
  });
}
