import type { Drawing } from '../../engine/6-drawing/drawing.ts';
import type { Blocks } from './blocks.ts';
import type { Detail } from './detail.ts';
import { fillPath } from './fillPath.ts';
import type { GlyphPen } from './glyphPen.ts';
import { GHOST_INK, INK_CODES, REACHING_INK, type YarnInks } from './inks.ts';
import { pathBytes } from './pathBytes.ts';
import { UNITS_PER_MM } from './pathUnits.ts';

/** Path data of one kind: `key` is a yarn index (`GHOST_FILL` for ghosts), or an ink index. */
export interface KeyedPath {
  readonly key: number;
  readonly d: string;
}

/** Fill key of cells drawn in grey for orientation. */
export const GHOST_FILL = 255;

/** Ink keys: on paper the ink code or `GHOST_INK`; from here on, index into `YarnInks.colours`. */
export const FIRST_YARN_INK = GHOST_INK + 1;

/** One path a yarn for the filled cells of a block. */
export function blockFills(drawing: Drawing, blocks: Blocks, block: number, yarnOf: Uint8Array, detail: Detail): KeyedPath[] {
  const { stitch, ghost, filled } = drawing.stitches;
  const cellMm = Math.min(drawing.cellWidthMm, drawing.cellHeightMm);
  const shape = { growMm: detail.grow * cellMm, toleranceMm: detail.tolerance * cellMm, merge: true };
  const parts = itemsByKey(blocks, block, (item) => (filled[item] === 0 ? -1 : ghost[item] === 1 ? GHOST_FILL : (yarnOf[stitch[item]!] ?? 0)));
  return parts.map(({ key, from, to }) => ({ key, d: fillPath(drawing, sorted, from, to, shape) }));
}

/**
 * One path an ink for the symbols of a block. With `inks` symbols on filled cells take their yarn's ink; without, and
 * beside the cells, the ink that the stitch has on paper. What reaches for a stitch elsewhere crosses cells of any yarn and keeps its ink,
 * on a halo, as in print.
 */
export function blockSymbols(drawing: Drawing, blocks: Blocks, block: number, yarnOf: Uint8Array, pen: GlyphPen, inks: YarnInks | null): KeyedPath[] {
  const { stitch, ghost, filled, glyph, glyphX, glyphY, glyphTurnRad, ink } = drawing.stitches;
  const parts = itemsByKey(blocks, block, (item) => {
    const code = ink[item]!;
    if (glyph[item]! < 0) return -1;
    if (ghost[item] === 1) return GHOST_INK;
    return code === REACHING_INK || inks === null || filled[item] === 0 ? code : FIRST_YARN_INK + (inks.table[(yarnOf[stitch[item]!] ?? 0) * INK_CODES + code] ?? 0);
  });
  // Halos would cover what stands beside: their symbols come last.
  parts.sort((a, b) => Number(a.key === REACHING_INK) - Number(b.key === REACHING_INK));
  return parts.map(({ key, from, to }) => {
    pathBytes.start();
    for (let n = from; n < to; n++) {
      const item = sorted[n]!;
      pathBytes.moveTo(Math.round(glyphX[item]! * UNITS_PER_MM), Math.round(glyphY[item]! * UNITS_PER_MM));
      pathBytes.append(pen(glyph[item]!, glyphTurnRad[item]!));
    }
    return { key, d: pathBytes.text() };
  });
}

/** The items last sorted by `itemsByKey`, and how many there are of each key. Written over by each call. */
let sorted = new Int32Array(1024);
const counts = new Int32Array(1024);

/** The items of a block by key (0 … 1022; −1 leaves one out): `sorted[from] … sorted[to - 1]` have the key; keys in order, items in the drawing's order. */
function itemsByKey(blocks: Blocks, block: number, keyOf: (item: number) => number): { readonly key: number; readonly from: number; readonly to: number }[] {
  const first = blocks.start[block]!, end = blocks.start[block + 1]!;
  if (sorted.length < end - first) sorted = new Int32Array(2 * (end - first));
  counts.fill(0);
  for (let n = first; n < end; n++) counts[keyOf(blocks.items[n]!) + 1]!++;
  const parts: { key: number; from: number; to: number }[] = [];
  let at = 0;
  for (let key = 0; key < counts.length - 1; key++) {
    const many = counts[key + 1]!;
    if (many === 0) continue;
    parts.push({ key, from: at, to: at + many });
    counts[key + 1] = at;
    at += many;
  }
  for (let n = first; n < end; n++) {
    const key = keyOf(blocks.items[n]!);
    if (key >= 0) sorted[counts[key + 1]!++] = blocks.items[n]!;
  }
  return parts;
}
