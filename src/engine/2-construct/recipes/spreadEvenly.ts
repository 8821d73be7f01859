/**
 * `total` split into `parts` whole numbers as even as can be: they differ by one at most, and no running sum strays more
 * than half a unit from an even line, so that the longer parts lie evenly among the others (Bresenham's rule). The usual
 * sum for spacing increases is the same: stitches divided by changes, the rest one more each. Refuses numbers that are
 * not whole, and fewer than one part.
 */
export function spreadEvenly(total: number, parts: number): readonly number[] {
  if (!Number.isInteger(total) || total < 0) throw new RangeError(`${total} to be spread, expected a whole number of 0 or more`);
  if (!Number.isInteger(parts) || parts < 1) throw new RangeError(`${parts} parts, expected 1 or more`);
  const sumTo = (part: number) => Math.floor((2 * part * total + parts) / (2 * parts));
  return Array.from({ length: parts }, (_, i) => sumTo(i + 1) - sumTo(i));
}

/** Rows 0 … `rows` − 1 on which `events` fall, as even as can be, half a gap before the first and after the last. Refuses more events than rows. */
export function eventRows(rows: number, events: number): readonly number[] {
  if (events > rows) throw new RangeError(`${events} events in ${rows} rows`);
  return Array.from({ length: events }, (_, i) => Math.floor(((2 * i + 1) * rows) / (2 * events)));
}
