import type { Pattern } from '../../1-pattern/pattern.ts';
import { stitchCode } from '../../craft/stitches.ts';
import type { Fabric } from '../../3-fabric/fabric.ts';
import { FLAG } from '../../3-fabric/fabric.ts';
import type { Colours } from '../../4-colour/colours.ts';
import { doubledSections } from '../../6-drawing/schematic/doubledSections.ts';
import { rowMeasures, type RowMeasure } from '../../6-drawing/schematic/rowMeasures.ts';
import { heightOf, sectionMeasures } from '../../6-drawing/schematic/sectionMeasures.ts';
import { titled } from '../../notation/titled.ts';
import { writeAmount } from '../../notation/writeAmount.ts';
import { mergeNumbers } from './mergeSizes.ts';

/** Sections shorter than this are details, whose measure nobody asks for. */
const FEWEST_ROWS = 6;

/** A size worked, with the yarns of its stitches. */
export interface MeasuredSize {
  readonly fabric: Fabric;
  readonly colours: Pick<Colours, 'yarn'>;
}

interface PartMeasure {
  readonly widthCm: number;
  readonly lengthCm: number;
  readonly around: boolean;
}

/**
 * What the parts of a piece measure when they are done, as the schematic has it (`rowMeasures`, `sectionMeasures`: swatches,
 * techniques and folded edges), one number or one per size: `Leg 30 (35, 40) cm around, 22 cm long`. Only parts that keep their
 * width over most of their rows, in the stitch that the gauge counts; empty where there are none. Centimetres, to the nearest half.
 */
export function partMeasures(pattern: Pattern, sizes: readonly MeasuredSize[]): string {
  const doubled = doubledSections(pattern);
  const measured = sizes.map((size) => measuresOf(pattern, size, doubled));
  const parts = pattern.sections.flatMap((section, index) => {
    const measures = measured.flatMap((size) => size.get(index) ?? []);
    const [first] = measures;
    if (!first || measures.length < sizes.length || measures.some(({ around }) => around !== first.around)) return [];
    const width = writeAmount(mergeNumbers(measures.map(({ widthCm }) => widthCm)), undefined);
    const length = writeAmount(mergeNumbers(measures.map(({ lengthCm }) => lengthCm)), undefined);
    const name = section.name === '' ? '' : `${titled(section.name)} `;
    return [`${name}${width} cm ${first.around ? 'around' : 'wide'}, ${length} cm long`];
  });
  return parts.join('; ');
}

/** The parts of one size that have a measure, by section. */
function measuresOf({ gauge, piece }: Pattern, { fabric, colours }: MeasuredSize, doubled: ReadonlySet<number>): ReadonlyMap<number, PartMeasure> {
  const sections = sectionMeasures(fabric, rowMeasures(fabric, { gauge, swatches: piece?.swatches ?? [], yarn: colours.yarn }));
  const found = new Map<number, PartMeasure>();
  for (const { section, rows } of sections) {
    const steady = steadyRow(rows);
    if (rows.length < FEWEST_ROWS || !steady || !rows.every(({ row }) => isIn(fabric, row, stitchCode(gauge.stitch)))) continue;
    const { firstRow, endRow } = fabric.sections[section]!;
    const around = fabric.seams.some(({ row }) => row >= firstRow && row < endRow) || rows.every(({ row }) => fabric.rows[row]!.round);
    found.set(section, { widthCm: toHalf(steady.widthMm / 10), lengthCm: toHalf((heightOf(rows) * (doubled.has(section) ? 0.5 : 1)) / 10), around });
  }
  return found;
}

function toHalf(cm: number): number {
  return Math.round(cm * 2) / 2;
}

/** A row of the count that more than half of the rows have; undefined where none is so common. */
function steadyRow(rows: readonly RowMeasure[]): RowMeasure | undefined {
  const counts = new Map<number, number>();
  for (const { stitches } of rows) counts.set(stitches, (counts.get(stitches) ?? 0) + 1);
  const most = [...counts].find(([, count]) => count * 2 > rows.length);
  return most && rows.find(({ stitches }) => stitches === most[0]);
}

/** Whether most of a row's stitches are of the gauge's kind. */
function isIn(fabric: Fabric, index: number, code: number): boolean {
  const row = fabric.rows[index]!;
  let own = 0;
  for (let stitch = row.first; stitch < row.end; stitch++) if (fabric.kind[stitch] === code && fabric.flags[stitch]! & FLAG.counts) own++;
  return own * 2 > row.made;
}
