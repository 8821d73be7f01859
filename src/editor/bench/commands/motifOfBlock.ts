import { LIMITS } from '../../../engine/1-pattern/limits.ts';
import type { BenchState, Command } from '../benchState.ts';
import { addMotif } from './addMotif.ts';
import { copyBlock } from './stitchBlock.ts';

/** Makes a motif of the block of stitches between two corners, in the yarns that they are seen in. None where there is no block, or one larger than a motif may be. */
export function motifOfBlock(from: number, to: number, id: string, name: string): Command {
  return (state: BenchState) => {
    const block = copyBlock(state, from, to);
    const wide = Math.max(0, ...(block?.rows.map((row) => row.length) ?? []));
    if (!block || wide === 0 || wide > LIMITS.motifSide || block.rows.length > LIMITS.motifSide) return null;
    const cells = block.rows.map((row) => row.padEnd(wide, '.')).reverse();
    return cells.every((row) => /^\.*$/.test(row)) ? null : addMotif({ id, name, cells })(state);
  };
}
