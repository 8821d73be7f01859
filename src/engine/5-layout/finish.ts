import type { Ground, IndexedRow } from './ground.ts';
import type { Box, Ghost, Guide, LaidRow, Layout, PlacedPart } from './layout.ts';
import type { StoodRow } from './stoodRow.ts';

/** Packs a filled ground and its parts as a layout: single precision, angles from foot to head, bounds round everything that has a place. */
export function finish(ground: Ground, parts: readonly LaidParts[]): Layout {
  const count = ground.end - ground.first;
  const angle = new Float32Array(count);
  for (let i = 0; i < count; i++) {
    angle[i] = angleOf(ground.headX[i]! - ground.footX[i]!, ground.footY[i]! - ground.headY[i]!);
  }
  const stood = parts.length === 1 ? (parts[0]!.placed.stood ?? []) : [];
  const isAll = count > 0 && stood.reduce((sum, { isWhole, places }) => (isWhole ? sum + places.count : NaN), 0) === count;
  return joined(ground, parts, isAll ? boxOf(stood) : cellsBox(ground), {
    headX: new Float32Array(ground.headX), headY: new Float32Array(ground.headY),
    footX: new Float32Array(ground.footX), footY: new Float32Array(ground.footY),
    angle, corners: new Float32Array(ground.corners),
  });
}

/** Angle of a stitch whose head lies `dx` right and `dy` up of its foot; 0 for one that stands upright. */
export function angleOf(dx: number, dy: number): number {
  return dx === 0 && dy >= 0 ? 0 : Math.atan2(dx, dy);
}

export type LaidCells = Pick<Layout, 'headX' | 'headY' | 'footX' | 'footY' | 'angle' | 'corners'>;

interface LaidParts {
  readonly rows: readonly IndexedRow[];
  readonly placed: PlacedPart;
}

/** The layout of parts whose cells have been packed; `box`: round all cells. */
export function joined(ground: Ground, parts: readonly LaidParts[], box: Box, cells: LaidCells): Layout {
  const size = (rows: readonly IndexedRow[]): number => rows.reduce((sum, row) => sum + row.end - row.first, 0);
  const largest = parts.length < 2 ? parts[0] : parts.reduce((a, b) => (size(b.rows) > size(a.rows) ? b : a));
  const [rows, ghosts, guides] = [parts.flatMap(({ placed }) => placed.rows), parts.flatMap(({ placed }) => placed.ghosts), parts.flatMap(({ placed }) => placed.guides)];
  return {
    kind: largest?.placed.kind ?? 'flat', section: ground.section, parts: parts.map((part) => ({ kind: part.placed.kind, rows: part.rows.map(({ index }) => index), keepsColumns: part.placed.keepsColumns ?? false })),
    first: ground.first, end: ground.end, cellWidthMm: ground.w, cellHeightMm: ground.h,
    ...cells, ghosts, rows, guides, bounds: grown(box, ground, rows, ghosts, guides),
  };
}

/** Round the cells of rows as they stand. */
export function boxOf(stood: readonly StoodRow[]): Box {
  let [x0, y0, x1, y1] = [Infinity, Infinity, -Infinity, -Infinity];
  for (const { places: { box, laidY }, originY } of stood) {
    x0 = Math.min(x0, box.x0);
    x1 = Math.max(x1, box.x1);
    y0 = Math.min(y0, box.y0 + (originY - laidY));
    y1 = Math.max(y1, box.y1 + (originY - laidY));
  }
  return { x0, y0, x1, y1 };
}

/** Round every cell that has a place; empty (`Infinity` first) without any. */
function cellsBox({ corners, placed }: Ground): Box {
  let [x0, y0, x1, y1] = [Infinity, Infinity, -Infinity, -Infinity];
  for (let i = 0; i < corners.length; i += 2) {
    if (!placed[i >> 3]) continue;
    const [x, y] = [corners[i]!, corners[i + 1]!];
    if (x < x0) x0 = x;
    if (x > x1) x1 = x;
    if (y < y0) y0 = y;
    if (y > y1) y1 = y;
  }
  return { x0, y0, x1, y1 };
}

function grown(cells: Box, { w, h }: Ground, rows: readonly LaidRow[], ghosts: readonly Ghost[], guides: readonly Guide[]): Box {
  const box = { ...cells };
  const add = (x: number, y: number): void => {
    if (x < box.x0) box.x0 = x;
    if (x > box.x1) box.x1 = x;
    if (y < box.y0) box.y0 = y;
    if (y > box.y1) box.y1 = y;
  };
  for (const { labelX, labelY, band } of rows) {
    add(labelX, labelY);
    for (let i = 0; band && i + 1 < band.length; i += 2) add(band[i]!, band[i + 1]!);
  }
  for (const { headX, headY } of ghosts) {
    add(headX - w / 2, headY);
    add(headX + w / 2, headY + h);
  }
  for (const guide of guides) {
    if (guide.kind === 'start') add(guide.x, guide.y);
    else for (let i = 0; i + 1 < guide.points.length; i += 2) add(guide.points[i]!, guide.points[i + 1]!);
  }
  return box.x0 <= box.x1 ? box : { x0: 0, y0: 0, x1: 0, y1: 0 };
}
