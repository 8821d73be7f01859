import type { Swatch, SwatchTechnique } from '../../1-pattern/pieceFacts.ts';
import type { Gauge } from '../../1-pattern/pattern.ts';
import { gaugeOf, type GaugeUse } from '../../2-construct/recipes/gaugeBook.ts';
import { FLAG, type Fabric, type WorkedRow } from '../../3-fabric/fabric.ts';
import { stitchOfCode, type StitchKind } from '../../craft/stitches.ts';

/** What a worked row measures by the gauge of its stitches and technique. */
export interface RowMeasure {
  /** Row index in the fabric. */
  readonly row: number;
  readonly stitches: number;
  /** Laid out straight, not folded. */
  readonly widthMm: number;
  readonly heightMm: number;
  readonly technique: SwatchTechnique;
}

/** Gauge for measuring: the pattern's own and the swatches, and the yarns of the stitches where colour was laid. */
export interface MeasureWith {
  readonly gauge: Gauge;
  readonly swatches: readonly Swatch[];
  /** Yarn index per stitch; null: one yarn. */
  readonly yarn: Uint8Array | null;
}

/** Measures every row that makes stitches; foundations and steps have none. Linear in stitches. */
export function rowMeasures(fabric: Fabric, measure: MeasureWith): readonly (RowMeasure | null)[] {
  const known = new Map<string, GaugeUse>();
  const gauge = (kind: StitchKind, technique: SwatchTechnique): GaugeUse => {
    const key = `${kind} ${technique}`;
    const found = known.get(key) ?? gaugeOf(measure.gauge, measure.swatches, kind, technique);
    known.set(key, found);
    return found;
  };
  return fabric.rows.map((row, index) => {
    if (row.made === 0 || row.word === 'foundation' || row.word === 'step') return null;
    const technique = techniqueOf(fabric, row, measure.yarn);
    let widthMm = 0;
    let heightMm = 0;
    let tall = 0;
    for (const [kind, count] of countedKinds(fabric, row)) {
      const use = gauge(kind, technique);
      widthMm += (count * 10) / use.stitchesPerCm;
      // Chains made as new stitches, and turning chains that count, stand as high as the rest of their row.
      if (kind === 'ch') continue;
      tall += count;
      heightMm += (count * 10) / use.rowsPerCm;
    }
    if (widthMm === 0) return null;
    // Chains that hang between stitches, as in a row of holes, keep these apart.
    widthMm += (hangingChains(fabric, row) * 10) / gauge('sc', technique).stitchesPerCm;
    return { row: index, stitches: row.made, widthMm, heightMm: tall === 0 ? 10 / gauge('sc', technique).rowsPerCm : heightMm / tall, technique };
  });
}

/** Stitches of a row that count, by kind. */
function countedKinds(fabric: Fabric, row: WorkedRow): ReadonlyMap<StitchKind, number> {
  const counts = new Map<StitchKind, number>();
  for (let stitch = row.first; stitch < row.end; stitch++) {
    if (!(fabric.flags[stitch]! & FLAG.counts)) continue;
    const { kind } = stitchOfCode(fabric.kind[stitch]!);
    counts.set(kind, (counts.get(kind) ?? 0) + 1);
  }
  return counts;
}

function hangingChains(fabric: Fabric, row: WorkedRow): number {
  let count = 0;
  for (let stitch = row.first; stitch < row.end; stitch++) if (fabric.flags[stitch]! & FLAG.space && !(fabric.flags[stitch]! & FLAG.counts)) count++;
  return count;
}

/** How most of a row's stitches were worked; rows of several yarns carry the others. */
function techniqueOf(fabric: Fabric, row: WorkedRow, yarn: Uint8Array | null): SwatchTechnique {
  let loops = 0;
  let posts = 0;
  let yarns = 0;
  for (let stitch = row.first; stitch < row.end; stitch++) {
    const flags = fabric.flags[stitch]!;
    if (!(flags & FLAG.counts)) continue;
    if (flags & (FLAG.frontLoop | FLAG.backLoop)) loops++;
    if (flags & (FLAG.frontPost | FLAG.backPost)) posts++;
    if (yarn && yarn[stitch] !== yarn[row.first]) yarns++;
  }
  if (posts * 2 > row.made) return 'posts';
  if (yarns > 0) return 'carried';
  return loops * 2 > row.made ? 'backLoops' : 'plain';
}
