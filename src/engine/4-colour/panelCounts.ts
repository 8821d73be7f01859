import type { Pattern } from '../1-pattern/pattern.ts';
import type { ColourGrid } from './colourGrid.ts';
import { countsThatFit, type FittingCounts } from './countsThatFit.ts';
import { placementInSize } from './placementInSize.ts';
import { placementLie } from './placementLie.ts';

/** How the panel of one size would have to be for its motifs to come out even. */
export interface PanelCount extends FittingCounts {
  readonly size: number;
  /** Whether the sides of the panel meet. */
  readonly isRing: boolean;
}

/**
 * For every size at once, the nearest stitch counts that would be filled exactly by all motifs that fill the width of a
 * section (`across: 'fill'`), or by those named. `grids` by size index; sizes in which none of them lies are left out.
 * `edge` stitches stay beside the motifs.
 */
export function panelCounts(pattern: Pattern, grids: readonly ColourGrid[], section: string, placements: readonly string[] | null = null, edge = 0): readonly PanelCount[] {
  return grids.flatMap((grid, size): readonly PanelCount[] => {
    const lies = pattern.placements.flatMap((whole) => {
      const one = whole.section === section && (placements === null || placements.includes(whole.id)) ? placementInSize(whole, size) : null;
      const motif = one && (one.across === 'fill' || placements !== null) ? pattern.motifs.find((other) => other.id === one.motif) : null;
      const lie = one && motif && placementLie(one, motif, grid, size);
      return lie ? [lie] : [];
    });
    const widest = lies.reduce((most, lie) => Math.max(most, lie.width), 0);
    const isRing = lies.some((lie) => grid.meets[lie.rows[0]!]);
    if (lies.length === 0) return [];
    const motifs = lies.map((lie) => ({ width: lie.motif.cells[0]!.length, gap: lie.placement.gap }));
    return countsThatFit([widest], motifs, isRing, edge).map((counts) => ({ ...counts, size, isRing }));
  });
}
