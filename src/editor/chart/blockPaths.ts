import type { Drawing } from '../../engine/6-drawing/drawing.ts';
import type { Blocks } from './blocks.ts';
import type { Detail } from './detail.ts';
import { fillPaths } from './fillPaths.ts';
import type { GlyphPen } from './glyphPen.ts';
import { GHOST_INK, INK_CODES, REACHING_INK, type YarnInks } from './inks.ts';
import { keyedPaths, type KeyedPath } from './keyedPaths.ts';
import { UNITS_PER_MM } from './pathUnits.ts';

/** Fill key of cells drawn in grey for orientation. */
export const GHOST_FILL = 255;

/** Ink keys: on paper the ink code or `GHOST_INK`; from here on, index into `YarnInks.colours`. */
export const FIRST_YARN_INK = GHOST_INK + 1;

const paths = keyedPaths();

/** One path a yarn (its index, or `GHOST_FILL`) for the filled cells of a block. */
export function blockFills(drawing: Drawing, blocks: Blocks, block: number, yarnOf: Uint8Array, detail: Detail): KeyedPath[] {
  const { stitch, ghost, filled } = drawing.stitches;
  const cellMm = Math.min(drawing.cellWidthMm, drawing.cellHeightMm);
  const shape = { growMm: detail.grow * cellMm, toleranceMm: detail.tolerance * cellMm, merge: true };
  const keyOf = (item: number): number => (filled[item] === 0 ? -1 : ghost[item] === 1 ? GHOST_FILL : (yarnOf[stitch[item]!] ?? 0));
  return fillPaths(drawing, blocks.items, blocks.start[block]!, blocks.start[block + 1]!, keyOf, shape);
}

/**
 * One path an ink for the symbols of a block. With `inks` symbols on filled cells take their yarn's ink; without, and
 * beside the cells, the ink that the stitch has on paper. What reaches for a stitch elsewhere crosses cells of any yarn and keeps its ink,
 * on a halo, as in print.
 */
export function blockSymbols(drawing: Drawing, blocks: Blocks, block: number, yarnOf: Uint8Array, pen: GlyphPen, inks: YarnInks | null): KeyedPath[] {
  const { stitch, ghost, filled, glyph, glyphX, glyphY, glyphTurnRad, ink } = drawing.stitches;
  for (let n = blocks.start[block]!; n < blocks.start[block + 1]!; n++) {
    const item = blocks.items[n]!;
    if (glyph[item]! < 0) continue;
    let key: number = ink[item]!;
    if (ghost[item] === 1) key = GHOST_INK;
    else if (key !== REACHING_INK && inks !== null && filled[item] === 1) key = FIRST_YARN_INK + (inks.table[(yarnOf[stitch[item]!] ?? 0) * INK_CODES + key] ?? 0);
    const path = paths.of(key);
    path.moveTo(Math.round(glyphX[item]! * UNITS_PER_MM), Math.round(glyphY[item]! * UNITS_PER_MM));
    path.append(pen(glyph[item]!, glyphTurnRad[item]!));
  }
  // Halos would cover what stands beside: their symbols come last.
  return paths.take().sort((a, b) => Number(a.key === REACHING_INK) - Number(b.key === REACHING_INK));
}
