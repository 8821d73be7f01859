import type { Origin } from '../../engine/2-construct/recipes/origin.ts';

/** What heeding a motif costs a size: stitches more or fewer than the measurements alone would give. */
export interface MotifPrice {
  readonly size: number;
  readonly without: number;
  readonly stitches: number;
  readonly differenceCm: number;
}

const COUNTS = ['around', 'width.stitches'] as const;

/** The price of the motif in every size that has one. `stitchesPerCm` is the gauge that the piece was reckoned by. */
export function motifPrices(numbers: readonly ReadonlyMap<string, Origin>[], stitchesPerCm: number): readonly MotifPrice[] {
  return numbers.flatMap((origins, size) => {
    const key = COUNTS.find((one) => origins.has(one));
    const without = key && (origins.get('around.withoutMotif') ?? origins.get('width.withoutMotif'));
    if (!key || !without) return [];
    const stitches = origins.get(key)!.value;
    return [{ size, without: without.value, stitches, differenceCm: (stitches - without.value) / stitchesPerCm }];
  });
}
