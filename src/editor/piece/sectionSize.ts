import type { Fabric } from '../../engine/3-fabric/fabric.ts';
import { stitchOfCode } from '../../engine/craft/stitches.ts';
import { FLAG } from '../../engine/3-fabric/fabric.ts';

/** What a section measures: rows that make stitches, its widest row, and that in millimetres. */
export interface SectionSize {
  readonly rows: number;
  readonly stitches: number;
  readonly widthMm: number;
  readonly heightMm: number;
}

/** Rows × stitches and size of a section from its worked rows. Width is that of the widest row, laid flat and not folded. */
export function sectionSize(fabric: Fabric, section: number, cellWidthMm: number, cellHeightMm: number): SectionSize {
  const owner = fabric.sections[section];
  const rows = owner ? fabric.rows.slice(owner.firstRow, owner.endRow).filter((row) => row.made > 0 && row.word !== 'foundation') : [];
  let heightMm = 0;
  let stitches = 0;
  for (const row of rows) {
    let sum = 0;
    for (let stitch = row.first; stitch < row.end; stitch++) {
      if (fabric.flags[stitch]! & FLAG.counts) sum += stitchOfCode(fabric.kind[stitch]!).height;
    }
    heightMm += (sum / row.made) * cellHeightMm;
    stitches = Math.max(stitches, row.made);
  }
  return { rows: rows.length, stitches, widthMm: stitches * cellWidthMm, heightMm };
}
