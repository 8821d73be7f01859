import type { Ground, IndexedRow } from './ground.ts';
import type { RowSlots } from './rowSlots.ts';
import { spaced } from './spaced.ts';

/** How far a round is drawn towards even spacing, and the least spacing, both as parts of even. */
const EVEN = 0.5;
const LEAST = 0.85;
/** Spread of the stitches that share a base, in even steps. */
const SHARE = 0.9;

/**
 * Angles of a round's slots in working order, rad from the middle of the free strip at its start: over their bases, drawn
 * halfway to even spacing and kept apart by PAVA, so that increases show where they are without crowding. `angles` holds
 * those of the rounds below, by `stitch - first`. A round on the ring itself is spaced evenly. Linear cost.
 */
export function discAngles(ground: Ground, row: IndexedRow, slots: RowSlots, angles: Float64Array, strip: number): Float64Array {
  const order = slots.reversed ? slots.slots.toReversed() : slots.slots;
  const count = order.length;
  const step = (2 * Math.PI - strip) / Math.max(1, count);
  const even = Float64Array.from({ length: count }, (_, k) => strip / 2 + (k + 0.5) * step);
  const wanted = overBases(ground, row, order, angles, step);
  if (!wanted) return even;
  let shift = 0;
  for (let k = 0; k < count; k++) shift += (wanted[k]! - even[k]!) / count;
  const drawn = wanted.map((angle, k) => (1 - EVEN) * angle + EVEN * (even[k]! + shift));
  const apart = spaced(drawn, new Float64Array(count).fill(1), new Float64Array(count - 1).fill(LEAST * step));
  return stretch(apart, even);
}

/** Stretches a round so that it begins and ends at the strip, as all rounds do. */
function stretch(apart: Float64Array, even: Float64Array): Float64Array {
  const last = apart.length - 1;
  if (last < 1 || apart[last]! - apart[0]! < 1e-9) return even;
  const scale = (even[last]! - even[0]!) / (apart[last]! - apart[0]!);
  return apart.map((angle) => even[0]! + (angle - apart[0]!) * scale);
}

/** Mean angle of the bases of each stitch; null where most stand on the ring as a whole. */
function overBases({ fabric, first, placed }: Ground, row: IndexedRow, order: Int32Array, angles: Float64Array, step: number): Float64Array | null {
  const count = order.length;
  const wanted = new Float64Array(count);
  let anchored = 0;
  let run = 0;
  const base = (k: number): number => fabric.bases[fabric.baseStart[order[k]!]!] ?? -1;
  for (let k = 0; k < count; k++) {
    let [sum, found] = [0, 0];
    for (let b = fabric.baseStart[order[k]!]!; b < fabric.baseStart[order[k]! + 1]!; b++) {
      const under = fabric.bases[b]!;
      if (under < first || under >= row.first || !placed[under - first]) continue;
      [sum, found] = [sum + angles[under - first]!, found + 1];
    }
    // What hangs between (chains, stitches round a ring) follows the stitch before it.
    wanted[k] = found > 0 ? sum / found : k > 0 ? wanted[k - 1]! + step : step;
    if (found === 0) continue;
    anchored++;
    run = k > 0 && base(k - 1) === base(k) ? run + 1 : 1;
    if (run * 2 > count && count > 3) return null;
    const last = k + 1 === count || base(k + 1) !== base(k);
    if (last) for (let j = 0; j < run; j++) wanted[k - j]! += ((run - 1) / 2 - j) * SHARE * step;
  }
  return anchored * 2 >= count && count > 0 ? wanted : null;
}
