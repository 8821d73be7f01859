import { FLAG, type Fabric } from '../../engine/3-fabric/fabric.ts';

/** What a maker counts in a row. */
export interface Tally {
  /** Stitches that count, made so far, and in the whole row. */
  readonly made: number;
  readonly of: number;
  /** Places of earlier rows of the section that this row leaves open, as the chart shows them. */
  readonly openLeft: number;
  readonly openRight: number;
}

/** Counts a row of which `done` stitches are made. Left-handed charts are mirrored. */
export function tally(fabric: Fabric, row: number, done: number, hand: 'right' | 'left'): Tally {
  const worked = fabric.rows[row];
  if (!worked) throw new RangeError(`row ${row} asked of ${fabric.rows.length}`);
  const goesLeft = (worked.direction === -1) === (hand === 'right');
  const { ahead, behind } = worked.left;
  const open = { openLeft: goesLeft ? ahead : behind, openRight: goesLeft ? behind : ahead };
  // A foundation's chains count in no other row, but here they do, with the last ones, which stand beside the next row.
  if (worked.word === 'foundation') return { made: done < worked.end - worked.first ? done : worked.made, of: worked.made, ...open };
  let made = 0;
  for (let stitch = worked.first; stitch < worked.first + done; stitch++) if (fabric.flags[stitch]! & FLAG.counts) made++;
  return { made, of: worked.made, ...open };
}
