import type { FriezeGroup } from '../craft/friezeGroups.ts';
import type { Motif } from '../1-pattern/pattern.ts';
import { friezeImages, isFriezePossible } from './friezeStrip.ts';
import type { MotifPoint } from './motifPoints.ts';

/** What drawing repeats elsewhere in the motif. */
export type Symmetry =
  | 'none'
  /** Mirrored left and right, top and bottom, both ways; turned half round the middle. */
  | 'leftRight'
  | 'topBottom'
  | 'four'
  | 'turned'
  /** Half a motif across and half a motif down, closed over the edges. */
  | 'halfDrop'
  /** As a strip of one of the seven groups; `axis` in half stitches, see `friezeImages`. */
  | { readonly group: FriezeGroup; readonly axis: number };

/** Whether a motif of that size can have a symmetry: half-drops and glides need even sides. */
export function isSymmetryPossible(motif: Motif, symmetry: Symmetry): boolean {
  const across = motif.cells[0]!.length;
  if (symmetry === 'halfDrop') return across % 2 === 0 && motif.cells.length % 2 === 0;
  return typeof symmetry === 'string' || isFriezePossible(symmetry.group, across);
}

/** Cells drawn in a yarn (`.` for none), with their images by symmetry. Points outside the motif are passed over. A symmetry that is not possible draws the points alone. */
export function drawCells(motif: Motif, points: readonly MotifPoint[], letter: string, symmetry: Symmetry = 'none'): Motif {
  return { ...motif, cells: drawn(motif, motif.cells, points, letter, symmetry) };
}

/** Stitches set (a letter of `STITCH_OVERRIDES`) or taken off (`.`), with their images. A motif that sets none any more has no grid of them. */
export function drawStitches(motif: Motif, points: readonly MotifPoint[], letter: string, symmetry: Symmetry = 'none'): Motif {
  const { stitches = motif.cells.map((row) => '.'.repeat(row.length)), ...rest } = motif;
  const after = drawn(motif, stitches, points, letter, symmetry);
  return after.some((row) => /[^.]/.test(row)) ? { ...rest, stitches: after } : rest;
}

function drawn(motif: Motif, grid: readonly string[], points: readonly MotifPoint[], letter: string, symmetry: Symmetry): readonly string[] {
  const across = motif.cells[0]!.length;
  const up = motif.cells.length;
  const rows = grid.map((row) => [...row]);
  const isPossible = isSymmetryPossible(motif, symmetry);
  for (const point of points) {
    // Only points within the motif have images: those outside would come in on another side.
    if (rows[point.y]?.[point.x] === undefined) continue;
    for (const { x, y } of isPossible ? images(point, across, up, symmetry) : [point]) rows[y]![x] = letter;
  }
  return rows.map((row) => row.join(''));
}

function images(point: MotifPoint, across: number, up: number, symmetry: Symmetry): readonly MotifPoint[] {
  const { x, y } = point;
  const mirrored = { x: across - 1 - x, y };
  const flipped = { x, y: up - 1 - y };
  const turned = { x: across - 1 - x, y: up - 1 - y };
  switch (symmetry) {
    case 'none':
      return [point];
    case 'leftRight':
      return [point, mirrored];
    case 'topBottom':
      return [point, flipped];
    case 'four':
      return [point, mirrored, flipped, turned];
    case 'turned':
      return [point, turned];
    case 'halfDrop':
      return [point, { x: (x + across / 2) % across, y: (y + up / 2) % up }];
    default:
      return friezeImages(symmetry.group, across, up, symmetry.axis, point);
  }
}
