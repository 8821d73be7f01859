import type { Ground } from './ground.ts';
import type { RowPlacing, SlotPlan } from './placeRow.ts';

/** Weight of a stitch without a base in reach. */
const LOOSE = 0.05;

/** Where each slot would like to stand: over its bases, spread where they are shared, between its neighbours where it has none. */
export function rowWishes(ground: Ground, plan: SlotPlan, gap: Float64Array, placing: RowPlacing): { wanted: Float64Array; weight: Float64Array } {
  const count = plan.x.length;
  const wanted = new Float64Array(count);
  const weight = new Float64Array(count).fill(1);
  let before = -1;
  for (let i = 0; i < count; i++) {
    if (Number.isNaN(plan.baseX[i]!)) {
      weight[i] = LOOSE;
      wanted[i] = NaN;
      continue;
    }
    const spread = (plan.share[i]! - (plan.shared[i]! - 1) / 2) * 0.5 * ground.w;
    wanted[i] = plan.baseX[i]! + spread;
    fillBetween(wanted, gap, before, i);
    before = i;
  }
  if (before < 0) {
    if (count > 0) wanted[0] = placing.startX + ground.w / 2;
    before = 0;
    weight.fill(1);
  }
  for (let i = before + 1; i < count; i++) wanted[i] = wanted[i - 1]! + gap[i - 1]!;
  return { wanted, weight };
}

/** Fills the wishes strictly between two anchored slots in proportion to the gaps; before the first anchored one at the gaps. */
function fillBetween(wanted: Float64Array, gap: Float64Array, left: number, right: number): void {
  if (left < 0) {
    for (let i = right - 1; i >= 0; i--) wanted[i] = wanted[i + 1]! - gap[i]!;
    return;
  }
  let whole = 0;
  for (let i = left; i < right; i++) whole += gap[i]!;
  const part = (wanted[right]! - wanted[left]!) / whole;
  for (let i = left + 1; i < right; i++) wanted[i] = wanted[i - 1]! + gap[i - 1]! * part;
}
