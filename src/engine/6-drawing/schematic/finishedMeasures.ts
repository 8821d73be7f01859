import type { MeasureName } from '../../1-pattern/pieceFacts.ts';
import { stitchCode } from '../../craft/stitches.ts';
import { FLAG, type Fabric } from '../../3-fabric/fabric.ts';
import type { Origin } from '../../2-construct/recipes/origin.ts';
import type { RowMeasure } from './rowMeasures.ts';
import { heightOf, type SectionMeasure } from './sectionMeasures.ts';

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

type Part = readonly { readonly row: RowMeasure; readonly share: number }[];

/**
 * The measurements of every piece. A piece with a heel (short rows on a ring, a flap, or an opening left for a heel that is set
 * in) is a sock: girth of the foot, top of the leg, narrowest opening, length of the leg to the heel, length of the foot (half
 * of a short-row heel, the turn below a flap, and a set-in heel whole). Others are panels, tubes, discs and caps, ovals and
 * balls by how they begin. `doubled` names sections that are folded in half when finished.
 */
export function finishedMeasures(fabric: Fabric, sections: readonly SectionMeasure[], doubled: ReadonlySet<number> = new Set()): readonly FinishedMeasure[] {
  const pieces = [...new Set(sections.map((section) => section.piece))].map((piece) => sections.filter((section) => section.piece === piece));
  const openings = new Set<number>();
  return pieces.flatMap((own) => {
    const opening = openingRow(fabric, own);
    if (opening) openings.add(2 * opening.chains);
    const heel = own.findIndex((section) => (section.kind === 'turned' || section.kind === 'flap') && onRing(fabric, section));
    if (heel >= 0 || opening) return sock(fabric, own, heel, opening, setIn(pieces.filter((other) => other !== own), opening), doubled);
    if (own[0]!.begins === 'chainRing' && own[0]!.drawnTo === 0 && openings.has(own[0]!.chains)) return [];
    return plainPiece(own, doubled);
  });
}

const shareAll = (rows: readonly RowMeasure[], share = 1): Part => rows.map((row) => ({ row, share }));

function onRing(fabric: Fabric, section: SectionMeasure): boolean {
  return section.rows.some(({ row }) => fabric.rows[row]!.ring);
}

/** A round that makes at least 4 new stitches of chains in one run and goes on: an opening is left below them. */
function openingRow(fabric: Fabric, sections: readonly SectionMeasure[]): { readonly row: number; readonly chains: number } | null {
  for (const { rows } of sections) {
    for (const { row } of rows) {
      const worked = fabric.rows[row]!;
      if (!worked.round) continue;
      let chains = 0;
      for (let stitch = worked.first; stitch < worked.end; stitch++) if (fabric.kind[stitch] === stitchCode('ch') && fabric.flags[stitch]! & FLAG.counts) chains++;
      if (chains >= 4 && chains < worked.made) return { row, chains };
    }
  }
  return null;
}

/** The piece that is set into an opening: a tube from as many chains as the opening has edge stitches, drawn shut. */
function setIn(pieces: readonly (readonly SectionMeasure[])[], opening: { readonly chains: number } | null): readonly RowMeasure[] {
  if (!opening) return [];
  const found = pieces.find((own) => own[0]!.begins === 'chainRing' && own[0]!.chains === 2 * opening.chains && own.at(-1)!.drawnTo === 0);
  return found ? found.flatMap((section) => section.rows) : [];
}

function sock(fabric: Fabric, sections: readonly SectionMeasure[], heel: number, opening: { readonly row: number } | null, cup: readonly RowMeasure[], doubled: ReadonlySet<number>): readonly FinishedMeasure[] {
  const piece = sections[0]!.piece;
  const before: Part = sections.flatMap((section, i) => shareAll(heel >= 0 ? (i < heel ? section.rows : []) : section.rows.filter(({ row }) => row < opening!.row), doubled.has(section.section) ? 0.5 : 1));
  const after = sections.flatMap((section, i) => (heel >= 0 ? (i > heel ? section.rows : []) : section.rows.filter(({ row }) => row >= opening!.row)));
  const foot: Part = [...(heel >= 0 ? heelShare(sections[heel]!) : []), ...after.map((row) => ({ row, share: wholeRound(fabric, row) })), ...shareAll(cup)];
  const legRows = before.map(({ row }) => row);
  const even = steadyRow(fabric, after, legRows.at(-1)!);
  const narrow = legRows.reduce((least, row) => (row.widthMm < least.widthMm ? row : least), legRows[0]!);
  return [
    across('footGirth', piece, even, 'stitches round the foot × width of one'),
    across('calf', piece, legRows[0]!, 'stitches at the top × width of one'),
    across('opening', piece, narrow, 'stitches of the narrowest row of the leg × width of one'),
    along('legLength', piece, before, 'rows of cuff and leg × height of one'),
    along('footLength', piece, foot, heel >= 0 ? 'rows of heel (its share), foot and toe × height of one' : 'rows of foot, toe and the heel that is set in × height of one'),
  ];
}

/** Half of the rows of a heel in short rows; below a flap the rows narrower than it, which turn. */
function heelShare({ kind, rows }: SectionMeasure): Part {
  if (kind === 'turned') return shareAll(rows, 0.5);
  const widest = Math.max(...rows.map((row) => row.stitches));
  return shareAll(rows.slice(rows.findLastIndex((row) => row.stitches === widest) + 1));
}

/** A part of a round that only shifts its start counts as a whole one from its half on. */
function wholeRound(fabric: Fabric, { row }: RowMeasure): number {
  const worked = fabric.rows[row]!;
  return !worked.round || worked.made * 2 > worked.open ? 1 : 0;
}

/** The round of the count that most rounds of the foot have; of several, that nearest to the leg's last row. */
function steadyRow(fabric: Fabric, rows: readonly RowMeasure[], leg: RowMeasure): RowMeasure {
  const times = new Map<number, number>();
  const inRounds = rows.filter(({ row }) => fabric.rows[row]!.round && fabric.rows[row]!.made * 2 > fabric.rows[row]!.open);
  for (const { stitches } of inRounds) times.set(stitches, (times.get(stitches) ?? 0) + 1);
  const most = Math.max(0, ...times.values());
  const off = ({ stitches }: RowMeasure) => Math.abs(stitches - leg.stitches);
  return inRounds.filter(({ stitches }) => times.get(stitches) === most).reduce((best: RowMeasure | null, row) => (best === null || off(row) < off(best) ? row : best), null) ?? leg;
}

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
