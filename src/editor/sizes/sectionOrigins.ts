import type { Origin } from '../../engine/2-construct/recipes/origin.ts';
import type { SectionSize } from '../../engine/readings/sizes/sizeReport.ts';

/** The numbers of a section with where they come from: they are counted in the worked rows and measured by the gauge. */
export interface SectionOrigins {
  readonly first: Origin;
  readonly last: Origin;
  readonly most: Origin;
  readonly rows: Origin;
  readonly width: Origin;
  readonly height: Origin;
}

const COUNTED = 'counted in the worked rows';

/** Origins of a section's size. */
export function sectionOrigins({ section, stitches, rows, widthCm, heightCm, kind }: SectionSize): SectionOrigins {
  const given = (key: string, says: string, unit: Origin['unit'], value: number, source = COUNTED): Origin => ({ key: `${section}.${key}`, says, unit, value, from: { kind: 'given', source } });
  const product = (key: string, says: string, value: number, formula: string, inputs: readonly Origin[]): Origin => ({ key: `${section}.${key}`, says, unit: 'cm', value, from: { kind: 'formula', formula, inputs, exact: value, rounding: null } });
  const most = given('most', 'stitches of the widest row', 'sts', stitches.most);
  const count = given('rows', kind === 'round' ? 'rounds' : 'rows', 'rows', rows);
  const width = given('stitchWidth', 'width of a stitch there', 'cm', widthCm / stitches.most, 'gauge of its stitches and technique');
  const height = given('rowHeight', 'height of a row (mean)', 'cm', heightCm / rows, 'gauge of its stitches and technique');
  return {
    most, rows: count,
    first: given('first', 'stitches of the first row', 'sts', stitches.first),
    last: given('last', 'stitches of the last row', 'sts', stitches.last),
    width: product('width', kind === 'round' || kind === 'seamed' ? 'round the widest row' : 'width of the widest row', widthCm, 'stitches × width of one', [most, width]),
    height: product('height', 'height', heightCm, 'rows × height of one', [count, height]),
  };
}
