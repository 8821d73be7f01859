import type { Ground, IndexedRow } from './ground.ts';
import type { Box, Ghost, Guide, LaidRow, Layout, PlacedPart } from './layout.ts';

/** Packs a filled ground and its parts as a layout: single precision, angles from foot to head, bounds round everything that has a place. */
export function finish(ground: Ground, parts: readonly { readonly rows: readonly IndexedRow[]; readonly placed: PlacedPart }[]): Layout {
  const count = ground.end - ground.first;
  const angle = new Float32Array(count);
  for (let i = 0; i < count; i++) {
    const dx = ground.headX[i]! - ground.footX[i]!;
    const dy = ground.footY[i]! - ground.headY[i]!;
    angle[i] = dx === 0 && dy >= 0 ? 0 : Math.atan2(dx, dy);
  }
  const size = (rows: readonly IndexedRow[]): number => rows.reduce((sum, row) => sum + row.end - row.first, 0);
  const largest = parts.length < 2 ? parts[0] : parts.reduce((a, b) => (size(b.rows) > size(a.rows) ? b : a));
  const [rows, ghosts, guides] = [parts.flatMap(({ placed }) => placed.rows), parts.flatMap(({ placed }) => placed.ghosts), parts.flatMap(({ placed }) => placed.guides)];
  return {
    kind: largest?.placed.kind ?? 'flat', section: ground.section, parts: parts.map((part) => ({ kind: part.placed.kind, rows: part.rows.map(({ index }) => index), keepsColumns: part.placed.keepsColumns ?? false })),
    first: ground.first, end: ground.end, cellWidthMm: ground.w, cellHeightMm: ground.h,
    headX: new Float32Array(ground.headX), headY: new Float32Array(ground.headY),
    footX: new Float32Array(ground.footX), footY: new Float32Array(ground.footY),
    angle, corners: new Float32Array(ground.corners), ghosts, rows, guides, bounds: boundsOf(ground, rows, ghosts, guides),
  };
}

function boundsOf(ground: Ground, rows: readonly LaidRow[], ghosts: readonly Ghost[], guides: readonly Guide[]): Box {
  const box = { x0: Infinity, y0: Infinity, x1: -Infinity, y1: -Infinity };
  const add = (x: number, y: number): void => {
    if (x < box.x0) box.x0 = x;
    if (x > box.x1) box.x1 = x;
    if (y < box.y0) box.y0 = y;
    if (y > box.y1) box.y1 = y;
  };
  const { corners, w, h } = ground;
  for (let i = 0; i < corners.length; i += 2) {
    if (ground.placed[i >> 3]) add(corners[i]!, corners[i + 1]!);
  }
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
