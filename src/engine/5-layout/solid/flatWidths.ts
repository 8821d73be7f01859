import type { Web, WebRow } from './web.ts';

/** How far the way round may be from 2π times the radius for a piece that is still laid out flat, as by blocking. */
const FLAT: readonly [least: number, most: number] = [0.94, 1.12];
/** Lace gives way: chains hang in corners, and bows of them draw up. */
const FLAT_LACE: readonly [least: number, most: number] = [0.7, 1.7];
/** Share of hanging chains from which a piece is lace. */
const LACE = 0.1;

/** Rounds after the flat ones over which widths go back to the gauge. */
const FADE = 6;

/**
 * The widths that stitches take where rounds worked outwards from a ring or round a chain lie flat by count: the way round each is near
 * 2π times its radius, summed from the heights, and twice the chain (published rules for flat circles, as a ratio), and the fabric gives way by the rest. `flat`
 * where that holds for all rounds; later rounds, as of a cap's sides, go back to their own widths over a few rounds.
 */
export function flatWidths(web: Web, heights: Float64Array): { readonly width: Float64Array; readonly flat: boolean } {
  const { rows, baseStart } = web;
  const width = web.width.slice();
  const start = rows[0];
  const rounds = rows.slice(1);
  if (!start || start.wraps || !rounds.every((row) => row.wraps && baseStart[row.first] !== baseStart[row.end])) return { width, flat: false };
  const sums = rounds.map((row) => sumsOf(web, heights, row));
  const hanging = sums.reduce((sum, each) => sum + each.hanging, 0);
  const [low, high] = hanging > LACE * web.count ? FLAT_LACE : FLAT;
  // Round a chain every round is longer by twice the chain.
  const chain = 2 * (start.end - start.first - 1);
  let radius = 0;
  const ratios = sums.map(({ around, height }) => around / (chain + 2 * Math.PI * (radius += height)));
  // The first round draws together to any size.
  const end = ratios.findIndex((ratio, r) => r > 0 && (ratio < low || ratio > high));
  const flatRounds = end < 0 ? rounds.length : end;
  if (flatRounds < 2) return { width, flat: false };
  rounds.forEach((row, r) => {
    const fade = Math.max(0, 1 - Math.max(0, r + 1 - flatRounds) / FADE);
    const ratio = ratios[Math.min(r, flatRounds - 1)]!;
    for (let i = row.first; i < row.end; i++) width[i] = web.width[i]! / (1 + (ratio - 1) * fade);
  });
  return { width, flat: flatRounds === rounds.length };
}

/** Way round, mean height of the stitches that stand, and chains that hang. */
function sumsOf({ baseStart, width }: Web, heights: Float64Array, { first, end }: WebRow): { around: number; height: number; hanging: number } {
  let around = 0;
  let height = 0;
  let standing = 0;
  for (let i = first; i < end; i++) {
    around += width[i]!;
    if (baseStart[i] === baseStart[i + 1]) continue;
    height += heights[i]!;
    standing++;
  }
  return { around, height: height / Math.max(1, standing), hanging: end - first - standing };
}
