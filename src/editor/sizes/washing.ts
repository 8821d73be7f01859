import type { Swatch } from '../../engine/1-pattern/pieceFacts.ts';

/** What washing does to a fabric: share by which it gets wider and higher (below 0: shrinks). */
export interface Washing {
  readonly before: string;
  readonly after: string;
  readonly wide: number;
  readonly high: number;
}

/** The change from each swatch counted before washing to the last one of the same stitch, technique and yarn counted after it. */
export function washingOf(swatches: readonly Swatch[]): readonly Washing[] {
  return swatches.flatMap((before) => {
    if (before.washed) return [];
    const after = swatches.findLast((one) => one.washed && one.stitch === before.stitch && one.technique === before.technique && one.yarn === before.yarn);
    if (!after) return [];
    return [{
      before: before.id, after: after.id,
      wide: after.widthCm / after.stitches / (before.widthCm / before.stitches) - 1,
      high: after.heightCm / after.rows / (before.heightCm / before.rows) - 1,
    }];
  });
}
