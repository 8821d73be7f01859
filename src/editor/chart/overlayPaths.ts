import type { Drawing } from '../../engine/6-drawing/drawing.ts';
import { fillPath } from './fillPaths.ts';
import { UNITS_PER_MM } from './pathUnits.ts';

/** Outline of the cells of some stitches; neighbours of a row share one. Stitches that are not drawn are left out. */
export function cellsPath(drawing: Drawing, itemOf: Int32Array, stitches: ArrayLike<number>, growMm = 0): string {
  const items: number[] = [];
  for (let i = 0; i < stitches.length; i++) {
    const item = itemOf[stitches[i]!] ?? -1;
    if (item >= 0) items.push(item);
  }
  items.sort((a, b) => a - b);
  return fillPath(drawing, items, 0, items.length, { growMm, toleranceMm: 0.01, merge: true });
}

/** Outline of a row's cells, ghosts left out. */
export function rowPath(drawing: Drawing, row: number): string {
  const { count, row: rowOf, ghost } = drawing.stitches;
  const items: number[] = [];
  for (let i = 0; i < count; i++) if (rowOf[i] === row && ghost[i] === 0) items.push(i);
  return fillPath(drawing, items, 0, items.length, { growMm: 0, toleranceMm: 0.01, merge: true });
}

/** A corner flag on each stitch, seen on any colour by its shape. */
export function flagsPath(drawing: Drawing, itemOf: Int32Array, stitches: readonly number[]): string {
  const { corners } = drawing.stitches;
  let d = '';
  for (const stitch of stitches) {
    const item = itemOf[stitch] ?? -1;
    if (item < 0) continue;
    const [topRight, topLeft, bottomRight] = [4, 6, 2].map((c) => [corners[item * 8 + c]!, corners[item * 8 + c + 1]!] as const);
    const along = ([x, y]: readonly [number, number], part: number): string =>
      `${Math.round((topRight![0] + (x - topRight![0]) * part) * UNITS_PER_MM)} ${Math.round((topRight![1] + (y - topRight![1]) * part) * UNITS_PER_MM)}`;
    d += `M${along(topRight!, 0)}L${along(topLeft!, 0.5)}L${along(bottomRight!, 0.5)}z`;
  }
  return d;
}

/** Cells to be shown in other yarns, cut into patches so that a growing stroke changes few of them. */
export interface GhostPath {
  readonly key: string;
  readonly yarn: number;
  readonly d: string;
}

/** Cells along the side of a patch. */
const PATCH_CELLS = 16;

/** One path a patch and yarn for cells laid over the chart: a motif's ghost, a brush stroke. */
export function ghostPaths(drawing: Drawing, itemOf: Int32Array, cells: readonly { readonly stitch: number; readonly yarn: number }[], growMm: number): GhostPath[] {
  const { x, y } = drawing.stitches;
  const sideMm = PATCH_CELLS * drawing.cellWidthMm;
  const groups = new Map<string, { yarn: number; items: number[] }>();
  for (const { stitch, yarn } of cells) {
    const item = itemOf[stitch] ?? -1;
    if (item < 0) continue;
    const key = `${Math.floor(x[item]! / sideMm)} ${Math.floor(y[item]! / sideMm)} ${yarn}`;
    const group = groups.get(key);
    if (group) group.items.push(item);
    else groups.set(key, { yarn, items: [item] });
  }
  return [...groups].map(([key, { yarn, items }]) => {
    items.sort((a, b) => a - b);
    return { key, yarn, d: fillPath(drawing, items, 0, items.length, { growMm, toleranceMm: 0.02, merge: true }) };
  });
}
