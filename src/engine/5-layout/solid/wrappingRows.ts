import { stitchCode } from '../../craft/stitches.ts';
import { FLAG } from '../../3-fabric/fabric.ts';
import type { Fabric } from '../../3-fabric/fabric.ts';
import type { Strand } from './strands.ts';

const SLIP = stitchCode('slst');

/**
 * Which strands meet their own start: rounds, rows closed by a join, rows whose side edges are sewn together later, and the
 * foundation under a round that doesn't go round the chain's other side.
 */
export function wrappingRows(fabric: Fabric, strands: readonly Strand[]): boolean[] {
  const sewn = sewnRows(fabric);
  const wraps = strands.map((strand) => !strand.centre && (goesRound(fabric, strand.row) || sewn.has(strand.row) || isJoined(fabric, strand.row)));
  strands.forEach((strand, s) => {
    const above = strands[s + 1];
    if (!above || strand.centre || fabric.rows[strand.row]!.word !== 'foundation') return;
    const bothSides = above.stitches.some((stitch) => fabric.flags[stitch]! & FLAG.otherSide);
    wraps[s] = !bothSides && (wraps[s]! || wraps[s + 1]! || fabric.rows[strand.row]!.ring);
  });
  return wraps;
}

/** A round that covers the ring: one that stops early, to begin the next elsewhere, is a row. */
function goesRound(fabric: Fabric, row: number): boolean {
  const { round, placed, open } = fabric.rows[row]!;
  return round && placed >= 0.75 * open;
}

/** Rows below a seam: sewing the side edges closes every row that reaches from edge to edge, down to the foundation. */
function sewnRows(fabric: Fabric): Set<number> {
  const sewn = new Set<number>();
  for (const seam of fabric.seams) {
    for (let row = seam.row; row >= 0; row = fabric.rows[row]!.below) {
      const { left } = fabric.rows[row]!;
      if (left.ahead + left.behind === 0) sewn.add(row);
    }
  }
  return sewn;
}

function isJoined(fabric: Fabric, row: number): boolean {
  const { first, end, word } = fabric.rows[row]!;
  if (word === 'foundation') return false;
  for (let stitch = first; stitch < end; stitch++) {
    if (fabric.kind[stitch] === SLIP && fabric.flags[stitch]! & FLAG.join) return true;
  }
  return false;
}
