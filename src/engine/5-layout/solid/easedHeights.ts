import type { Web } from './web.ts';

/** Along the flanks of turned short rows two rows share one base stitch, so their ends are squeezed to this share of their height … */
const FLANK_EASE = 0.45;
/** … less and less over this many stitches from the row's end. */
const EASED_STITCHES = 4;
/** The attaching stitch reaches from the base beyond the end up to its row. */
const ATTACHING_STRETCH = 1.3;

/** Rest heights in stitch widths: those of the stitches, squeezed at the ends of turned short rows that take up open stitches. */
export function easedHeights({ rows, height, baseStart, bases, rowOf, attaches, left, right }: Web): Float64Array {
  const eased = height.slice();
  /** Whether a head, or the one beyond it at the end of its row, takes up an open stitch. */
  const standsOnFlank = (head: number, outwards: Int32Array): boolean =>
    head >= 0 && rows[rowOf[head]!]!.partial && (attaches[head] === 1 || (outwards[head]! >= 0 && outwards[outwards[head]!]! < 0 && attaches[outwards[head]!] === 1));
  for (const row of rows) {
    if (!row.partial) continue;
    for (const inwards of [1, -1]) {
      const end = inwards > 0 ? row.first : row.end - 1;
      const base = baseStart[end]! < baseStart[end + 1]! ? bases[baseStart[end]!]! : -1;
      if (!attaches[end] && !standsOnFlank(base, inwards > 0 ? left : right)) continue;
      for (let k = 0; k < EASED_STITCHES; k++) {
        const i = end + k * inwards;
        if (i < row.first || i >= row.end) break;
        eased[i] = Math.min(eased[i]!, height[i]! * (FLANK_EASE + ((1 - FLANK_EASE) * k) / EASED_STITCHES));
      }
      if (attaches[end]) eased[end] = height[end]! * ATTACHING_STRETCH;
    }
  }
  return eased;
}
