import type { Pattern } from '../../engine/1-pattern/pattern.ts';
import { lineOf } from '../../engine/2-construct/construct.ts';
import { FLAG, type Fabric } from '../../engine/3-fabric/fabric.ts';
import { stitchOfCode } from '../../engine/craft/stitches.ts';
import { rowName } from '../bench/rowEntries.ts';
import { basesOf } from './workedInto.ts';

/** Which stitch it is: "row 12, stitch 5 of 22, single crochet, chalk, into stitch 5 of row 11". */
export function describeStitch(pattern: Pattern, fabric: Fabric, yarn: Uint8Array, stitch: number): string {
  const row = fabric.rows[fabric.row[stitch] ?? -1];
  if (!row) return '';
  const kind = stitchOfCode(fabric.kind[stitch]!);
  const bases = basesOf(fabric, stitch);
  const number = numberInRow(fabric, stitch);
  return [
    nameOf(pattern, fabric, fabric.row[stitch]!),
    number === null ? null : `stitch ${number} of ${row.made}`,
    (pattern.terms === 'uk' ? kind.ukName : kind.usName) + (bases.length > 1 ? ` ${bases.length} together` : ''),
    pattern.yarns[yarn[stitch]!]?.name ?? null,
    bases.length > 0 ? `into ${bases.map((base) => placeOf(pattern, fabric, base)).join(' and ')}` : null,
  ]
    .filter((part) => part !== null && part !== '')
    .join(', ');
}

/** The stitch's number in its row in working order, counting what counts; null for chains that don't. */
export function numberInRow(fabric: Fabric, stitch: number): number | null {
  const row = fabric.rows[fabric.row[stitch] ?? -1];
  if (!row || !(fabric.flags[stitch]! & FLAG.counts)) return null;
  let number = 0;
  for (let i = row.first; i <= stitch; i++) if (fabric.flags[i]! & FLAG.counts) number++;
  return number;
}

function placeOf(pattern: Pattern, fabric: Fabric, stitch: number): string {
  const number = numberInRow(fabric, stitch);
  const row = nameOf(pattern, fabric, fabric.row[stitch]!);
  return number === null ? `${stitchOfCode(fabric.kind[stitch]!).usName} of ${row}` : `stitch ${number} of ${row}`;
}

function nameOf(pattern: Pattern, fabric: Fabric, index: number): string {
  const row = fabric.rows[index];
  const found = row && lineOf(pattern, row.key.line);
  return found ? rowName(found.line, row).toLowerCase() : 'a row';
}
