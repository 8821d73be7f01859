import type { Motif } from '../1-pattern/pattern.ts';
import { changeGrids, cropMotif } from './motifs.ts';

/** A rectangle of a motif's cells: its top left cell and its size. */
export interface MotifPart {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

/**
 * A part of a motif with something done to it (mirrored, flipped, inverted, a yarn replaced: anything that keeps its size), the
 * rest as it was. Refuses a part that is not within the motif, and a change of its size.
 */
export function changePart(motif: Motif, part: MotifPart, change: (part: Motif) => Motif): Motif {
  const changed = change(cropMotif(motif, part.x, part.y, part.width, part.height));
  if (changed.cells.length !== part.height || changed.cells[0]!.length !== part.width) throw new RangeError(`a part of ${part.width} × ${part.height} came back as ${changed.cells[0]!.length} × ${changed.cells.length}`);
  const laid = (rows: readonly string[], inner: readonly string[]) => rows.map((row, y) => (inner[y - part.y] === undefined ? row : row.slice(0, part.x) + inner[y - part.y]! + row.slice(part.x + part.width)));
  return { ...motif, cells: laid(motif.cells, changed.cells), ...(motif.stitches ? { stitches: laid(motif.stitches, changed.stitches ?? changed.cells.map((row) => '.'.repeat(row.length))) } : {}) };
}

/**
 * A motif laid over another one with its top left cell at `x`, `y`: cells with a yarn cover, `.` lets through, and what
 * lies beyond the edges is cut. A stitch that is set covers too; a yarn alone leaves the stitch below.
 */
export function layPart(motif: Motif, part: Motif, x: number, y: number): Motif {
  const empty = motif.cells.map((row) => '.'.repeat(row.length));
  const cells = over(motif.cells, part.cells, x, y);
  if (!motif.stitches && !part.stitches) return { ...motif, cells };
  return { ...motif, cells, stitches: over(motif.stitches ?? empty, part.stitches ?? [], x, y) };
}

function over(below: readonly string[], above: readonly string[], x: number, y: number): readonly string[] {
  return below.map((row, at) => {
    const laid = above[at - y];
    if (laid === undefined) return row;
    return Array.from(row, (letter, column) => {
      const top = laid[column - x] ?? '.';
      return top === '.' ? letter : top;
    }).join('');
  });
}

/** A part taken from where it is (its cells left empty there) or copied, and laid with its top left cell at `x`, `y`. */
export function movePart(motif: Motif, part: MotifPart, x: number, y: number, isCopy: boolean): Motif {
  const taken = cropMotif(motif, part.x, part.y, part.width, part.height);
  const left = isCopy ? motif : changePart(motif, part, (one) => changeGrids(one, (rows) => rows.map((row) => '.'.repeat(row.length))));
  return layPart(left, taken, x, y);
}
