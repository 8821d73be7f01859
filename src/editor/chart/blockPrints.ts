import type { Drawing } from '../../engine/6-drawing/drawing.ts';
import { printMark } from '../../engine/6-drawing/printMark.ts';
import type { Yarn } from '../../engine/1-pattern/pattern.ts';
import type { Blocks } from './blocks.ts';

/** The print marks of a block's cells, mm: what is filled and what is stroked. */
export interface BlockPrints {
  readonly filled: string;
  readonly stroked: string;
}

/** The marks that tell yarns apart without colour; in the cell's corner where a symbol stands in it. */
export function blockPrints(drawing: Drawing, blocks: Blocks, block: number, yarnOf: Uint8Array, yarns: readonly Yarn[], symbols: boolean): BlockPrints {
  const { stitch, ghost, filled, glyph, corners } = drawing.stitches;
  const prints = { filled: '', stroked: '' };
  for (let n = blocks.start[block]!; n < blocks.start[block + 1]!; n++) {
    const item = blocks.items[n]!;
    const mark = yarns[yarnOf[stitch[item]!] ?? 0]?.mark ?? 'none';
    if (filled[item] === 0 || ghost[item] === 1 || mark === 'none' || mark === 'solid') continue;
    const path = printMark(mark, Array.from(corners.subarray(item * 8, item * 8 + 8)), symbols && glyph[item]! >= 0 ? 'corner' : 'whole');
    prints.filled += path.filled;
    prints.stroked += path.stroked;
  }
  return prints;
}
