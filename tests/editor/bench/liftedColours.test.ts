import { describe, expect, it } from 'vitest';
import type { Placement } from '../../../src/engine/1-pattern/pattern.ts';
import { FLAG } from '../../../src/engine/3-fabric/fabric.ts';
import { liftYarnChanges, linesThatChangeYarn } from '../../../src/editor/bench/commands/liftYarnChanges.ts';
import { motifOfBlock } from '../../../src/editor/bench/commands/motifOfBlock.ts';
import { layYarn } from '../../../src/editor/bench/commands/layYarn.ts';
import { freshMotifName } from '../../../src/editor/motif/freshMotifName.ts';
import { placedAt } from '../../../src/editor/bench/placedAt.ts';
import { after, benchOf, LEG, TICK } from './benchOf.ts';

/** The stitch of a column, counted from the left as the right side faces, in the row of this number. */
function stitchAt(bench: ReturnType<typeof benchOf>, number: number, column: number): number {
  const { fabric, columns } = bench.grids[bench.size]!;
  const row = fabric.rows.findIndex((each) => each.number === number);
  return columns.stitches[columns.start[row]! + column]!;
}

describe('colours lifted from what is there', () => {
  it('out of the words of a row become cells, and the yarn of each stitch stays', () => {
    const striped = { ...LEG, sections: LEG.sections.map((section) => ({ ...section, lines: section.lines.map((line) => (line.kind === 'row' && line.id === 'plain' ? { ...line, text: 'ch 1, turn, *A sc 1, B sc 1; rep from * to end. (10 (12) sc)' } : line)) })) };
    expect([linesThatChangeYarn(LEG), linesThatChangeYarn(striped)]).toEqual([0, 1]);
    const before = benchOf(striped);
    const lifted = after(striped, liftYarnChanges(before));
    expect(linesThatChangeYarn(lifted)).toBe(0);
    expect(lifted.cells.length).toBeGreaterThan(0);
    const now = benchOf(lifted);
    const counted = ({ fabric, colours }: typeof now): number[] => [...colours.yarn].filter((_, stitch) => (fabric.flags[stitch]! & FLAG.counts) !== 0);
    expect(counted(now)).toEqual(counted(before));
    expect(new Set(counted(now)).size).toBe(2);
    expect(liftYarnChanges(now)).toBeNull();
  });

  it('from a block that is chosen become a motif, its top row first', () => {
    const bench = benchOf(LEG);
    const painted = benchOf(after(LEG, layYarn([stitchAt(bench, 3, 2), stitchAt(bench, 2, 3)], 'B', false)(bench)));
    const command = motifOfBlock(stitchAt(painted, 2, 2), stitchAt(painted, 3, 4), 'new', freshMotifName(painted.pattern));
    expect(after(painted.pattern, command(painted)).motifs).toEqual([{ id: 'new', name: 'Motif 1', cells: ['BAA', 'ABA'] }]);
    expect(motifOfBlock(-1, -1, 'new', 'None')(painted)).toBeNull();
  });

  it('are asked for at a stitch by the motifs that lie there, the top one first and none twice by one name', () => {
    const placement = (id: string): Placement => ({ id, section: 'leg', motif: 'tick', row: { line: 'first', nth: 0 }, align: 'left', offset: 0, across: 1, up: 1, gap: 0, mirror: false });
    const placed = { ...LEG, motifs: [TICK], placements: [placement('one'), placement('two')] };
    const bench = benchOf(placed);
    const grid = bench.grids[0]!;
    expect(placedAt(placed, grid, 0, stitchAt(bench, 1, 0))).toEqual([{ placement: 'two', says: 'Adjust Tick …' }, { placement: 'one', says: 'Adjust Tick, 1 below …' }]);
    expect(placedAt(placed, grid, 0, stitchAt(bench, 1, 5))).toEqual([]);
  });
});
