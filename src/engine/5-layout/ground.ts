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
  /** `PLACED` once the stitch has its place, `SETTLED` once its row stands where it stands. */
  readonly placed: Uint8Array;
  /** Where the row that is being placed counts its own y from, so that it comes out the same wherever it stands. */
  readonly frame: Frame;
  /** Where base stitches of other sections are taken to stand, by stitch number: head x and y. */
  readonly outside: Map<number, readonly [x: number, y: number]>;
}

/** The y that a row is placed from, mm. */
export interface Frame {
  originY: number;
  /** Whether something had nothing to stand on and was put at the drawing's zero instead. */
  isAdrift: boolean;
}

export const PLACED = 1;
export const SETTLED = 2;

/** An empty ground for one section. A section that made no stitches gives arrays of length 0. */
export function newGround(fabric: Fabric, section: number, cell: Cell): Ground {
  const rows = sectionRows(fabric, section);
  const first = rows[0]?.first ?? 0;
  return groundOf(fabric, section, first, rows.at(-1)?.end ?? first, cell);
}

/** An empty ground for the stitches [first, end) of a section. */
export function groundOf(fabric: Fabric, section: number, first: number, end: number, cell: Cell): Ground {
  const count = end - first;
  return {
    fabric, section, first, end, w: cell.widthMm, h: cell.heightMm, frame: { originY: 0, isAdrift: false },
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

/** Head of a base stitch, inside the section or outside, as the row that is being placed sees it; null when it has no place (yet). */
export function headOf(ground: Ground, stitch: number): readonly [x: number, y: number] | null {
  if (!within(ground, stitch)) {
    const head = ground.outside.get(stitch);
    return head ? [head[0], head[1] - ground.frame.originY] : null;
  }
  const i = stitch - ground.first;
  return ground.placed[i] ? [ground.headX[i]!, seenY(ground, ground.headY[i]!, i)] : null;
}

/** A y of the stitch at `i` as the row that is being placed sees it. */
export function seenY({ placed, frame }: Ground, y: number, i: number): number {
  return placed[i] === SETTLED ? y - frame.originY : y;
}

/** Writes head, foot and the four corners (bottom left, bottom right, top right, top left: x, y each) of a stitch. */
export function setStitch(ground: Ground, stitch: number, head: readonly [number, number], foot: readonly [number, number], corners: readonly number[]): void {
  const i = stitch - ground.first;
  ground.headX[i] = head[0];
  ground.headY[i] = head[1];
  ground.footX[i] = foot[0];
  ground.footY[i] = foot[1];
  for (let c = 0; c < 8; c++) ground.corners[i * 8 + c] = corners[c]!;
  ground.placed[i] = PLACED;
}

/** The corners of an upright box around (x, y). */
export function boxCorners(x: number, y: number, halfWidth: number, halfHeight: number): readonly number[] {
  return [x - halfWidth, y + halfHeight, x + halfWidth, y + halfHeight, x + halfWidth, y - halfHeight, x - halfWidth, y - halfHeight];
}
