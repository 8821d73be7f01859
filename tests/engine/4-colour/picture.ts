import type { Pattern } from '../../../src/engine/1-pattern/pattern.ts';
import type { Fabric } from '../../../src/engine/3-fabric/fabric.ts';
import type { Colours } from '../../../src/engine/4-colour/colours.ts';
import { rowColumns } from '../../../src/engine/4-colour/rowColumns.ts';

/** The colours of a fabric as lines of letters, top row first, as seen on the right side. */
export function picture(pattern: Pattern, fabric: Fabric, colours: Pick<Colours, 'yarn'>): readonly string[] {
  const { stitches, start } = rowColumns(fabric);
  const lines = fabric.rows.map((_, r) => Array.from(stitches.slice(start[r], start[r + 1]), (stitch) => pattern.yarns[colours.yarn[stitch]!]!.letter).join(''));
  return lines.reverse();
}
