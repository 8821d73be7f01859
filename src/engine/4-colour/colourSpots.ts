import { FLAG, type Fabric } from '../3-fabric/fabric.ts';
import type { ColourGrid } from './colourGrid.ts';
import { columnCount } from './rowColumns.ts';

/**
 * Stitch numbers of lone stitches: those that count and have no stitch of their yarn beside, above, below or at a corner of
 * them. In rows whose sides meet, the ends are beside one another. Linear in stitches.
 */
export function loneStitches(grid: ColourGrid, yarn: Uint8Array): readonly number[] {
  const { fabric, columns, meets } = grid;
  const { flags, baseStart, bases } = fabric;
  const { stitches, start } = columns;
  const hasLike = new Uint8Array(fabric.count);
  const join = (one: number, other: number) => {
    if (one < 0 || other < 0 || one === other || yarn[one] !== yarn[other] || !isCounted(fabric, one) || !isCounted(fabric, other)) return;
    hasLike[one] = 1;
    hasLike[other] = 1;
  };
  // Most stitches have their like beside them; the rows above and below are looked at only where one has not.
  const isAlone = new Uint8Array(fabric.rows.length);
  for (let r = 0; r < fabric.rows.length; r++) {
    const [from, end] = [start[r]!, start[r]! + columnCount(columns, r)];
    for (let i = from + 1; i < end; i++) {
      const [one, other] = [stitches[i - 1]!, stitches[i]!];
      if (yarn[one] === yarn[other] && flags[one]! & flags[other]! & FLAG.counts) hasLike[one] = hasLike[other] = 1;
    }
    if (meets[r] && end - from > 1) join(stitches[end - 1]!, stitches[from]!);
    for (let i = from; i < end; i++) if (!hasLike[stitches[i]!]) isAlone[r] = 1;
  }
  for (let r = 0; r < fabric.rows.length; r++) {
    for (let k = start[r]!; k < start[r]! + columnCount(columns, r); k++) {
      const stitch = stitches[k]!;
      for (let i = baseStart[stitch]!; i < baseStart[stitch + 1]!; i++) {
        const base = bases[i]!;
        if (!isAlone[r] && !isAlone[fabric.row[base]!]) continue;
        join(stitch, base);
        join(stitch, beside(grid, base, -1));
        join(stitch, beside(grid, base, 1));
      }
    }
  }
  const lone: number[] = [];
  for (let stitch = 0; stitch < fabric.count; stitch++) if (!hasLike[stitch] && isCounted(fabric, stitch)) lone.push(stitch);
  return lone;
}

function isCounted(fabric: Fabric, stitch: number): boolean {
  return (fabric.flags[stitch]! & FLAG.counts) !== 0;
}

/** The stitch next to one in its row, -1 if there is none. */
function beside(grid: ColourGrid, stitch: number, step: -1 | 1): number {
  const { columns, fabric, meets } = grid;
  const column = columns.columnOf[stitch]!;
  if (column < 0) return -1;
  const row = fabric.row[stitch]!;
  const width = columnCount(columns, row);
  const at = meets[row] ? (column + step + width) % width : column + step;
  return at < 0 || at >= width ? -1 : columns.stitches[columns.start[row]! + at]!;
}

/** A round whose first stitch is in another yarn than the last stitch of the round before: the colours make a step there. */
export interface Jog {
  /** Fabric row index of the round that begins. */
  readonly row: number;
  readonly section: number;
  /** Worked in a spiral: the round before was not joined. */
  readonly isSpiral: boolean;
}

/** All jogs within sections, in working order. Linear in rows and joins. */
export function jogsInRounds(grid: ColourGrid, yarn: Uint8Array): readonly Jog[] {
  const { fabric, columns } = grid;
  const jogs: Jog[] = [];
  let before = -1;
  for (const [r, row] of fabric.rows.entries()) {
    const width = columnCount(columns, r);
    if (width === 0) continue;
    if (before >= 0 && row.round && fabric.rows[before]!.round && fabric.rows[before]!.section === row.section) {
      const last = columns.stitches[columns.start[before]! + (fabric.rows[before]!.direction === 1 ? columnCount(columns, before) - 1 : 0)]!;
      const first = columns.stitches[columns.start[r]! + (row.direction === 1 ? 0 : width - 1)]!;
      if (yarn[last] !== yarn[first]) jogs.push({ row: r, section: row.section, isSpiral: !isJoined(grid, before) });
    }
    before = r;
  }
  return jogs;
}

function isJoined({ fabric }: ColourGrid, row: number): boolean {
  const { end } = fabric.rows[row]!;
  return (fabric.flags[end - 1]! & FLAG.join) !== 0;
}
