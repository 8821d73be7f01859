import type { Fabric } from '../../engine/3-fabric/fabric.ts';

/** The bases turned round: the stitches worked into stitch i are `stitches[start[i]] … stitches[start[i + 1] - 1]`. */
export interface WorkedInto {
  readonly start: Int32Array;
  readonly stitches: Int32Array;
}

/** Turns the bases of a fabric round, in one count and one fill. */
export function workedInto(fabric: Fabric): WorkedInto {
  const { count, bases, baseStart } = fabric;
  const start = new Int32Array(count + 1);
  const edges = baseStart[count] ?? 0;
  for (let e = 0; e < edges; e++) start[bases[e]! + 1]!++;
  for (let i = 0; i < count; i++) start[i + 1]! += start[i]!;
  const next = start.slice(0, count);
  const stitches = new Int32Array(edges);
  for (let i = 0; i < count; i++) {
    for (let e = baseStart[i]!; e < baseStart[i + 1]!; e++) stitches[next[bases[e]!]!++] = i;
  }
  return { start, stitches };
}

/** The stitches worked into one stitch. */
export function stitchesAbove(above: WorkedInto, stitch: number): number[] {
  return Array.from(above.stitches.subarray(above.start[stitch]!, above.start[stitch + 1]!));
}

/** The stitches that one stitch is worked into. */
export function basesOf(fabric: Fabric, stitch: number): number[] {
  return Array.from(fabric.bases.subarray(fabric.baseStart[stitch]!, fabric.baseStart[stitch + 1]!));
}
