import type { Fabric } from '../3-fabric/fabric.ts';

/**
 * For each row whether its two ends meet: a round does, and so does a flat row of a section that is seamed. A seam
 * closes the section whose stitches lie on both sides of it, from its first row up to the row of those stitches. Linear in rows.
 */
export function sidesMeet(fabric: Fabric): readonly boolean[] {
  const meet = fabric.rows.map((row) => row.round);
  for (const seam of fabric.seams) {
    const top = fabric.row[seam.before];
    const section = top === undefined ? undefined : fabric.sections[fabric.rows[top]?.section ?? -1];
    if (top === undefined || !section) continue;
    for (let r = section.firstRow; r <= top; r++) meet[r] = true;
  }
  return meet;
}
