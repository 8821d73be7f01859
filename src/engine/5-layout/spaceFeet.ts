import { stitchCode } from '../craft/stitches.ts';
import { FLAG } from '../3-fabric/fabric.ts';
import type { Ground } from './ground.ts';
import { inRing } from './placeRow.ts';

const CHAIN = stitchCode('ch');

/** Distance of the feet of stitches round one chain space, in stitch widths. */
const APART = 0.3;

/**
 * How far each slot's foot stands from the middle of the chain space it is worked round, mm along the slots' order: feet apart say
 * "round the chain", feet joined "into one stitch" (JIS L 0201 as explained by a publisher of free patterns). 0 for all others; null
 * where no slot is worked round a space.
 */
export function spaceFeet(ground: Ground, slots: Int32Array): Float64Array | null {
  const { fabric, w } = ground;
  let feet: Float64Array | null = null;
  for (let i = 0; i < slots.length; i++) {
    if (!inSpace(ground, slots[i]!)) continue;
    const base = fabric.bases[fabric.baseStart[slots[i]!]!];
    const group = [i];
    let end = i + 1;
    for (; end < slots.length; end++) {
      if (fabric.kind[slots[end]!] === CHAIN) continue;
      if (!inSpace(ground, slots[end]!) || fabric.bases[fabric.baseStart[slots[end]!]!] !== base) break;
      group.push(end);
    }
    if (group.length > 1) {
      feet ??= new Float64Array(slots.length);
      for (let n = 0; n < group.length; n++) feet[group[n]!] = (n - (group.length - 1) / 2) * APART * w;
    }
    i = group.at(-1)!;
  }
  return feet;
}

/** Round a space between stitches; round a ring stitches stand apart of themselves. */
function inSpace(ground: Ground, stitch: number): boolean {
  return (ground.fabric.flags[stitch]! & FLAG.inSpace) !== 0 && !inRing(ground, stitch);
}
