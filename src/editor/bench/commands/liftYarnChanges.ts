import type { Pattern } from '../../../engine/1-pattern/pattern.ts';
import { readLine } from '../../../engine/2-construct/readLine.ts';
import { liftYarns } from '../../../engine/4-colour/liftYarns.ts';
import { changesYarnInside } from '../../../engine/4-colour/withoutYarns.ts';
import type { BenchState, Command } from '../benchState.ts';

/** How many lines change yarn inside a row, by their own words. */
export function linesThatChangeYarn(pattern: Pattern): number {
  return pattern.sections.flatMap((section) => section.lines).filter((line) => line.kind === 'row' && changesYarnInside(readLine(line, pattern).body)).length;
}

/** Lifts the yarn changes out of the rows' words: they become cells over the rows, to be painted like all others. None where no row would come out the same. */
export const liftYarnChanges: Command = ({ pattern, grids, at }: BenchState) => {
  const edits = liftYarns(pattern, grids.map((grid) => grid.fabric));
  return edits.length === 0 ? null : { label: 'Lift the yarn changes out of the words', at, edits };
};
