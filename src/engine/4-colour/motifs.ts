import { LIMITS } from '../1-pattern/limits.ts';
import type { Motif } from '../1-pattern/pattern.ts';

/*
 * What can be done to a motif as a whole. Each gives a new motif of the same id and name; columns count from the left, rows
 * from the top, as the motif is drawn. The stitches that a motif sets go along with its cells.
 */

type Rows = readonly string[];

/** A motif with its cells, and its stitches if it sets any, changed in the same way. */
export function changeGrids(motif: Motif, change: (rows: Rows) => Rows): Motif {
  return { ...motif, cells: change(motif.cells), ...(motif.stitches ? { stitches: change(motif.stitches) } : {}) };
}

/** Left and right changed over. */
export function mirrorMotif(motif: Motif): Motif {
  return changeGrids(motif, mirrored);
}

/** Top and bottom changed over. */
export function flipMotif(motif: Motif): Motif {
  return changeGrids(motif, flipped);
}

/** Turned a quarter clockwise: the left column becomes the top row. */
export function turnMotif(motif: Motif): Motif {
  return changeGrids(motif, (rows) => Array.from(rows[0]!, (_, x) => [...rows].reverse().map((row) => row[x]).join('')));
}

/** The part of `width` × `height` cells whose top left cell is at `x`, `y`. Refuses a part that is empty or not within the motif. */
export function cropMotif(motif: Motif, x: number, y: number, width: number, height: number): Motif {
  const across = motif.cells[0]!.length;
  const up = motif.cells.length;
  if (!(x >= 0 && width >= 1 && x + width <= across)) throw new RangeError(`columns ${x} to ${x + width} asked of a motif of ${across} columns`);
  if (!(y >= 0 && height >= 1 && y + height <= up)) throw new RangeError(`rows ${y} to ${y + height} asked of a motif of ${up} rows`);
  return changeGrids(motif, (rows) => rows.slice(y, y + height).map((row) => row.slice(x, x + width)));
}

/** The motif with columns and rows added on its sides, filled with the yarn `fill`. Refuses to pass the greatest side of a motif. */
export function widenMotif(motif: Motif, more: { readonly left?: number; readonly right?: number; readonly top?: number; readonly bottom?: number }, fill = '.'): Motif {
  const { left = 0, right = 0, top = 0, bottom = 0 } = more;
  const across = left + motif.cells[0]!.length + right;
  const up = top + motif.cells.length + bottom;
  if (!(Math.min(left, right, top, bottom) >= 0)) throw new RangeError(`a motif is widened by 0 or more, not by ${Math.min(left, right, top, bottom)}`);
  fitsIn(across, up);
  const widened = (rows: Rows, letter: string): Rows => {
    const empty = letter.repeat(across);
    return [...Array.from({ length: top }, () => empty), ...rows.map((row) => letter.repeat(left) + row + letter.repeat(right)), ...Array.from({ length: bottom }, () => empty)];
  };
  return { ...motif, cells: widened(motif.cells, fill), ...(motif.stitches ? { stitches: widened(motif.stitches, '.') } : {}) };
}

/** Two yarns changed over. `.` counts as a yarn here, so that a ground can be drawn in and taken out. */
export function invertMotif(motif: Motif, one: string, other: string): Motif {
  return { ...motif, cells: motif.cells.map((row) => Array.from(row, (letter) => (letter === one ? other : letter === other ? one : letter)).join('')) };
}

/** Every cell of a yarn drawn in another one. */
export function replaceYarn(motif: Motif, from: string, to: string): Motif {
  return { ...motif, cells: motif.cells.map((row) => row.replaceAll(from, to)) };
}

/** Two copies side by side, the right one half the height lower and closed over top and bottom: a half-drop repeat. An odd row over goes to the top. */
export function halfDropMotif(motif: Motif): Motif {
  return allOverMotif(motif, 'halfDrop');
}

/** How an all-over repeat is made of one motif. */
export type AllOver =
  /** Beside it mirrored; above it flipped; or both, four in all. */
  | 'mirror'
  | 'flip'
  | 'mirrorBoth'
  /** Beside it turned half round. */
  | 'turn'
  /** Beside it half the height lower; above it half the width to the right. Closed over the edges. */
  | 'halfDrop'
  | 'brick';

/** The repeat that covers a ground when one motif is mirrored, turned or moved. Refuses to pass the greatest side of a motif. */
export function allOverMotif(motif: Motif, way: AllOver): Motif {
  const isTwice = way !== 'flip' && way !== 'brick';
  fitsIn(motif.cells[0]!.length * (isTwice ? 2 : 1), motif.cells.length * (isTwice && way !== 'mirrorBoth' ? 1 : 2));
  return changeGrids(motif, (rows) => allOver(rows, way));
}

function allOver(rows: Rows, way: AllOver): Rows {
  switch (way) {
    case 'mirror':
      return beside(rows, mirrored(rows));
    case 'flip':
      return [...flipped(rows), ...rows];
    case 'mirrorBoth':
      return allOver(allOver(rows, 'mirror'), 'flip');
    case 'turn':
      return beside(rows, mirrored(flipped(rows)));
    case 'halfDrop': {
      const drop = Math.floor(rows.length / 2);
      return beside(rows, rows.map((_, y) => rows[(y - drop + rows.length) % rows.length]!));
    }
    case 'brick': {
      const across = rows[0]!.length;
      const shift = across - Math.floor(across / 2);
      return [...rows.map((row) => row.slice(shift) + row.slice(0, shift)), ...rows];
    }
  }
}

function mirrored(rows: Rows): Rows {
  return rows.map((row) => [...row].reverse().join(''));
}

function flipped(rows: Rows): Rows {
  return [...rows].reverse();
}

function beside(left: Rows, right: Rows): Rows {
  return left.map((row, y) => row + right[y]!);
}

function fitsIn(across: number, up: number): void {
  if (Math.max(across, up) > LIMITS.motifSide) throw new RangeError(`a motif of ${across} × ${up} asked for, ${LIMITS.motifSide} is the most`);
}
