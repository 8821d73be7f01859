import { LIMITS } from '../1-pattern/limits.ts';
import type { Motif } from '../1-pattern/pattern.ts';

/*
 * What can be done to a motif. Each gives a new motif of the same id and name; columns count from the left, rows from the
 * top, as the motif is drawn.
 */

/** A cell of a motif: column from the left, row from the top. */
export interface MotifPoint {
  readonly x: number;
  readonly y: number;
}

/** What drawing repeats on the other side: left and right, top and bottom, all four, or turned half round the middle. */
export type Symmetry = 'none' | 'leftRight' | 'topBottom' | 'four' | 'turned';

/** Left and right changed over. */
export function mirrorMotif(motif: Motif): Motif {
  return { ...motif, cells: motif.cells.map((row) => [...row].reverse().join('')) };
}

/** Top and bottom changed over. */
export function flipMotif(motif: Motif): Motif {
  return { ...motif, cells: [...motif.cells].reverse() };
}

/** Turned a quarter clockwise: the left column becomes the top row. */
export function turnMotif(motif: Motif): Motif {
  const { cells } = motif;
  return { ...motif, cells: Array.from(cells[0]!, (_, x) => [...cells].reverse().map((row) => row[x]).join('')) };
}

/** The part of `width` × `height` cells whose top left cell is at `x`, `y`. Refuses a part that is empty or not within the motif. */
export function cropMotif(motif: Motif, x: number, y: number, width: number, height: number): Motif {
  const across = motif.cells[0]!.length;
  const up = motif.cells.length;
  if (!(x >= 0 && width >= 1 && x + width <= across)) throw new RangeError(`columns ${x} to ${x + width} asked of a motif of ${across} columns`);
  if (!(y >= 0 && height >= 1 && y + height <= up)) throw new RangeError(`rows ${y} to ${y + height} asked of a motif of ${up} rows`);
  return { ...motif, cells: motif.cells.slice(y, y + height).map((row) => row.slice(x, x + width)) };
}

/** The motif with columns and rows added on its sides, filled with `fill`. Refuses to pass the greatest side of a motif. */
export function widenMotif(motif: Motif, more: { readonly left?: number; readonly right?: number; readonly top?: number; readonly bottom?: number }, fill = '.'): Motif {
  const { left = 0, right = 0, top = 0, bottom = 0 } = more;
  const across = left + motif.cells[0]!.length + right;
  const up = top + motif.cells.length + bottom;
  if (!(Math.min(left, right, top, bottom) >= 0)) throw new RangeError(`a motif is widened by 0 or more, not by ${Math.min(left, right, top, bottom)}`);
  if (Math.max(across, up) > LIMITS.motifSide) throw new RangeError(`a motif of ${across} × ${up} asked for, ${LIMITS.motifSide} is the most`);
  const empty = fill.repeat(across);
  const rows = motif.cells.map((row) => fill.repeat(left) + row + fill.repeat(right));
  return { ...motif, cells: [...Array.from({ length: top }, () => empty), ...rows, ...Array.from({ length: bottom }, () => empty)] };
}

/** Two yarns changed over. `.` counts as a yarn here, so that a ground can be drawn in and taken out. */
export function invertMotif(motif: Motif, one: string, other: string): Motif {
  return { ...motif, cells: motif.cells.map((row) => Array.from(row, (letter) => (letter === one ? other : letter === other ? one : letter)).join('')) };
}

/** Every cell of a yarn drawn in another one. */
export function replaceYarn(motif: Motif, from: string, to: string): Motif {
  return { ...motif, cells: motif.cells.map((row) => row.replaceAll(from, to)) };
}

/** Cells drawn in a yarn (`.` for none), with their images by symmetry. Points outside the motif are passed over. */
export function drawCells(motif: Motif, points: readonly MotifPoint[], letter: string, symmetry: Symmetry = 'none'): Motif {
  const right = motif.cells[0]!.length - 1;
  const bottom = motif.cells.length - 1;
  const rows = motif.cells.map((row) => [...row]);
  for (const point of points) {
    for (const { x, y } of images(point, right, bottom, symmetry)) if (rows[y]?.[x] !== undefined) rows[y]![x] = letter;
  }
  return { ...motif, cells: rows.map((row) => row.join('')) };
}

function images({ x, y }: MotifPoint, right: number, bottom: number, symmetry: Symmetry): readonly MotifPoint[] {
  const mirrored = { x: right - x, y };
  const flipped = { x, y: bottom - y };
  const turned = { x: right - x, y: bottom - y };
  switch (symmetry) {
    case 'none':
      return [{ x, y }];
    case 'leftRight':
      return [{ x, y }, mirrored];
    case 'topBottom':
      return [{ x, y }, flipped];
    case 'four':
      return [{ x, y }, mirrored, flipped, turned];
    case 'turned':
      return [{ x, y }, turned];
  }
}

/** Two copies side by side, the right one half the height lower and closed over top and bottom: a half-drop repeat. An odd row over goes to the top. */
export function halfDropMotif(motif: Motif): Motif {
  const { cells } = motif;
  const across = cells[0]!.length * 2;
  if (across > LIMITS.motifSide) throw new RangeError(`a motif of ${across} columns asked for, ${LIMITS.motifSide} is the most`);
  const drop = Math.floor(cells.length / 2);
  return { ...motif, cells: cells.map((row, y) => row + cells[(y - drop + cells.length) % cells.length]!) };
}
