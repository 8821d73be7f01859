import { FLAG } from '../3-fabric/fabric.ts';
import { boxCorners, setStitch } from './ground.ts';
import type { Ground } from './ground.ts';
import type { OvalCore } from './ovalCore.ts';
import type { RingCurve } from './ringCurve.ts';
import type { RowSlots } from './rowSlots.ts';

/**
 * Lays the foundation chain of an oval along the core, the end at the hook to the right, and returns the station over each of
 * its chains: on the upper side first, since the first side is worked from right to left with the right side facing, and on the
 * lower side for stitches of the other side. The chains at the ends stand for the whole round end.
 */
export function placeCore(ground: Ground, curve: RingCurve, { chains }: OvalCore, { slots, joins, turning }: RowSlots): (base: number, slot: number) => number | undefined {
  const { fabric, w, h } = ground;
  const { halfMm: half, unit } = curve;
  const place = (stitch: number, x: number): void => setStitch(ground, stitch, [x, -0.2 * h], [x, 0.2 * h], boxCorners(x, 0, w / 2, 0.2 * h));
  const nth = new Map(chains.map((chain, n) => [chain, n]));
  chains.forEach((chain, n) => place(chain, n * w - half));
  // Chains that nothing is worked into hang on at the hook's end.
  let beyond = chains.length;
  for (const stitch of [...slots, ...turning, ...joins].sort((a, b) => a - b)) if (!nth.has(stitch)) place(stitch, beyond++ * w - half);
  const last = chains.length - 1;
  return (base, slot) => {
    const n = nth.get(base);
    if (n === undefined) return undefined;
    if (n === last) return half + (Math.PI * unit) / 2;
    if (n === 0) return 3 * half + (3 * Math.PI * unit) / 2;
    const x = n * w - half;
    const under = (fabric.flags[slot]! & FLAG.otherSide) !== 0;
    return under ? (x < 0 ? x + 4 * half + 2 * Math.PI * unit : x) : 2 * half + Math.PI * unit - x;
  };
}
