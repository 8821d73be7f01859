import type { Motif, Placement } from '../1-pattern/pattern.ts';

/**
 * The strip that a motif makes as it is placed: one period of its repeats along the row with their gap, two where every
 * second one is mirrored, so that `friezeOf` names the group of the strip and not of the motif alone. Moved and spread
 * repeats, and those going up, are not looked at.
 */
export function placedStrip(motif: Motif, { gap, mirror }: Pick<Placement, 'gap' | 'mirror'>): Pick<Motif, 'cells' | 'stitches'> {
  const strip = (rows: readonly string[]) => rows.map((row) => row + '.'.repeat(gap) + (mirror ? [...row].reverse().join('') + '.'.repeat(gap) : ''));
  return { cells: strip(motif.cells), ...(motif.stitches ? { stitches: strip(motif.stitches) } : {}) };
}
