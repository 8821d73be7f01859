import { stitchCode } from '../../craft/stitches.ts';
import { FLAG, type Fabric } from '../../3-fabric/fabric.ts';
import type { RowMeasure } from './rowMeasures.ts';
import type { SectionMeasure } from './sectionMeasures.ts';

/** Rows with the share of their height that counts towards a length. */
export type Part = readonly { readonly row: RowMeasure; readonly share: number }[];

/** The parts of a worked sock or stocking. */
export interface SockParts {
  readonly leg: Part;
  /** The heel's rows with their share of the foot: half of short rows, the turn below a flap, a heel set in whole. */
  readonly heel: Part;
  readonly heelMm: number;
  /** Rounds of foot and toe; a part of a round that only shifts its start counts from its half on. */
  readonly foot: readonly RowMeasure[];
  /** A row of the foot's even count. */
  readonly girth: RowMeasure;
  /** The narrowest row of the leg. */
  readonly opening: RowMeasure;
}

/**
 * The parts of the first piece if it is a sock: if short rows or a flap stand on a ring, or a round leaves an opening for a heel
 * that is set in. Null for anything else. `doubled` names sections that are folded in half when finished.
 */
export function sockParts(fabric: Fabric, sections: readonly SectionMeasure[], doubled: ReadonlySet<number>): SockParts | null {
  const own = sections.filter((section) => section.piece === 0);
  const opening = openingRow(fabric, own);
  const heelAt = own.findIndex((section) => (section.kind === 'turned' || section.kind === 'flap') && onRing(fabric, section));
  if (heelAt < 0 && !opening) return null;
  const isLeg = (row: RowMeasure, section: number) => (heelAt >= 0 ? section < heelAt : row.row < opening!.row);
  const isFoot = (row: RowMeasure, section: number) => (heelAt >= 0 ? section > heelAt : row.row >= opening!.row);
  const leg: Part = own.flatMap((section, i) => section.rows.filter((row) => isLeg(row, i)).map((row) => ({ row, share: doubled.has(section.section) ? 0.5 : 1 })));
  const after = own.flatMap((section, i) => section.rows.filter((row) => isFoot(row, i)));
  const foot = after.filter((row) => fabric.rows[row.row]!.round && isWholeRound(fabric, row));
  if (leg.length === 0 || foot.length === 0) return null;
  // Below a flap the turn follows in rows of its own.
  const turn: Part = after.filter((row) => !fabric.rows[row.row]!.round).map((row) => ({ row, share: 1 }));
  const heel: Part = heelAt >= 0 ? [...heelShare(own[heelAt]!), ...turn] : setIn(sections, opening!.chains).map((row) => ({ row, share: 1 }));
  const legRows = leg.map(({ row }) => row);
  return {
    leg, heel, foot,
    heelMm: heel.reduce((sum, { row, share }) => sum + row.heightMm * share, 0),
    girth: steadyRow(foot, legRows.at(-1)!),
    opening: legRows.reduce((least, row) => (row.widthMm < least.widthMm ? row : least), legRows[0]!),
  };
}

function onRing(fabric: Fabric, section: SectionMeasure): boolean {
  return section.rows.some(({ row }) => fabric.rows[row]!.ring);
}

/** A round that makes at least 4 new stitches of chains in one run and goes on: an opening is left below them. */
export function openingRow(fabric: Fabric, sections: readonly SectionMeasure[]): { readonly row: number; readonly chains: number } | null {
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

/** The rows of the heel worked into an opening, or made apart and sewn in: a tube from as many chains as the opening has edge stitches. */
function setIn(sections: readonly SectionMeasure[], chains: number): readonly RowMeasure[] {
  const first = sections.find((section) => section.piece > 0 && (section.begins === 'opening' || (section.begins === 'chainRing' && section.chains === 2 * chains)));
  return first ? sections.filter((section) => section.piece === first.piece).flatMap((section) => section.rows) : [];
}

/** Half of the rows of a heel in short rows; below a flap the rows narrower than it, which turn. */
function heelShare({ kind, rows }: SectionMeasure): Part {
  if (kind === 'turned') return rows.map((row) => ({ row, share: 0.5 }));
  const widest = Math.max(...rows.map((row) => row.stitches));
  return rows.slice(rows.findLastIndex((row) => row.stitches === widest) + 1).map((row) => ({ row, share: 1 }));
}

/** Rows, and rounds that go all round: a part of a round only shifts its start, and counts as a whole one from its half on. */
export function wholeRows(fabric: Fabric, rows: readonly RowMeasure[]): readonly RowMeasure[] {
  const whole = rows.filter((row) => !fabric.rows[row.row]!.round || isWholeRound(fabric, row));
  return whole.length > 0 ? whole : rows;
}

function isWholeRound(fabric: Fabric, { row }: RowMeasure): boolean {
  const worked = fabric.rows[row]!;
  return worked.made * 2 > worked.open;
}

/** The round of the count that most rounds of the foot have; of several, that nearest to the leg's last row. */
function steadyRow(foot: readonly RowMeasure[], leg: RowMeasure): RowMeasure {
  const times = new Map<number, number>();
  for (const { stitches } of foot) times.set(stitches, (times.get(stitches) ?? 0) + 1);
  const most = Math.max(0, ...times.values());
  const off = ({ stitches }: RowMeasure) => Math.abs(stitches - leg.stitches);
  return foot.filter(({ stitches }) => times.get(stitches) === most).reduce((best: RowMeasure | null, row) => (best === null || off(row) < off(best) ? row : best), null) ?? leg;
}
