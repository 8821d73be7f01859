import { stitchOfCode } from '../craft/stitches.ts';
import type { Fabric, WorkedRow } from '../3-fabric/fabric.ts';
import type { Cell } from './gaugeCell.ts';

/** The arrays that a layout fills row by row, indexed by `stitch - first`; mm, y down. Double precision until the end. */
export interface Ground {
  readonly fabric: Fabric;
  readonly section: number;
  readonly first: number;
  readonly end: number;
  /** Width and height of a single crochet, mm. */
  readonly w: number;
  readonly h: number;
  readonly headX: Float64Array;
  readonly headY: Float64Array;
  readonly footX: Float64Array;
  readonly footY: Float64Array;
  readonly corners: Float64Array;
  /** 1 once the stitch has its place. */
  readonly placed: Uint8Array;
  /** Where base stitches of other sections are taken to stand, by stitch number: head x and y. */
  readonly outside: Map<number, readonly [x: number, y: number]>;
}

/** An empty ground for one section. A section that made no stitches gives arrays of length 0. */
export function newGround(fabric: Fabric, section: number, cell: Cell): Ground {
  const rows = sectionRows(fabric, section);
  const first = rows[0]?.first ?? 0;
  const end = rows.at(-1)?.end ?? first;
  const count = end - first;
  return {
    fabric, section, first, end, w: cell.widthMm, h: cell.heightMm,
    headX: new Float64Array(count), headY: new Float64Array(count), footX: new Float64Array(count), footY: new Float64Array(count),
    corners: new Float64Array(count * 8), placed: new Uint8Array(count), outside: new Map(),
  };
}

/** A worked row with its index in the fabric. */
export interface IndexedRow extends WorkedRow {
  readonly index: number;
}

/** Rows of a fabric's sections: layout, drawing and readings all go through them. */
const KNOWN = new WeakMap<Fabric, Map<number, readonly IndexedRow[]>>();

/** The worked rows of a section that made at least one stitch, in working order. The very same list again for the same fabric and section. */
export function sectionRows(fabric: Fabric, section: number): readonly IndexedRow[] {
  const part = fabric.sections[section];
  if (!part) throw new RangeError(`section ${section} asked of a fabric of ${fabric.sections.length} sections`);
  const known = KNOWN.get(fabric) ?? new Map<number, readonly IndexedRow[]>();
  KNOWN.set(fabric, known);
  const rows = known.get(section) ?? indexedRows(fabric, part);
  known.set(section, rows);
  return rows;
}

function indexedRows(fabric: Fabric, part: Fabric['sections'][number]): IndexedRow[] {
  const rows: IndexedRow[] = [];
  for (let index = part.firstRow; index < part.endRow; index++) {
    const row = fabric.rows[index]!;
    if (row.end > row.first) rows.push({ ...row, index });
  }
  return rows;
}

/** Height of a stitch in mm; of a bobble and its like, of its legs. */
export function stitchHeight(ground: Pick<Ground, 'fabric' | 'h'>, stitch: number): number {
  const { kind, legKind } = ground.fabric;
  return stitchOfCode(legKind[stitch] || kind[stitch]!).height * ground.h;
}

/** Whether a stitch belongs to the ground's section. */
export function within(ground: Ground, stitch: number): boolean {
  return stitch >= ground.first && stitch < ground.end;
}

/** Head of a base stitch, inside the section or outside; null when it has no place (yet). */
export function headOf(ground: Ground, stitch: number): readonly [x: number, y: number] | null {
  if (!within(ground, stitch)) return ground.outside.get(stitch) ?? null;
  const i = stitch - ground.first;
  return ground.placed[i] ? [ground.headX[i]!, ground.headY[i]!] : null;
}

/** Writes head, foot and the four corners (bottom left, bottom right, top right, top left: x, y each) of a stitch. */
export function setStitch(ground: Ground, stitch: number, head: readonly [number, number], foot: readonly [number, number], corners: readonly number[]): void {
  const i = stitch - ground.first;
  ground.headX[i] = head[0];
  ground.headY[i] = head[1];
  ground.footX[i] = foot[0];
  ground.footY[i] = foot[1];
  for (let c = 0; c < 8; c++) ground.corners[i * 8 + c] = corners[c]!;
  ground.placed[i] = 1;
}

/** The corners of an upright box around (x, y). */
export function boxCorners(x: number, y: number, halfWidth: number, halfHeight: number): readonly number[] {
  return [x - halfWidth, y + halfHeight, x + halfWidth, y + halfHeight, x + halfWidth, y - halfHeight, x - halfWidth, y - halfHeight];
}
