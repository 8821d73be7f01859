import { angleOf, boxOf, joined, type LaidCells } from './finish.ts';
import type { Ground, IndexedRow } from './ground.ts';
import type { Layout, PlacedPart } from './layout.ts';
import type { StoodRow } from './stoodRow.ts';

/** The rows of a piece as they stand, and the first stitch of each. */
export interface StoodRows {
  readonly stood: readonly StoodRow[];
  readonly starts: Int32Array;
}

/** As `finish`, for rows most of which stand as they did in an earlier layout (`oldOf`: which of its rows, -1 for none): its numbers are copied. */
export function finishKept(ground: Ground, part: { readonly rows: readonly IndexedRow[]; readonly placed: PlacedPart }, now: StoodRows & { readonly oldOf: Int32Array }, was: StoodRows & { readonly layout: Layout }): Layout {
  return joined(ground, [part], boxOf(now.stood), cellsOf(ground.end - ground.first, now, was));
}

function cellsOf(count: number, { stood, starts, oldOf }: StoodRows & { readonly oldOf: Int32Array }, was: StoodRows & { readonly layout: Layout }): LaidCells {
  const { layout } = was;
  const stays = stood.length === was.stood.length && oldOf.every((old, r) => old === r);
  if (stays && stood.every(({ originY }, r) => originY === was.stood[r]!.originY)) return { headX: layout.headX, headY: layout.headY, footX: layout.footX, footY: layout.footY, angle: layout.angle, corners: layout.corners };
  const across = stays ? layout : { headX: new Float32Array(count), footX: new Float32Array(count), angle: new Float32Array(count) };
  const cells: LaidCells = { headX: across.headX, footX: across.footX, angle: across.angle, headY: new Float32Array(count), footY: new Float32Array(count), corners: new Float32Array(count * 8) };
  for (let r = 0; r < stood.length; ) {
    const old = oldOf[r]!;
    if (old < 0) {
      pack(cells, starts[r]! - starts[0]!, stood[r]!);
      r++;
      continue;
    }
    let end = r + 1;
    while (end < stood.length && oldOf[end] === old + end - r) end++;
    const from = was.starts[old]! - was.starts[0]!;
    const [to, length] = [starts[r]! - starts[0]!, (starts[end] ?? starts[0]! + count) - starts[r]!];
    copy(layout, cells, from, to, length, stays);
    for (let k = r; k < end; k++) if (stood[k]!.originY !== was.stood[old + k - r]!.originY) heights(cells, starts[k]! - starts[0]!, stood[k]!);
    r = end;
  }
  return cells;
}

function copy(old: LaidCells, cells: LaidCells, from: number, to: number, length: number, xStay: boolean): void {
  for (const name of ['headX', 'footX', 'angle'] as const) if (!xStay) cells[name].set(old[name].subarray(from, from + length), to);
  for (const name of ['headY', 'footY'] as const) cells[name].set(old[name].subarray(from, from + length), to);
  cells.corners.set(old.corners.subarray(from * 8, (from + length) * 8), to * 8);
}

/** Everything of a row that was placed. */
function pack(cells: LaidCells, to: number, row: StoodRow): void {
  const { headX, headY, footX, footY, corners, at, count } = row.places;
  for (let i = 0; i < count; i++) {
    cells.headX[to + i] = headX[at + i]!;
    cells.footX[to + i] = footX[at + i]!;
    cells.angle[to + i] = angleOf(headX[at + i]! - footX[at + i]!, footY[at + i]! - headY[at + i]!);
  }
  for (let c = 0; c < count * 8; c += 2) cells.corners[to * 8 + c] = corners[at * 8 + c]!;
  heights(cells, to, row);
}

function heights(cells: LaidCells, to: number, { places: { headY, footY, corners, at, count, laidY }, originY }: StoodRow): void {
  const byMm = originY - laidY;
  for (let i = 0; i < count; i++) {
    cells.headY[to + i] = headY[at + i]! + byMm;
    cells.footY[to + i] = footY[at + i]! + byMm;
  }
  for (let c = 1; c < count * 8; c += 2) cells.corners[to * 8 + c] = corners[at * 8 + c]! + byMm;
}
