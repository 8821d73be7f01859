import { stitchCode } from '../craft/stitches.ts';
import { FLAG } from '../3-fabric/fabric.ts';
import type { Fabric } from '../3-fabric/fabric.ts';
import type { IndexedRow } from './ground.ts';

const CHAIN = stitchCode('ch');

/** The foundation chain that rounds are worked about. */
export interface OvalCore {
  /** Chains that are worked into, from the one made first (far from the hook) to the last. */
  readonly chains: readonly number[];
}

/**
 * The chain that an oval is worked about: the first row is a foundation, and the next one goes along it, round its end and back
 * along its other side. Null where that isn't so.
 */
export function ovalCore(fabric: Fabric, rows: readonly IndexedRow[]): OvalCore | null {
  const [foundation, first] = rows;
  if (!foundation || !first?.round || fabric.kind[foundation.first] !== CHAIN || !(fabric.flags[foundation.first]! & FLAG.foundation)) return null;
  const used = new Set<number>();
  let otherSide = 0;
  for (let stitch = first.first; stitch < first.end; stitch++) {
    if (fabric.flags[stitch]! & FLAG.join) continue;
    for (let b = fabric.baseStart[stitch]!; b < fabric.baseStart[stitch + 1]!; b++) {
      const base = fabric.bases[b]!;
      if (base < foundation.first || base >= foundation.end) continue;
      used.add(base);
      if (fabric.flags[stitch]! & FLAG.otherSide) otherSide++;
    }
  }
  return otherSide > 1 && used.size > 1 ? { chains: [...used].sort((a, b) => a - b) } : null;
}
