import type { Pattern } from '../../1-pattern/pattern.ts';
import { stitchCode } from '../../craft/stitches.ts';
import type { Fabric, WorkedRow } from '../../3-fabric/fabric.ts';
import { FLAG } from '../../3-fabric/fabric.ts';
import { writeAmount } from '../../notation/writeAmount.ts';
import { mergeNumbers } from './mergeSizes.ts';

/** Sections shorter than this are details, whose measure nobody asks for. */
const FEWEST_ROWS = 6;

interface Measure {
  readonly widthCm: number;
  readonly lengthCm: number;
  readonly around: boolean;
}

/**
 * What the parts of a piece measure when they are done, at the pattern's gauge, one number or one per size: `Leg 30 (35, 40) cm
 * around, 22 cm long`. Only parts that keep their width over most of their rows, in the stitch that the gauge counts; empty
 * where there are none. Centimetres, to the nearest half.
 */
export function finishedMeasures(pattern: Pattern, fabrics: readonly Fabric[]): string {
  const parts = pattern.sections.flatMap((section, index) => {
    const measures = fabrics.map((fabric) => measureOf(pattern, fabric, index));
    if (measures.some((measure) => measure === null)) return [];
    const all = measures as readonly Measure[];
    if (all.some(({ around }) => around !== all[0]!.around)) return [];
    const width = writeAmount(mergeNumbers(all.map(({ widthCm }) => widthCm)), undefined);
    const length = writeAmount(mergeNumbers(all.map(({ lengthCm }) => lengthCm)), undefined);
    const name = section.name === '' ? '' : `${section.name} `;
    return [`${name}${width} cm ${all[0]!.around ? 'around' : 'wide'}, ${length} cm long`];
  });
  return parts.join('; ');
}

function measureOf({ gauge, sections }: Pattern, fabric: Fabric, index: number): Measure | null {
  const section = fabric.sections.find(({ id }) => id === sections[index]!.id);
  if (!section) return null;
  const rows = fabric.rows.slice(section.firstRow, section.endRow).filter((row) => row.made > 0 && row.word !== 'foundation' && row.word !== 'step');
  if (rows.length < FEWEST_ROWS) return null;
  const counts = new Map<number, number>();
  for (const { made } of rows) counts.set(made, (counts.get(made) ?? 0) + 1);
  const [most] = [...counts].sort((a, b) => b[1] - a[1]);
  if (!most || most[1] * 2 <= rows.length || !rows.every((row) => isIn(fabric, row, stitchCode(gauge.stitch)))) return null;
  const half = (cm: number) => Math.round(cm * 2) / 2;
  const seamed = fabric.seams.some(({ row }) => row >= section.firstRow && row < section.endRow);
  return { widthCm: half((most[0] / gauge.stitches) * gauge.overCm), lengthCm: half((rows.length / gauge.rows) * gauge.overCm), around: seamed || rows.every(({ round }) => round) };
}

/** Whether most of a row's stitches are of the gauge's kind. */
function isIn(fabric: Fabric, row: WorkedRow, code: number): boolean {
  let own = 0;
  for (let stitch = row.first; stitch < row.end; stitch++) if (fabric.kind[stitch] === code && fabric.flags[stitch]! & FLAG.counts) own++;
  return own * 2 > row.made;
}
