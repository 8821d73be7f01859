import type { Drawing } from '../../engine/6-drawing/drawing.ts';

/** The stitches of a drawing cut by position into roughly square patches, so that an edit redraws a small area only. */
export interface Blocks {
  readonly count: number;
  /** Items of block b, in drawing order: `items[start[b]] … items[start[b + 1] - 1]`. */
  readonly start: Int32Array;
  readonly items: Int32Array;
  /** x0, y0, x1, y1 a block, mm, around cells and symbols. */
  readonly boxes: Float32Array;
  /** Block of each item. */
  readonly blockOf: Int32Array;
}

/** Cells along the side of a block: 16 × 16 = 256 stitches (64 to 256 measured alike; more make an edit dearer). */
const SIDE = 16;

/** Cuts a drawing into blocks; empty patches are left out. Linear in the number of items. */
export function cutBlocks(drawing: Drawing): Blocks {
  const { stitches, bounds, cellWidthMm, cellHeightMm } = drawing;
  const { count, x, y } = stitches;
  const sideMm = SIDE * Math.sqrt(cellWidthMm * cellHeightMm);
  const columns = Math.max(1, Math.ceil((bounds.x1 - bounds.x0) / sideMm));
  const rows = Math.max(1, Math.ceil((bounds.y1 - bounds.y0) / sideMm));
  const patchOf = new Int32Array(count);
  const sizes = new Int32Array(columns * rows);
  for (let i = 0; i < count; i++) {
    const column = clamp(Math.floor((x[i]! - bounds.x0) / sideMm), columns);
    const row = clamp(Math.floor((y[i]! - bounds.y0) / sideMm), rows);
    const patch = row * columns + column;
    patchOf[i] = patch;
    sizes[patch]!++;
  }
  const blockOfPatch = new Int32Array(columns * rows).fill(-1);
  const starts = [0];
  for (let patch = 0; patch < sizes.length; patch++) {
    if (sizes[patch] === 0) continue;
    blockOfPatch[patch] = starts.length - 1;
    starts.push(starts[starts.length - 1]! + sizes[patch]!);
  }
  const start = Int32Array.from(starts);
  const next = start.slice();
  const items = new Int32Array(count);
  const blockOf = new Int32Array(count);
  const boxes = new Float32Array((starts.length - 1) * 4);
  for (let b = 0; b < starts.length - 1; b++) boxes.set([Infinity, Infinity, -Infinity, -Infinity], b * 4);
  const reach = glyphReaches(drawing);
  for (let i = 0; i < count; i++) {
    const block = blockOfPatch[patchOf[i]!]!;
    blockOf[i] = block;
    items[next[block]!++] = i;
    let x0 = Infinity, y0 = Infinity, x1 = -Infinity, y1 = -Infinity;
    for (let c = i * 8; c < i * 8 + 8; c += 2) {
      const cx = stitches.corners[c]!, cy = stitches.corners[c + 1]!;
      if (cx < x0) x0 = cx;
      if (cx > x1) x1 = cx;
      if (cy < y0) y0 = cy;
      if (cy > y1) y1 = cy;
    }
    widen(boxes, block, x0, y0, x1, y1);
    const around = stitches.glyph[i]! >= 0 ? reach[stitches.glyph[i]!]! : 0;
    if (around > 0) widen(boxes, block, stitches.glyphX[i]! - around, stitches.glyphY[i]! - around, stitches.glyphX[i]! + around, stitches.glyphY[i]! + around);
  }
  return { count: starts.length - 1, start, items, boxes, blockOf };
}

/** Blocks whose box meets the given one, in order. */
export function blocksWithin(blocks: Blocks, box: { readonly x0: number; readonly y0: number; readonly x1: number; readonly y1: number }): number[] {
  const within: number[] = [];
  const { boxes } = blocks;
  for (let b = 0; b < blocks.count; b++) {
    const o = b * 4;
    if (boxes[o]! <= box.x1 && boxes[o + 2]! >= box.x0 && boxes[o + 1]! <= box.y1 && boxes[o + 3]! >= box.y0) within.push(b);
  }
  return within;
}

/** Blocks in which a yarn differs between two colourings, or all blocks if the colourings are of different lengths. */
export function changedBlocks(blocks: Blocks, stitchOfItem: Int32Array, before: Uint8Array, after: Uint8Array): Set<number> {
  const changed = new Set<number>();
  if (before === after) return changed;
  const all = before.length !== after.length;
  for (let i = 0; i < stitchOfItem.length; i++) {
    const stitch = stitchOfItem[i]!;
    if (all || before[stitch] !== after[stitch]) changed.add(blocks.blockOf[i]!);
  }
  return changed;
}

function clamp(value: number, count: number): number {
  return Math.min(Math.max(value, 0), count - 1);
}

function widen(boxes: Float32Array, block: number, x0: number, y0: number, x1: number, y1: number): void {
  const o = block * 4;
  if (x0 < boxes[o]!) boxes[o] = x0;
  if (y0 < boxes[o + 1]!) boxes[o + 1] = y0;
  if (x1 > boxes[o + 2]!) boxes[o + 2] = x1;
  if (y1 > boxes[o + 3]!) boxes[o + 3] = y1;
}

/** How far each glyph reaches from its origin, mm. */
function glyphReaches(drawing: Drawing): number[] {
  return drawing.glyphs.map((glyph) => {
    let reach = 0;
    for (const stroke of glyph.strokes) {
      if (stroke.kind === 'oval') reach = Math.max(reach, Math.hypot(stroke.x, stroke.y) + Math.max(stroke.rx, stroke.ry));
      else for (let p = 0; p < stroke.points.length; p += 2) reach = Math.max(reach, Math.hypot(stroke.points[p]!, stroke.points[p + 1]!));
    }
    return reach;
  });
}
