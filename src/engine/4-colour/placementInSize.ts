import type { Placement } from '../1-pattern/pattern.ts';

/** A placement with the settings of one size in the place of the common ones; null where it is left out of that size, or hidden. */
export function placementInSize(placement: Placement, size: number): Placement | null {
  if (placement.hidden) return null;
  const own = placement.bySize?.[size];
  if (!own) return placement;
  const { leftOut, rowsUp: _, ...settings } = own;
  return leftOut ? null : { ...placement, ...settings };
}

/** Rows that a placement's bottom row lies higher in one size than the row it is laid on. */
export function rowsUpInSize(placement: Placement, size: number): number {
  return placement.bySize?.[size]?.rowsUp ?? 0;
}
