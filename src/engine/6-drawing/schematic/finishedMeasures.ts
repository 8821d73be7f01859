import type { MeasureName } from '../../1-pattern/pieceFacts.ts';
import type { Fabric } from '../../3-fabric/fabric.ts';
import type { Origin } from '../../2-construct/recipes/origin.ts';
import type { RowMeasure } from './rowMeasures.ts';
import { heightOf, type SectionMeasure } from './sectionMeasures.ts';
import { sockParts, type Part, type SockParts } from './sockParts.ts';

/** What a finished piece measures, taken from its worked rows. */
export interface FinishedMeasure {
  readonly name: MeasureName | 'opening';
  /** Piece, counted from 0 in working order. */
  readonly piece: number;
  readonly cm: number;
  /** Stitches or rows behind it, as fractions where half of a heel counts. */
  readonly count: number;
  readonly unit: 'sts' | 'rows';
  /** One stitch, or one row, in cm there. */
  readonly oneCm: number;
  readonly origin: Origin;
}

/**
 * The measurements of every piece. A first piece with a heel (short rows on a ring, a flap, or an opening left for a heel that is
 * set in) is a sock: girth of the foot, top of the leg, narrowest opening, length of the leg to the heel, length of the foot (half
 * of a short-row heel, the turn below a flap, and a set-in heel whole). Others are panels, tubes, discs and caps, ovals and
 * balls by how they begin. `doubled` names sections that are folded in half when finished.
 */
export function finishedMeasures(fabric: Fabric, sections: readonly SectionMeasure[], doubled: ReadonlySet<number> = new Set()): readonly FinishedMeasure[] {
  const parts = sockParts(fabric, sections, doubled);
  const inHeel = new Set(parts?.heel.map(({ row }) => row));
  const pieces = [...new Set(sections.map((section) => section.piece))].map((piece) => sections.filter((section) => section.piece === piece));
  return pieces.flatMap((own) => {
    if (parts && own[0]!.piece === 0) return sock(parts);
    // A heel that is set in has been measured with the foot.
    return own.some((section) => section.rows.some((row) => inHeel.has(row))) ? [] : plainPiece(own, doubled);
  });
}

function sock({ leg, heel, foot, girth, opening }: SockParts): readonly FinishedMeasure[] {
  return [
    across('footGirth', 0, girth, 'stitches round the foot × width of one'),
    across('calf', 0, leg[0]!.row, 'stitches at the top × width of one'),
    across('opening', 0, opening, 'stitches of the narrowest row of the leg × width of one'),
    along('legLength', 0, leg, 'rows of cuff and leg × height of one'),
    along('footLength', 0, [...heel, ...shareAll(foot)], 'rows of the heel (its share), foot and toe × height of one'),
  ];
}

const shareAll = (rows: readonly RowMeasure[], share = 1): Part => rows.map((row) => ({ row, share }));

function plainPiece(sections: readonly SectionMeasure[], doubled: ReadonlySet<number>): readonly FinishedMeasure[] {
  const { piece, begins, kind } = sections[0]!;
  const rows = sections.flatMap((section) => section.rows);
  const first = rows[0];
  const last = rows.at(-1);
  if (!first || !last) return [];
  const all: Part = sections.flatMap((section) => shareAll(section.rows, doubled.has(section.section) ? 0.5 : 1));
  if (begins === 'ring' && sections.at(-1)!.drawnTo === 0) return [along('across', piece, shareAll(rows, 2 / Math.PI), 'rounds × height of one × 2 ÷ π: half of the girth')];
  if (begins === 'ring') {
    const growing = rows.filter((row, i) => i === 0 || row.stitches > rows[i - 1]!.stitches);
    return [along('across', piece, shareAll(growing, 2), 'rounds that grow × height of one × 2'), across('girth', piece, last, 'stitches of the last round × width of one'), along('height', piece, all, 'rounds from the middle to the edge × height of one')];
  }
  if (begins === 'bothSides') return oval(sections[0]!);
  if (kind === 'round' || kind === 'seamed') {
    return [across('girth', piece, first, 'stitches of the first round × width of one'), across('endGirth', piece, last, 'stitches of the last round × width of one'), along('height', piece, all, 'rounds × height of one')];
  }
  return [across('width', piece, first, 'stitches of the first row × width of one'), across('topWidth', piece, last, 'stitches of the last row × width of one'), along('height', piece, all, 'rows × height of one')];
}

function oval({ piece, rows, chains }: SectionMeasure): readonly FinishedMeasure[] {
  const worked = chains;
  const stitchMm = rows[0]!.widthMm / rows[0]!.stitches;
  const ends = 2 * heightOf(rows);
  const cm = ((worked - 1) * stitchMm + ends) / 10;
  const wide = along('width', piece, shareAll(rows, 2), 'rounds × height of one × 2');
  const count = given('chains', 'chains worked into', 'sts', worked);
  const origin: Origin = { key: 'length', says: 'length', unit: 'cm', value: cm, from: { kind: 'formula', formula: '(chains − 1) × width of a stitch + twice the height of the rounds', inputs: [count, wide.origin], exact: cm, rounding: null } };
  return [wide, { name: 'length', piece, cm, count: worked, unit: 'sts', oneCm: stitchMm / 10, origin }];
}

function given(key: string, says: string, unit: Origin['unit'], value: number): Origin {
  return { key, says, unit, value, from: { kind: 'given', source: 'counted in the worked rows' } };
}

function across(name: FinishedMeasure['name'], piece: number, row: RowMeasure, formula: string): FinishedMeasure {
  const cm = row.widthMm / 10;
  const oneCm = cm / row.stitches;
  const inputs = [given('stitches', 'stitches', 'sts', row.stitches), given('stitchWidth', 'width of a stitch, by the gauge', 'cm', oneCm)];
  return { name, piece, cm, count: row.stitches, unit: 'sts', oneCm, origin: { key: name, says: formula, unit: 'cm', value: cm, from: { kind: 'formula', formula, inputs, exact: cm, rounding: null } } };
}

function along(name: FinishedMeasure['name'], piece: number, part: Part, formula: string): FinishedMeasure {
  const cm = part.reduce((sum, { row, share }) => sum + (row.heightMm * share) / 10, 0);
  const count = part.reduce((sum, { share }) => sum + share, 0);
  const oneCm = count === 0 ? 0 : cm / count;
  const inputs = [given('rows', 'rows, with their shares', 'rows', count), given('rowHeight', 'height of a row, by the gauge (mean)', 'cm', oneCm)];
  return { name, piece, cm, count, unit: 'rows', oneCm, origin: { key: name, says: formula, unit: 'cm', value: cm, from: { kind: 'formula', formula, inputs, exact: cm, rounding: null } } };
}
