import type { RowKey } from '../../../engine/1-pattern/pattern.ts';
import { FLAG } from '../../../engine/3-fabric/fabric.ts';
import type { ColourGrid } from '../../../engine/4-colour/colourGrid.ts';

/** The counted stitches that one clause of a row makes, in working order, by size; none where a size has no such row. */
export function madeByClause(grids: readonly ColourGrid[], key: RowKey, clause: number): number[][] {
  return grids.map(({ fabric }) => {
    const row = fabric.rows.find((each) => each.key.line === key.line && each.key.nth === key.nth);
    const made: number[] = [];
    for (let stitch = row?.first ?? 0; stitch < (row?.end ?? 0); stitch++) {
      if (fabric.instruction[stitch] === clause && fabric.flags[stitch]! & FLAG.counts) made.push(stitch);
    }
    return made;
  });
}
