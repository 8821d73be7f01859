import type { Ground, IndexedRow } from './ground.ts';
import type { Box, Ghost, Guide, LaidRow, PlacedPart } from './layout.ts';

/** Room between two pieces, in stitch widths: beyond their row numbers. */
const APART = 2.5;

/** A piece's rows and how they were placed. */
export interface PlacedRows {
  readonly rows: readonly IndexedRow[];
  readonly placed: PlacedPart;
}

/** Moves pieces beside each other from left to right in their order, their lowest edges level. One piece stays where it is. */
export function sideBySide(ground: Ground, parts: readonly PlacedRows[]): readonly PlacedRows[] {
  if (parts.length < 2) return parts;
  const boxes = parts.map((part) => boxOf(ground, part));
  const level = boxes[0]!.y1;
  let right = boxes[0]!.x1;
  return parts.map((part, n) => {
    if (n === 0) return part;
    const box = boxes[n]!;
    const [dx, dy] = [right + APART * ground.w - box.x0, level - box.y1];
    right = box.x1 + dx;
    return { rows: part.rows, placed: moved(ground, part, dx, dy) };
  });
}

function boxOf(ground: Ground, { rows, placed }: PlacedRows): Box {
  const box = { x0: Infinity, y0: Infinity, x1: -Infinity, y1: -Infinity };
  const add = (x: number, y: number): void => {
    box.x0 = Math.min(box.x0, x);
    box.x1 = Math.max(box.x1, x);
    box.y0 = Math.min(box.y0, y);
    box.y1 = Math.max(box.y1, y);
  };
  const { corners, first, w, h } = ground;
  for (const row of rows) {
    for (let stitch = row.first; stitch < row.end; stitch++) {
      if (!ground.placed[stitch - first]) continue;
      for (let c = (stitch - first) * 8; c < (stitch - first + 1) * 8; c += 2) add(corners[c]!, corners[c + 1]!);
    }
  }
  for (const { labelX, labelY, stands } of placed.rows) add(labelX + (stands === 'inside' ? 0 : Math.sign(labelX - (box.x0 + box.x1) / 2) * 1.5 * w), labelY);
  for (const { headX, headY } of placed.ghosts) {
    add(headX - w / 2, headY);
    add(headX + w / 2, headY + h);
  }
  for (const guide of placed.guides) if (guide.kind !== 'start') for (let i = 0; i + 1 < guide.points.length; i += 2) add(guide.points[i]!, guide.points[i + 1]!);
  return box.x0 <= box.x1 ? box : { x0: 0, y0: 0, x1: 0, y1: 0 };
}

/** Moves the stitches of a piece in the ground and gives its marks moved. */
function moved(ground: Ground, { rows, placed }: PlacedRows, dx: number, dy: number): PlacedPart {
  const { first, headX, headY, footX, footY, corners } = ground;
  for (const row of rows) {
    let from = row.first;
    // Chains left out at a foundation's end belong to the row but were made before it.
    while (from > first && ground.fabric.row[from - 1] === row.index) from--;
    for (let i = from - first; i < row.end - first; i++) {
      if (ground.fabric.row[i + first] !== row.index) continue;
      headX[i]! += dx;
      headY[i]! += dy;
      footX[i]! += dx;
      footY[i]! += dy;
      for (let c = i * 8; c < i * 8 + 8; c += 2) {
        corners[c]! += dx;
        corners[c + 1]! += dy;
      }
    }
  }
  return { ...placed, rows: placed.rows.map((row) => movedRow(row, dx, dy)), ghosts: placed.ghosts.map((ghost) => movedGhost(ghost, dx, dy)), guides: placed.guides.map((guide) => movedGuide(guide, dx, dy)) };
}

function movedPoints(points: readonly number[], dx: number, dy: number): number[] {
  return points.map((value, i) => value + (i % 2 === 0 ? dx : dy));
}

function movedRow(row: LaidRow, dx: number, dy: number): LaidRow {
  return { ...row, labelX: row.labelX + dx, labelY: row.labelY + dy, startX: row.startX + dx, startY: row.startY + dy, band: row.band && movedPoints(row.band, dx, dy) };
}

function movedGhost(ghost: Ghost, dx: number, dy: number): Ghost {
  return { ...ghost, headX: ghost.headX + dx, headY: ghost.headY + dy };
}

function movedGuide(guide: Guide, dx: number, dy: number): Guide {
  switch (guide.kind) {
    case 'start': return { ...guide, x: guide.x + dx, y: guide.y + dy };
    case 'open': case 'from': return { ...guide, points: movedPoints(guide.points, dx, dy), textX: guide.textX + dx, textY: guide.textY + dy };
    case 'seam': case 'centre': case 'way': return { ...guide, points: movedPoints(guide.points, dx, dy) };
  }
}
