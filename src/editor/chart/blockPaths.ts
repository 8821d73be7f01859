import type { Drawing } from '../../engine/6-drawing/drawing.ts';
import type { Blocks } from './blocks.ts';
import type { Detail } from './detail.ts';
import { fillPath } from './fillPath.ts';
import type { GlyphPen } from './glyphPen.ts';
import { GHOST_INK, INK_CODES, REACHING_INK, type YarnInks } from './inks.ts';
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
  const byYarn = new Map<number, number[]>();
  for (let n = blocks.start[block]!; n < blocks.start[block + 1]!; n++) {
    const item = blocks.items[n]!;
    if (filled[item] === 0) continue;
    const key = ghost[item] === 1 ? GHOST_FILL : (yarnOf[stitch[item]!] ?? 0);
    const items = byYarn.get(key);
    if (items) items.push(item);
    else byYarn.set(key, [item]);
  }
  return inOrder(byYarn, (items) => fillPath(drawing, items, 0, items.length, shape));
}

/**
 * One path an ink for the symbols of a block. With `inks` symbols on filled cells take their yarn's ink; without, and
 * beside the cells, the ink that the stitch has on paper. What reaches for a stitch elsewhere crosses cells of any yarn and keeps its ink,
 * on a halo, as in print.
 */
export function blockSymbols(drawing: Drawing, blocks: Blocks, block: number, yarnOf: Uint8Array, pen: GlyphPen, inks: YarnInks | null): KeyedPath[] {
  const { stitch, ghost, filled, glyph, glyphX, glyphY, glyphTurnRad, ink } = drawing.stitches;
  const byInk = new Map<number, string>();
  for (let n = blocks.start[block]!; n < blocks.start[block + 1]!; n++) {
    const item = blocks.items[n]!;
    if (glyph[item]! < 0) continue;
    let key: number = ink[item]!;
    if (ghost[item] === 1) key = GHOST_INK;
    else if (key !== REACHING_INK && inks !== null && filled[item] === 1) key = FIRST_YARN_INK + (inks.table[(yarnOf[stitch[item]!] ?? 0) * INK_CODES + key] ?? 0);
    const x = Math.round(glyphX[item]! * UNITS_PER_MM), y = Math.round(glyphY[item]! * UNITS_PER_MM);
    byInk.set(key, `${byInk.get(key) ?? ''}M${x} ${y}${pen(glyph[item]!, glyphTurnRad[item]!)}`);
  }
  // Halos would cover what stands beside: their symbols come last.
  return inOrder(byInk, (d) => d).sort((a, b) => Number(a.key === REACHING_INK) - Number(b.key === REACHING_INK));
}

function inOrder<V>(parts: ReadonlyMap<number, V>, path: (part: V) => string): KeyedPath[] {
  return [...parts.keys()].sort((a, b) => a - b).map((key) => ({ key, d: path(parts.get(key)!) }));
}
