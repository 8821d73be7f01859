import { stitchRow, type StitchKind } from '../../craft/stitches.ts';

/** Chains for a foundation and the one that the first stitch goes into. */
export interface FoundationChains {
  readonly chains: number;
  /** Nth chain from the hook. */
  readonly nth: number;
}

/**
 * The foundation chain for `stitches` stitches: where the turning chain counts it stands for the first of them, so one chain
 * fewer is made. A turning chain of single crochet never counts. (Published lessons: half double crochet n + 1 and the 3rd chain
 * or n + 2 and the 3rd, double crochet n + 2 and the 4th or n + 3 and the 4th, treble n + 3 or n + 4 and the 5th.)
 */
export function foundationChains(stitch: StitchKind, stitches: number, turningCounts: boolean): FoundationChains {
  const row = stitchRow(stitch);
  const counts = turningCounts && row.turningChainCounts !== 'no';
  return { chains: stitches + row.turningChains - (counts ? 1 : 0), nth: row.turningChains + 1 };
}
