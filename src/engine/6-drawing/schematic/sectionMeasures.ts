import { FLAG, type Fabric, type WorkedRow } from '../../3-fabric/fabric.ts';
import { stitchCode } from '../../craft/stitches.ts';
import type { RowMeasure } from './rowMeasures.ts';

/**
 * What a section is by its stitches: rows back and forth (later seamed to a ring or not), rounds, short rows that take up open
 * stitches, or a flap of rows on part of a ring.
 */
export type SectionKind = 'flat' | 'seamed' | 'round' | 'turned' | 'flap';

/** A worked section and the piece it belongs to. */
export interface SectionMeasure {
  readonly section: number;
  readonly name: string;
  readonly kind: SectionKind;
  /** Pieces are counted from 0; each begins with a foundation or a ring. */
  readonly piece: number;
  readonly rows: readonly RowMeasure[];
  /** How the section begins its piece (`opening`: a ring that was left in another piece's round); null where it goes on from the one before. */
  readonly begins: 'chain' | 'chainRing' | 'bothSides' | 'ring' | 'opening' | null;
  /** Chains of its foundation. */
  readonly chains: number;
  /** Places still open on the piece's edge after the section: 0 when it was drawn shut. */
  readonly drawnTo: number;
}

/** The sections that have rows, in working order. Linear in stitches. */
export function sectionMeasures(fabric: Fabric, rows: readonly (RowMeasure | null)[]): readonly SectionMeasure[] {
  let piece = -1;
  const found: SectionMeasure[] = [];
  fabric.sections.forEach(({ name, firstRow, endRow }, section) => {
    const worked = fabric.rows.slice(firstRow, endRow);
    const measured = rows.slice(firstRow, endRow).filter((row) => row !== null);
    if (measured.length === 0 && !worked.some((row) => row.end > row.first)) return;
    const begins = beginning(fabric, worked);
    if (begins !== null || piece < 0) piece++;
    found.push({ section, name, kind: kindOf(fabric, worked), piece, rows: measured, begins, chains: chainsOf(fabric, worked), drawnTo: worked.at(-1)?.open ?? 0 });
  });
  const seamed = new Set(fabric.seams.map((seam) => found.find((one) => sectionHas(fabric, one.section, seam.row))?.piece));
  return found.map((one) => (one.kind === 'flat' && seamed.has(one.piece) ? { ...one, kind: 'seamed' } : one));
}

function sectionHas(fabric: Fabric, section: number, row: number): boolean {
  const { firstRow, endRow } = fabric.sections[section]!;
  return row >= firstRow && row < endRow;
}

function kindOf(fabric: Fabric, worked: readonly WorkedRow[]): SectionKind {
  if (worked.some((row) => !row.round && takesUp(fabric, row))) return 'turned';
  let stitches = 0;
  let inRounds = 0;
  for (const row of worked) {
    stitches += row.made;
    if (row.round) inRounds += row.made;
  }
  if (inRounds * 2 > stitches) return 'round';
  return worked.some((row) => row.ring && row.made > 0 && !row.round && row.word !== 'foundation') ? 'flap' : 'flat';
}

/** Whether a row works into a stitch that an earlier row left open beyond the row below. */
function takesUp(fabric: Fabric, row: WorkedRow): boolean {
  for (let stitch = row.end - 1; stitch >= row.first; stitch--) if (fabric.flags[stitch]! & FLAG.attaching) return true;
  return false;
}

function beginning(fabric: Fabric, worked: readonly WorkedRow[]): SectionMeasure['begins'] {
  for (const row of worked) {
    for (let stitch = row.first; stitch < row.end; stitch++) {
      if (row.round && intoOpening(fabric, stitch)) return 'opening';
      if (!(fabric.flags[stitch]! & FLAG.foundation)) continue;
      if (fabric.kind[stitch] === stitchCode('ring')) return 'ring';
      if (row.ring) return 'chainRing';
      return worked.some((other) => other.round && other.made > 0) ? 'bothSides' : 'chain';
    }
  }
  return null;
}

/** Whether a stitch stands on the underside of a chain that no foundation made. */
function intoOpening(fabric: Fabric, stitch: number): boolean {
  if (!(fabric.flags[stitch]! & FLAG.otherSide)) return false;
  const base = fabric.bases[fabric.baseStart[stitch]!];
  return base !== undefined && fabric.kind[base] === stitchCode('ch') && !(fabric.flags[base]! & FLAG.foundation);
}

function chainsOf(fabric: Fabric, worked: readonly WorkedRow[]): number {
  let count = 0;
  for (const row of worked) {
    for (let stitch = row.first; stitch < row.end; stitch++) if (fabric.flags[stitch]! & FLAG.foundation && fabric.kind[stitch] === stitchCode('ch')) count++;
  }
  return count;
}

/** Height of rows, mm. */
export function heightOf(rows: readonly RowMeasure[]): number {
  return rows.reduce((sum, row) => sum + row.heightMm, 0);
}
