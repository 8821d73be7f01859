import type { Fabric } from '../3-fabric/fabric.ts';

/**
 * For each row whether its two ends meet: a round does, and so does a flat row of a piece that is seamed. A seam closes
 * the rows below the stitches on both sides of it, down to where the piece begins, and all rows of their section up to
 * there. Linear in rows and seams.
 */
export function sidesMeet(fabric: Fabric): readonly boolean[] {
  const meet = fabric.rows.map((row) => row.round);
  for (const seam of fabric.seams) {
    const top = fabric.row[seam.before];
    const section = top === undefined ? undefined : fabric.sections[fabric.rows[top]?.section ?? -1];
    if (top === undefined || !section) continue;
    for (let r = section.firstRow; r <= top; r++) meet[r] = true;
    for (let r = section.firstRow, below = fabric.rows[r]?.below ?? -1; below >= 0 && below < r; below = fabric.rows[r]!.below) {
      r = below;
      meet[r] = true;
    }
  }
  return meet;
}
