import { FLAG, type Fabric, type WorkedRow } from '../../engine/3-fabric/fabric.ts';
import type { WorkedInto } from '../stitch/workedInto.ts';

/**
 * All stitches of one yarn that hang together with one: neighbours along its row (in the round also over the round's end), the stitches it is
 * worked into and those worked into it, from stitch to stitch within its section. Stitches that don't count, such as turning chains, are passed over
 * along a row and lead nowhere else; from one of them, it is the stitch beside it that is meant. In order of stitch numbers; linear in the stitches of the section.
 */
export function floodYarn(fabric: Fabric, above: WorkedInto, yarn: Uint8Array, stitch: number): number[] {
  const section = fabric.rows[fabric.row[stitch] ?? -1]?.section;
  if (section === undefined) return [];
  const { firstRow, endRow } = fabric.sections[section]!;
  const first = fabric.rows[firstRow]!.first;
  const end = fabric.rows[endRow - 1]!.end;
  const { row, flags, bases, baseStart, rows } = fabric;
  const letter = yarn[stitch]!;
  /** 1: of this yarn and not reached yet, 2: reached. */
  const state = new Uint8Array(end - first);
  for (let i = first; i < end; i++) if (yarn[i] === letter && flags[i]! & FLAG.counts) state[i - first] = 1;
  const queue = new Int32Array(end - first);
  let length = 0;
  const reach = (other: number) => {
    if (state[other - first] !== 1) return;
    state[other - first] = 2;
    queue[length++] = other;
  };
  const begin = rows[row[stitch]!]!;
  for (const near of flags[stitch]! & FLAG.counts ? [stitch] : [beside(flags, begin, stitch, 1), beside(flags, begin, stitch, -1)]) if (length === 0) reach(near);
  for (let at = 0; at < length; at++) {
    const here = queue[at]!;
    reach(beside(flags, rows[row[here]!]!, here, 1));
    reach(beside(flags, rows[row[here]!]!, here, -1));
    for (let e = baseStart[here]!; e < baseStart[here + 1]!; e++) reach(bases[e]!);
    for (let e = above.start[here]!; e < above.start[here + 1]!; e++) reach(above.stitches[e]!);
  }
  const found: number[] = [];
  for (let i = first; i < end; i++) if (state[i - first] === 2) found.push(i);
  return found;
}

/** The next stitch of the row that counts; in the round after the last the first. -1 for none. */
function beside(flags: Uint16Array, row: WorkedRow, stitch: number, step: 1 | -1): number {
  for (let n = 1; n < row.end - row.first; n++) {
    let other = stitch + n * step;
    if (other >= row.end || other < row.first) {
      if (!row.round) return -1;
      other += other < row.first ? row.end - row.first : row.first - row.end;
    }
    if (flags[other]! & FLAG.counts) return other;
  }
  return -1;
}
