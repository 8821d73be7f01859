/** A number as the reader's own browser writes it, with so many places, or from `least` on no more than it needs. Thousands stay together. */
export function readerFigure(value: number, places: number, least = places): string {
  return value.toLocaleString(undefined, { minimumFractionDigits: least, maximumFractionDigits: places, useGrouping: false });
}
