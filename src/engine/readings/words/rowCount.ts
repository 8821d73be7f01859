import { FLAG } from '../../3-fabric/fabric.ts';
import type { Fabric } from '../../3-fabric/fabric.ts';
import { stitchOfCode } from '../../craft/stitches.ts';
import type { Stated } from '../../notation/instruction.ts';

/** The count to write after a row: the stitches that it made, and their unit in US terms. */
export interface RowCount {
  readonly made: number;
  readonly unit: string;
}

/** Units that count stitches; a count in other units (meshes, spaces, repeats) is kept as the pattern says it. */
const STITCH_UNITS = new Set(['', 'sts', 'sc', 'hdc', 'dc', 'tr', 'dtr', 'sl st']);

/**
 * What a row made, in the unit that its line gives, or of itself: the stitch if all that count are of one kind, else `sts`.
 * Null where no count is written: foundations and steps that state none, rows that made nothing, and counts in units
 * that are no stitches.
 */
export function rowCount(fabric: Fabric, rowIndex: number, stated: Stated | null): RowCount | null {
  const row = fabric.rows[rowIndex]!;
  if (stated && !STITCH_UNITS.has(stated.unit)) return null;
  if (row.made === 0 || ((row.word === 'step' || row.word === 'foundation') && !stated)) return null;
  let kind = -1;
  for (let stitch = row.first; stitch < row.end; stitch++) {
    if (!(fabric.flags[stitch]! & FLAG.counts) || fabric.flags[stitch]! & FLAG.turning) continue;
    if (kind >= 0 && fabric.kind[stitch] !== kind) return { made: row.made, unit: 'sts' };
    kind = fabric.kind[stitch]!;
  }
  const own = kind < 0 ? 'sts' : stitchOfCode(kind).us;
  const unit = STITCH_UNITS.has(own) && own !== '' && stated?.unit !== 'sts' && stated?.unit !== '' ? own : 'sts';
  return { made: row.made, unit };
}
