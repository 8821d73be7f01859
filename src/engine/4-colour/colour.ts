import type { Pattern } from '../1-pattern/pattern.ts';
import { FLAG, type Fabric } from '../3-fabric/fabric.ts';
import { colourGrid, type ColourGrid } from './colourGrid.ts';
import type { Colours, PlacementFit } from './colours.ts';
import { fitPlacement, noFit } from './fitPlacement.ts';
import { cellsOfRow, isMirrored, placementLie, startInRow, type PlacementLie } from './placementLie.ts';
import { columnCount } from './rowColumns.ts';

/**
 * The yarn of every stitch of one size: the yarn that the rows say, over it the placements in their order, over them the
 * loose cells. Stitches that don't count (turning chains, joins, chains between stitches) follow the stitch they are made
 * with: one laid in another yarn takes them along (the change is made on the last pull-through before it, *common practice*).
 * Letters that no yarn has leave what is below. Linear in stitches and in cells laid. `size` is checked against the pattern.
 */
export function colour(pattern: Pattern, fabric: Fabric, size: number, grid: ColourGrid = colourGrid(fabric)): Colours {
  if (!(size >= 0 && size < pattern.sizes.length)) throw new RangeError(`size ${size} asked of a pattern of ${pattern.sizes.length} sizes`);
  const yarn = fabric.yarn.slice();
  const placement = new Uint16Array(fabric.count);
  const yarnOf = new Map(pattern.yarns.map((one, i) => [one.letter, i]));
  const motifs = new Map(pattern.motifs.map((motif) => [motif.id, motif]));
  const fits: PlacementFit[] = pattern.placements.map((one, i) => {
    const motif = motifs.get(one.motif);
    const lie = motif && placementLie(one, motif, grid);
    if (!motif || !lie) return noFit(one.id, (motif?.cells.length ?? 0) * one.up);
    layPlacement(lie, grid, (stitch, letter) => {
      const index = yarnOf.get(letter);
      if (index === undefined) return;
      yarn[stitch] = index;
      placement[stitch] = i + 1;
    });
    return fitPlacement(lie, grid);
  });
  const { columns } = grid;
  for (const run of pattern.cells) {
    if (run.size !== size) continue;
    const row = grid.rows.indexOf(run.section, run.row);
    if (row < 0) continue;
    const end = Math.min(run.letters.length, columnCount(columns, row) - run.from);
    for (let i = 0; i < end; i++) {
      const index = yarnOf.get(run.letters[i]!);
      if (index === undefined) continue;
      const stitch = columns.stitches[columns.start[row]! + run.from + i]!;
      yarn[stitch] = index;
      placement[stitch] = 0;
    }
  }
  takeAlong(fabric, yarn, placement);
  return { yarn, placement, fits };
}

function layPlacement(lie: PlacementLie, grid: ColourGrid, put: (stitch: number, letter: string) => void): void {
  const { placement, spread, rows } = lie;
  const { columns } = grid;
  for (let position = 0; position < rows.length; position++) {
    const row = rows[position]!;
    const width = columnCount(columns, row);
    const offset = columns.start[row]!;
    const cells = cellsOfRow(lie, position);
    const step = cells.length + placement.gap;
    const start = startInRow(lie, grid, position);
    const from = Math.max(Math.ceil((1 - cells.length - start) / step), 0);
    const to = Math.min(Math.floor((width - 1 - start) / step), spread.repeats - 1);
    for (let repeat = from; repeat <= to; repeat++) {
      const left = start + repeat * step;
      const mirrored = isMirrored(placement, repeat);
      const end = Math.min(cells.length, width - left);
      for (let i = Math.max(0, -left); i < end; i++) {
        const letter = cells[mirrored ? cells.length - 1 - i : i]!;
        if (letter !== '.') put(columns.stitches[offset + left + i]!, letter);
      }
    }
  }
}

/** Stitches that don't count follow the counted stitch before them in their row, those at its start the one after them. */
function takeAlong(fabric: Fabric, yarn: Uint8Array, placement: Uint16Array): void {
  for (const row of fabric.rows) {
    let leader = row.first;
    while (leader < row.end && !(fabric.flags[leader]! & FLAG.counts)) leader++;
    if (leader === row.end) continue;
    for (let i = row.first; i < row.end; i++) {
      if (fabric.flags[i]! & FLAG.counts) leader = i;
      else if (yarn[leader] !== fabric.yarn[leader]) {
        yarn[i] = yarn[leader]!;
        placement[i] = placement[leader]!;
      }
    }
  }
}
