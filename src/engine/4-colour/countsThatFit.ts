/** A motif that is to fill a panel with whole repeats. */
export interface FillingMotif {
  /** Stitches of one repeat, and between repeats. */
  readonly width: number;
  readonly gap: number;
}

/** The nearest stitch counts, from a panel's own, that all motifs fill with whole repeats; null where there is none. Both are the panel's own where it fits. */
export interface FittingCounts {
  readonly width: number;
  readonly down: number | null;
  readonly up: number | null;
}

/** The widest panel that is looked at. */
const WIDEST = 100_000;

/**
 * For panels of several sizes at once, the nearest stitch counts that every motif fills exactly, each at least once, between
 * `edge` stitches that are kept beside the motifs (both sides together). On a ring a gap is needed at the seam too.
 * There may be none: 4 stitches without a gap, and 5 with a gap of 1, never end together on a flat panel.
 */
export function countsThatFit(widths: readonly number[], motifs: readonly FillingMotif[], isRing: boolean, edge = 0): readonly FittingCounts[] {
  for (const { width, gap } of motifs) if (!(width >= 1 && gap >= 0)) throw new RangeError(`a motif of ${width} stitches with gaps of ${gap} can't fill a panel`);
  const fits = (count: number) => motifs.every(({ width, gap }) => count - edge >= width && (count - edge + (isRing ? 0 : gap)) % (width + gap) === 0 && (!isRing || count - edge >= width + gap));
  // The pattern of counts that fit repeats after the least common multiple of all steps.
  const period = motifs.reduce((all, { width, gap }) => Math.min(leastCommonMultiple(all, width + gap), WIDEST), 1);
  return widths.map((width) => {
    const least = edge + Math.max(1, ...motifs.map((motif) => motif.width));
    let down: number | null = null;
    for (let count = width; count >= Math.max(least, width - period); count--) {
      if (fits(count)) {
        down = count;
        break;
      }
    }
    let up: number | null = null;
    const from = Math.max(width, least);
    for (let count = from; count <= from + period + least; count++) {
      if (fits(count)) {
        up = count;
        break;
      }
    }
    return { width, down, up };
  });
}

function leastCommonMultiple(a: number, b: number): number {
  let [x, y] = [a, b];
  while (y > 0) [x, y] = [y, x % y];
  return (a / x) * b;
}
