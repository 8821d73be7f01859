import { FLAG, type Fabric } from '../3-fabric/fabric.ts';
import type { Colours } from './colours.ts';

/** Stitches of one yarn that follow one another in a row. `yarn` is the yarn's index, `count` the stitches that count. */
export interface YarnRun {
  readonly yarn: number;
  readonly count: number;
}

/** The yarn runs of a row in working order, so a WS row runs the other way than it is seen on the right side. Empty for a row without counted stitches. */
export function rowRuns(fabric: Fabric, colours: Pick<Colours, 'yarn'>, row: number): readonly YarnRun[] {
  const worked = fabric.rows[row];
  if (!worked) throw new RangeError(`row ${row} asked of a fabric of ${fabric.rows.length} rows`);
  const runs: { yarn: number; count: number }[] = [];
  for (let i = worked.first; i < worked.end; i++) {
    if (!(fabric.flags[i]! & FLAG.counts)) continue;
    const last = runs.at(-1);
    if (last && last.yarn === colours.yarn[i]) last.count++;
    else runs.push({ yarn: colours.yarn[i]!, count: 1 });
  }
  return runs;
}
