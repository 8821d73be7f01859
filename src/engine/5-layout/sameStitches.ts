import type { Fabric, WorkedRow } from '../3-fabric/fabric.ts';
import { isAsWorked } from '../3-fabric/work.ts';

const STITCHES = ['kind', 'flags', 'legs', 'legKind', 'row', 'previous'] as const satisfies readonly (keyof Fabric)[];
const OF_ROW = ['section', 'word', 'number', 'side', 'direction', 'first', 'end', 'round', 'ring', 'below', 'made', 'used'] as const satisfies readonly (keyof WorkedRow)[];

/**
 * Whether two fabrics have the same stitches in the same places, so that they are laid out and drawn alike: all but their yarns,
 * words, counts said and findings. An edit of a row's words or colours mostly leaves them so. Linear; rows that were kept when the one was worked
 * from the other are not looked through.
 */
export function sameStitches(one: Fabric, other: Fabric): boolean {
  if (one === other) return true;
  if (one.count !== other.count || one.rows.length !== other.rows.length || one.sections.length !== other.sections.length || one.seams.length !== other.seams.length) return false;
  const kept = isAsWorked(one) && isAsWorked(other);
  return (
    one.rows.every((row, r) => row === other.rows[r] || sameRow(row, other.rows[r]!)) &&
    one.sections.every((section, s) => section.id === other.sections[s]!.id && section.name === other.sections[s]!.name && section.firstRow === other.sections[s]!.firstRow && section.endRow === other.sections[s]!.endRow) &&
    one.seams.every((seam, s) => seam.row === other.seams[s]!.row && seam.before === other.seams[s]!.before && seam.after === other.seams[s]!.after) &&
    changedRuns(one, other, kept).every(([from, end]) => STITCHES.every((name) => sameNumbers(one[name], other[name], from, end)) && sameNumbers(one.baseStart, other.baseStart, from, end + 1) && sameNumbers(one.bases, other.bases, one.baseStart[from]!, one.baseStart[end]!))
  );
}

/** The stitches that have to be compared, [from, end) each: all but those of rows that were kept when the one fabric was worked from the other. */
function changedRuns(one: Fabric, other: Fabric, kept: boolean): [from: number, end: number][] {
  const runs: [number, number][] = [];
  let at = 0;
  for (const [r, row] of one.rows.entries()) {
    if (!kept || row !== other.rows[r] || row.end <= at) continue;
    if (row.first > at) runs.push([at, row.first]);
    at = row.end;
  }
  if (at < one.count) runs.push([at, one.count]);
  return runs;
}

function sameRow(one: WorkedRow, other: WorkedRow): boolean {
  return OF_ROW.every((field) => one[field] === other[field]) && one.left.ahead === other.left.ahead && one.left.behind === other.left.behind;
}

function sameNumbers(one: ArrayLike<number>, other: ArrayLike<number>, from: number, end: number): boolean {
  for (let i = from; i < end; i++) if (one[i] !== other[i]) return false;
  return true;
}
