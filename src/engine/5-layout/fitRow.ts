import { spaced } from './spaced.ts';

/** How strongly neighbours pull each other to one stitch width: 0 keeps columns, large values give rigid rows. */
const PULL = 0.6;

/** A stitch that is pulled by less than this part of its gap stays over its base. */
const COLUMN = 0.06;

/**
 * Positions along one row, from where its stitches would like to stand (`wanted`, mm, left to right).
 *
 * Two steps: an elastic row, `min Σ weight (x - wanted)² + PULL Σ (x[i+1] - x[i] - gap[i])²` (a tridiagonal system, solved by the
 * Thomas algorithm; L. H. Thomas 1949), which closes the hole a decrease leaves; then the nearest positions that keep
 * the gaps. A row that already stands at its gaps is returned as it is, to the last bit. Linear cost.
 */
export function fitRow(wanted: Float64Array, weight: Float64Array, gap: Float64Array, least: Float64Array = gap): Float64Array {
  const count = wanted.length;
  if (count < 2 || standsAtGaps(wanted, gap)) return wanted.slice();
  const pulled = elastic(wanted, weight, gap);
  // The pull dies away along the row; where it is hardly seen, columns stay exact.
  for (let i = 0; i < count; i++) if (Math.abs(pulled[i]! - wanted[i]!) < COLUMN * gap[Math.min(i, count - 2)]!) pulled[i] = wanted[i]!;
  return spaced(pulled, weight, least);
}

function standsAtGaps(wanted: Float64Array, gap: Float64Array): boolean {
  for (let i = 0; i < gap.length; i++) {
    if (Math.abs(wanted[i + 1]! - wanted[i]! - gap[i]!) > 1e-9) return false;
  }
  return true;
}

function elastic(wanted: Float64Array, weight: Float64Array, gap: Float64Array): Float64Array {
  const count = wanted.length;
  const upper = new Float64Array(count);
  const x = new Float64Array(count);
  for (let i = 0; i < count; i++) {
    const left = i > 0 ? PULL : 0;
    const right = i < count - 1 ? PULL : 0;
    const side = weight[i]! * wanted[i]! + left * (gap[i - 1] ?? 0) - right * (gap[i] ?? 0);
    const pivot = weight[i]! + left + right + left * (upper[i - 1] ?? 0);
    upper[i] = -right / pivot;
    x[i] = (side + left * (x[i - 1] ?? 0)) / pivot;
  }
  for (let i = count - 2; i >= 0; i--) x[i]! -= upper[i]! * x[i + 1]!;
  return x;
}
