import type { Pattern } from '../1-pattern/pattern.ts';
import { FLAG, type Fabric } from '../3-fabric/fabric.ts';
import { colourGrid, type ColourGrid } from './colourGrid.ts';
import type { Colours, PlacementFit } from './colours.ts';
import { fitPlacement, noFit } from './fitPlacement.ts';
import { groundYarns } from './groundYarns.ts';
import { placementInSize } from './placementInSize.ts';
import { layRow, placementLie } from './placementLie.ts';
import { columnCount } from './rowColumns.ts';

/**
 * The yarn of every stitch of one size: the ground (the yarns that the rows say, or what the section has instead), over it
 * the placements in their order, over them the loose cells. Hidden placements, and those left out in this size, have no fit. Stitches that don't count (turning chains, joins, chains between stitches) follow the stitch they are made
 * with: one laid in another yarn takes them along (the change is made on the last pull-through before it, *common practice*).
 * Letters that no yarn has leave what is below. Linear in stitches and in cells laid. `size` is checked against the pattern.
 */
export function colour(pattern: Pattern, fabric: Fabric, size: number, grid: ColourGrid = colourGrid(fabric)): Colours {
  if (!(size >= 0 && size < pattern.sizes.length)) throw new RangeError(`size ${size} asked of a pattern of ${pattern.sizes.length} sizes`);
  const ground = groundYarns(pattern, grid);
  const yarn = ground.slice();
  const placement = new Uint16Array(fabric.count);
  const yarnOf = new Map(pattern.yarns.map((one, i) => [one.letter, i]));
  const motifs = new Map(pattern.motifs.map((motif) => [motif.id, motif]));
  const { columns } = grid;
  const fits = pattern.placements.flatMap((whole, i): readonly PlacementFit[] => {
    const one = placementInSize(whole, size);
    if (!one) return [];
    const motif = motifs.get(one.motif);
    const lie = motif && placementLie(one, motif, grid, size);
    if (!motif || !lie) return [noFit(one.id, (motif?.cells.length ?? 0) * one.up)];
    const beyond = lie.rows.map((row, position) =>
      layRow(lie, grid, position, motif.cells, (column, letter) => {
        const index = yarnOf.get(letter);
        if (index === undefined) return;
        const stitch = columns.stitches[columns.start[row]! + column]!;
        yarn[stitch] = index;
        placement[stitch] = i + 1;
      }),
    );
    return [fitPlacement(lie, grid, beyond)];
  });
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
  takeAlong(fabric, ground, yarn, placement);
  return { size, yarn, placement, fits };
}

/** Stitches that don't count follow the counted stitch before them in their row, those at its start the one after them. */
function takeAlong(fabric: Fabric, ground: Uint8Array, yarn: Uint8Array, placement: Uint16Array): void {
  for (const row of fabric.rows) {
    let leader = row.first;
    while (leader < row.end && !(fabric.flags[leader]! & FLAG.counts)) leader++;
    if (leader === row.end) continue;
    for (let i = row.first; i < row.end; i++) {
      if (fabric.flags[i]! & FLAG.counts) leader = i;
      else if (yarn[leader] !== ground[leader]) {
        yarn[i] = yarn[leader]!;
        placement[i] = placement[leader]!;
      }
    }
  }
}
