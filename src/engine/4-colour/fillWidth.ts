/** How often a motif goes into a width, and what is left: the numbers of "5 repeats, 3 stitches left over — nearest 40 or 45". */
export interface FilledWidth {
  readonly repeats: number;
  readonly leftOver: number;
  /** Nearest stitch counts that whole repeats fill exactly: `down` is at most the width (0 if not even one fits), `up` at least. Both are the width itself where nothing is left. */
  readonly nearest: { readonly down: number; readonly up: number };
}

/**
 * Fills `width` stitches with whole repeats of `motifWidth` stitches, `gap` stitches apart. With `isRing` the sides meet,
 * so that a gap is needed at the seam too for the repeats to be even all the way round.
 */
export function fillWidth(width: number, motifWidth: number, gap: number, isRing: boolean): FilledWidth {
  if (!(width >= 0) || !(motifWidth >= 1) || !(gap >= 0)) throw new RangeError(`a motif of ${motifWidth} stitches with gaps of ${gap} can't fill ${width}`);
  const step = motifWidth + gap;
  const repeats = Math.floor((width + gap) / step);
  const leftOver = repeats === 0 ? width : width - repeats * step + gap;
  // Counts that fill exactly: k steps on a ring, k steps less the last gap on a flat row.
  const lost = isRing ? 0 : gap;
  const down = Math.floor((width + lost) / step);
  const up = Math.max(Math.ceil((width + lost) / step), 1);
  return { repeats, leftOver, nearest: { down: down === 0 ? 0 : down * step - lost, up: up * step - lost } };
}
