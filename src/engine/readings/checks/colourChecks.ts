import type { Pattern, Placement } from '../../1-pattern/pattern.ts';
import type { Fabric } from '../../3-fabric/fabric.ts';
import { colourGrid, type ColourGrid } from '../../4-colour/colourGrid.ts';
import type { Colours, PlacementFit } from '../../4-colour/colours.ts';
import { overrideAt, setStitches } from '../../4-colour/setStitches.ts';
import { finding, type Finding, type Where } from '../../notation/finding.ts';
import { carryChecks } from './carryChecks.ts';
import { yarnChecks } from './yarnChecks.ts';

/** What there is to say about the colours of one worked size: motifs, stitches that motifs set, yarns that are carried, yarns that are alike. */
export function colourChecks(pattern: Pattern, fabric: Fabric, colours: Colours): Finding[] {
  const grid = colourGrid(fabric);
  return [
    ...colours.fits.flatMap((fit) => motifChecks(pattern, fit)),
    ...stitchChecks(pattern, grid, colours.size),
    ...carryChecks(pattern, grid, colours),
    ...yarnChecks(pattern, fabric, colours),
  ];
}

function whereOf({ section, row }: Placement): Partial<Where> {
  return { section, line: row.line, nth: row.nth };
}

function motifChecks(pattern: Pattern, fit: PlacementFit): Finding[] {
  const placement = pattern.placements.find((one) => one.id === fit.placement);
  const motif = pattern.motifs.find((one) => one.id === placement?.motif);
  if (!placement) return [];
  const where = whereOf(placement);
  const params = { motif: motif?.name ?? placement.motif, repeats: fit.across, down: fit.nearest.down, up: fit.nearest.up };
  if (!motif) return [finding('wrong', 'unknownMotif', where, { found: placement.motif, params })];
  const found: Finding[] = [];
  const past = Math.max(0, -fit.leftOver.left) + Math.max(0, -fit.leftOver.right);
  if (past > 0) found.push(finding('doubtful', 'motifPastEdge', where, { found: past, expected: 0, params }));
  if (fit.rowsCut > 0) found.push(finding('doubtful', 'motifRowsCut', where, { found: fit.rowsCut, expected: 0, params }));
  // Repeats on to the edges leave nothing over: what they are cut by is what whole ones would leave.
  if (fit.cutAtSeam) found.push(finding('doubtful', 'motifCut', where, { found: fit.leftOver.left + fit.leftOver.right || fit.width - fit.nearest.down, expected: 0, params }));
  return found;
}

/**
 * Stitches that motifs set. A raised stitch among shorter ones stands out on the side away from the worker, so one that is
 * to show on the right side is worked on a wrong side row (*common practice*).
 */
function stitchChecks(pattern: Pattern, grid: ColourGrid, size: number): Finding[] {
  const set = setStitches(pattern, grid, size);
  const { fabric } = grid;
  const raised = pattern.placements.map(() => ({ here: 0, other: 0, rounds: 0, first: -1 }));
  if (set.isAny) {
    for (let stitch = 0; stitch < fabric.count; stitch++) {
      if (overrideAt(set, stitch)?.raised !== 'far') continue;
      const of = raised[set.placement[stitch]! - 1]!;
      const row = fabric.rows[fabric.row[stitch]!]!;
      if (row.side === 'WS') of.other++;
      else {
        if (of.here++ === 0) of.first = stitch;
        if (row.round) of.rounds++;
      }
    }
  }
  return pattern.placements.flatMap((placement, i): Finding[] => {
    const motif = pattern.motifs.find((one) => one.id === placement.motif)?.name ?? placement.motif;
    const { here, other, rounds, first } = raised[i]!;
    const off = set.leftOut.get(placement.id) ?? 0;
    const found: Finding[] = [];
    if (here > 0) {
      const row = fabric.rows[fabric.row[first]!]!;
      const params = { motif, stitch: overrideAt(set, first)!.name, other, round: rounds > 0 ? 1 : 0 };
      found.push(finding('doubtful', 'raisedFar', { section: placement.section, line: row.key.line, nth: row.key.nth, stitch: first }, { found: here, expected: 0, params }));
    }
    if (off > 0) found.push(finding('note', 'stitchesLeftOut', whereOf(placement), { found: off, expected: 0, params: { motif } }));
    return found;
  });
}
