import { finding, type Finding, type Where } from '../../notation/finding.ts';
import { FLAG, type Fabric, type WorkedRow } from '../../3-fabric/fabric.ts';

/**
 * Checks of turned short rows, found by what the rows do and not by their name: a section is turned when a row ends in an
 * open stitch beyond the row below. Common practice: the heel is closed when every stitch left open has been used; both sides
 * are left equal, or the first side has one more; the heel lies centred on the seam.
 */
export function heelChecks(fabric: Fabric): Finding[] {
  return fabric.sections.flatMap((section) => {
    const rows = fabric.rows.slice(section.firstRow, section.endRow).filter((row) => row.word !== 'step' && row.end > row.first);
    if (!rows.some((row) => attaches(fabric, row))) return [];
    const where = (row: WorkedRow): Partial<Where> => ({ section: section.id, line: row.key.line, nth: row.key.nth, stitch: row.end - 1 });
    return [...notClosed(fabric, rows, where), ...unequal(fabric, rows, where), ...offCentre(fabric, rows, where)];
  });
}

function attaches(fabric: Fabric, row: WorkedRow): boolean {
  for (let stitch = row.first; stitch < row.end; stitch++) if (fabric.flags[stitch]! & FLAG.attaching) return true;
  return false;
}

type WhereOf = (row: WorkedRow) => Partial<Where>;

function notClosed(fabric: Fabric, rows: readonly WorkedRow[], where: WhereOf): Finding[] {
  const last = rows[rows.length - 1]!;
  const open = last.left.ahead + last.left.behind;
  if (open === 0) return [];
  // Words of the section that were not read may be what closes it.
  const degree = fabric.findings.some(({ rule, where: { section } }) => rule === 'unread' && section === where(last).section) ? 'doubtful' : 'wrong';
  return [finding(degree, 'heelOpen', where(last), { found: open, expected: 0, params: { ahead: last.left.ahead, behind: last.left.behind } })];
}

/**
 * The stitches that the row leaving the first side, and the one leaving the second, left. A side that lies on stitches of
 * another section, as where a heel is begun on the leg, is told by what the closing rows take up there. Null where none are left.
 */
export function sidesLeft(fabric: Fabric, rows: readonly WorkedRow[]): { readonly first: number; readonly second: number; readonly row: WorkedRow } | null {
  const closing = rows.findIndex((row) => attaches(fabric, row));
  let first = 0;
  let second = 0;
  for (let i = 0; i < closing; i++) {
    const row = rows[i]!;
    if (row.left.ahead === 0) continue;
    if (row.left.behind === 0) first = row.left.ahead;
    else [first, second] = [row.left.behind, row.left.ahead];
  }
  const row = rows[closing - 1];
  if (!row || first === 0) return null;
  if (second > 0) return { first, second, row };
  // The row that begins to close goes to the side that the section's own rows did not leave.
  const { direction } = rows[closing]!;
  const other = rows.slice(closing).reduce((sum, one) => (one.direction === direction ? sum + placesBeyond(fabric, one) : sum), 0);
  return { first: other, second: first, row };
}

/** Places that a row works into beyond the row below, from its first stitch that attaches on. */
function placesBeyond(fabric: Fabric, row: WorkedRow): number {
  const places = new Set<number>();
  let begun = false;
  for (let stitch = row.first; stitch < row.end; stitch++) {
    begun ||= (fabric.flags[stitch]! & FLAG.attaching) !== 0;
    if (!begun) continue;
    for (let at = fabric.baseStart[stitch]!; at < fabric.baseStart[stitch + 1]!; at++) {
      const base = fabric.bases[at]!;
      if (fabric.row[base] !== row.below) places.add(base);
    }
  }
  return places.size;
}

function unequal(fabric: Fabric, rows: readonly WorkedRow[], where: WhereOf): Finding[] {
  const sides = sidesLeft(fabric, rows);
  if (!sides || Math.abs(sides.first - sides.second) <= 1) return [];
  return [finding('doubtful', 'openSidesUnequal', where(sides.row), { found: `${sides.first} and ${sides.second}`, expected: 'equal, or one more on the side left first', params: { first: sides.first, second: sides.second } })];
}

function offCentre(fabric: Fabric, rows: readonly WorkedRow[], where: WhereOf): Finding[] {
  const seam = fabric.seams.at(-1);
  const first = rows[0]!;
  if (!seam) return [];
  let before = 0;
  let after = 0;
  let passed = false;
  for (let stitch = first.first; stitch < first.end; stitch++) {
    if (!(fabric.flags[stitch]! & FLAG.counts)) continue;
    const base = fabric.bases[fabric.baseStart[stitch]!];
    if (base === undefined || fabric.baseStart[stitch] === fabric.baseStart[stitch + 1]) return [];
    if (first.side === 'RS' ? base === seam.after : base === seam.before) passed = true;
    if (passed) after++;
    else before++;
  }
  const off = Math.abs(before - after) / 2;
  if (!passed || off <= 0.5) return [];
  return [finding('doubtful', 'heelOffCentre', where(first), { found: off, expected: 0.5, params: { before, after } })];
}
