import type { Drawing } from '../../engine/6-drawing/drawing.ts';

/** The stitches of a drawing cut by position into roughly square patches, so that an edit redraws a small area only. */
export interface Blocks {
  readonly count: number;
  /** Items of block b, in drawing order: `items[start[b]] … items[start[b + 1] - 1]`. */
  readonly start: Int32Array;
  readonly items: Int32Array;
  /** x0, y0, x1, y1 a block, mm, around cells and symbols; worked out when asked for first: a picture of the whole does without. */
  readonly boxes: Float32Array;
  /** Around all of the drawing, mm. */
  readonly bounds: Drawing['bounds'];
  /** Block of each item. */
  readonly blockOf: Int32Array;
}

/** Cuts a drawing into blocks of about `side` × `side` cells; empty patches are left out. Linear in the number of items. */
export function cutBlocks(drawing: Drawing, side: number): Blocks {
  const { stitches, bounds, cellWidthMm, cellHeightMm } = drawing;
  const { count, x, y } = stitches;
  const sideMm = side * Math.sqrt(cellWidthMm * cellHeightMm);
  const columns = Math.max(1, Math.ceil((bounds.x1 - bounds.x0) / sideMm));
  const rows = Math.max(1, Math.ceil((bounds.y1 - bounds.y0) / sideMm));
  // First the patch of each item, then its block: patches without items have none.
  const blockOf = new Int32Array(count);
  const sizes = new Int32Array(columns * rows);
  for (let i = 0; i < count; i++) {
    const column = Math.floor((x[i]! - bounds.x0) / sideMm), row = Math.floor((y[i]! - bounds.y0) / sideMm);
    const patch = (row < 0 ? 0 : row < rows ? row : rows - 1) * columns + (column < 0 ? 0 : column < columns ? column : columns - 1);
    blockOf[i] = patch;
    sizes[patch]!++;
  }
  const blockOfPatch = new Int32Array(columns * rows);
  const starts = [0];
  for (let patch = 0; patch < sizes.length; patch++) {
    if (sizes[patch] === 0) continue;
    blockOfPatch[patch] = starts.length - 1;
    starts.push(starts[starts.length - 1]! + sizes[patch]!);
  }
  const start = Int32Array.from(starts);
  const next = start.slice();
  const items = new Int32Array(count);
  for (let i = 0; i < count; i++) {
    const block = blockOfPatch[blockOf[i]!]!;
    blockOf[i] = block;
    items[next[block]!++] = i;
  }
  let boxes: Float32Array | null = null;
  return {
    count: starts.length - 1, start, items, blockOf, bounds,
    get boxes() {
      return (boxes ??= boxesOf(drawing, starts.length - 1, blockOf));
    },
  };
}

function boxesOf(drawing: Drawing, count: number, blockOf: Int32Array): Float32Array {
  const { corners, glyph, glyphX, glyphY } = drawing.stitches;
  const reach = glyphReaches(drawing);
  const boxes = new Float32Array(count * 4);
  for (let o = 0; o < boxes.length; o += 4) {
    boxes[o] = boxes[o + 1] = Infinity;
    boxes[o + 2] = boxes[o + 3] = -Infinity;
  }
  for (let i = 0; i < blockOf.length; i++) {
    const o = blockOf[i]! * 4;
    let x0 = boxes[o]!, y0 = boxes[o + 1]!, x1 = boxes[o + 2]!, y1 = boxes[o + 3]!;
    for (let c = i * 8; c < i * 8 + 8; c += 2) {
      const cx = corners[c]!, cy = corners[c + 1]!;
      if (cx < x0) x0 = cx;
      if (cx > x1) x1 = cx;
      if (cy < y0) y0 = cy;
      if (cy > y1) y1 = cy;
    }
    const around = glyph[i]! >= 0 ? reach[glyph[i]!]! : 0;
    if (around > 0) {
      const gx = glyphX[i]!, gy = glyphY[i]!;
      if (gx - around < x0) x0 = gx - around;
      if (gx + around > x1) x1 = gx + around;
      if (gy - around < y0) y0 = gy - around;
      if (gy + around > y1) y1 = gy + around;
    }
    boxes[o] = x0;
    boxes[o + 1] = y0;
    boxes[o + 2] = x1;
    boxes[o + 3] = y1;
  }
  return boxes;
}

/** Blocks whose box meets the given one, in order. */
export function blocksWithin(blocks: Blocks, box: { readonly x0: number; readonly y0: number; readonly x1: number; readonly y1: number }): number[] {
  const { bounds } = blocks;
  if (bounds.x0 >= box.x0 && bounds.x1 <= box.x1 && bounds.y0 >= box.y0 && bounds.y1 <= box.y1) return Array.from({ length: blocks.count }, (_, b) => b);
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
