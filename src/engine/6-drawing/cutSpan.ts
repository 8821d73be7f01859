/** A stretch of the chart along one axis. */
export type Span = readonly [from: number, to: number];

/**
 * Cuts `[from, to]` into stretches no longer than `most`, ending at boundaries wherever one is in reach; each stretch begins
 * `overlap` before the last one's end. `boundaries` ascend. A chart without boundaries is cut where the paper ends.
 */
export function cutSpan(from: number, to: number, most: number, overlap: number, boundaries: readonly number[]): Span[] {
  if (!(most > overlap)) throw new RangeError(`stretches of ${most} mm can't overlap by ${overlap} mm`);
  const spans: Span[] = [];
  let start = from;
  while (to - start > most + 1e-6) {
    let end = start + most;
    // At least half a sheet is used, and every sheet brings something new.
    const least = start + Math.max(overlap * 1.5, most / 2);
    for (const boundary of boundaries) if (boundary >= least - 1e-6 && boundary <= start + most + 1e-6) end = boundary;
    spans.push([start, end]);
    start = end - overlap;
  }
  spans.push([start, to]);
  return spans;
}
