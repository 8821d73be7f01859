import { stitchCode, stitchRow, STITCHES } from '../craft/stitches.ts';
import { amountFor, type Stated } from '../notation/instruction.ts';
import { NONE, PLACE } from './edge.ts';
import { FLAG, type WorkedRow } from './fabric.ts';
import type { Hook } from './hook.ts';
import { report, type RowWork } from './rowWork.ts';
import { meshesBy } from './workMeshes.ts';

/** The report of the row just worked: stitches [first, end), what it made and used, what it left open. */
export function reportRow(work: RowWork, first: number, rows: readonly WorkedRow[], round: boolean): WorkedRow {
  const { hook, row, program } = work;
  const end = hook.stitches.count;
  countSlipStitches(hook, first, end);
  const facing = hook.rowFacing || hook.state.facing;
  const made = madeBy(hook, first, end, '');
  const stated = row.stated ? amountFor(row.stated.count, program.size) : null;
  const piece = hook.piece;
  return {
    key: row.key, section: row.section, word: row.word, number: row.number,
    side: facing > 0 ? 'RS' : 'WS',
    direction: facing > 0 ? -1 : 1,
    first, end, made, used: hook.used, placed: hook.placed,
    left: leftOpen(hook, row.section, rows, round),
    stated,
    open: piece ? openPlaces(hook, piece.mark) : 0,
    ring: piece?.closed ?? false,
    round,
    below: hook.below === NONE ? -1 : hook.below,
  };
}

/** Compares the stated count with what was made. A count of stitches of one kind counts that kind only. */
export function checkStated(work: RowWork, stated: Stated, worked: WorkedRow): void {
  const said = amountFor(stated.count, work.program.size);
  const made = statedMade(work.hook, stated, worked);
  if (made !== null && made !== said) report(work, 'wrong', 'statedCount', stated.range, { found: said, expected: made });
  for (const [index, more] of (stated.also ?? []).entries()) {
    const count = amountFor(more.count, work.program.size);
    const own = statedMade(work.hook, { ...stated, unit: more.unit }, worked);
    if (own !== null && own !== count) report(work, 'wrong', 'statedCount', stated.range, { found: count, expected: own, params: { unit: more.unit, part: index + 1 } });
  }
}

/** What the row made in the unit of its stated count; null for units that are no stitches (patterns, meshes). */
export function statedMade(hook: Hook, stated: Stated, worked: Pick<WorkedRow, 'first' | 'end' | 'made'>): number | null {
  const unit = stated.unit.toLowerCase().replace(/s$/, '').replace(/^sl st$/, 'slst');
  if (unit === '' || unit === 'st' || unit === 'stitche') return worked.made;
  if (/^mesh(e)?$|^square$/.test(unit)) return meshesBy(hook, worked.first, worked.end);
  if (/^(ch(-\d+)? )?sp$/.test(unit)) return spacesBy(hook, worked.first, worked.end);
  const row = STITCHES.find((stitch) => !SEVERAL.has(stitch.kind) && (stitch.kind === unit || stitch.us.toLowerCase() === unit));
  return row ? madeBy(hook, worked.first, worked.end, row.kind) : null;
}

/** Stitches worked as several, which a count of them does not count. */
const SEVERAL = new Set<string>(['shell', 'vst']);

/** Chain spaces that stitches [first, end) hang: runs of chains between stitches. */
function spacesBy(hook: Hook, first: number, end: number): number {
  let spaces = 0;
  let inside = false;
  for (let stitch = first; stitch < end; stitch++) {
    // A picot hangs in the middle of a space.
    if (hook.stitches.code(stitch) === stitchCode('picot')) continue;
    const space = hook.stitches.has(stitch, FLAG.space);
    if (space && !inside) spaces++;
    inside = space;
  }
  return spaces;
}

function madeBy(hook: Hook, first: number, end: number, kind: string): number {
  let counting = 0;
  let ofKind = 0;
  let foundation = 0;
  let turning = 0;
  for (let stitch = first; stitch < end; stitch++) {
    const flags = hook.stitches.flags.at(stitch);
    if (flags & FLAG.counts) {
      counting++;
      if (flags & FLAG.turning) turning++;
      else if (kind !== '' && hook.stitches.code(stitch) === stitchCode(stitchRow(kind as never).kind)) ofKind++;
    }
    if (flags & FLAG.foundation && hook.stitches.code(stitch) === stitchCode('ch')) foundation++;
  }
  if (counting === 0) return kind === '' || kind === 'ch' ? foundation : 0;
  // A turning chain that counts is counted as the stitch it stands for.
  return kind === '' ? counting : ofKind + turning;
}

/** Slip stitches along a row count only where the row has no other stitches (common practice). */
function countSlipStitches(hook: Hook, first: number, end: number): void {
  const slip = stitchCode('slst');
  const slips: number[] = [];
  for (let stitch = first; stitch < end; stitch++) {
    if (hook.stitches.has(stitch, FLAG.counts)) return;
    if (hook.stitches.code(stitch) === slip && !hook.stitches.has(stitch, FLAG.join | FLAG.corner)) slips.push(stitch);
  }
  for (const stitch of slips) hook.stitches.mark(stitch, FLAG.counts);
}

/** Places of this section's earlier rows that are open beyond the row's end and before its start. */
function leftOpen(hook: Hook, section: number, rows: readonly WorkedRow[], round: boolean): WorkedRow['left'] {
  if (hook.lastPut === NONE) return { ahead: 0, behind: 0 };
  const ahead = walk(hook, hook.edge.beside(hook.lastPut, hook.rowDirection), hook.rowDirection, section, rows);
  if (round || ahead.wholeRing) return { ahead: ahead.count, behind: 0 };
  return { ahead: ahead.count, behind: walk(hook, hook.startBehind, -hook.rowDirection, section, rows).count };
}

function walk(hook: Hook, from: number, direction: number, section: number, rows: readonly WorkedRow[]): { count: number; wholeRing: boolean } {
  const { edge } = hook;
  let count = 0;
  let place = from;
  for (let steps = edge.count + 1; place !== NONE && steps > 0; steps--) {
    if (edge.isMark(place)) {
      if (edge.what.at(place) === PLACE.end) return { count, wholeRing: false };
    } else if (!edge.isRowEnd(place)) {
      const row = edge.row.at(place);
      if (row === hook.row) return { count, wholeRing: count > 0 };
      if (row < 0 || rows[row]?.section !== section) return { count, wholeRing: false };
      if (edge.what.at(place) === PLACE.top && hook.isStitch(place)) count++;
    }
    place = edge.beside(place, direction);
  }
  return { count, wholeRing: false };
}

function openPlaces(hook: Hook, mark: number): number {
  let open = 0;
  for (let place = hook.edge.beside(mark, 1); place !== mark; place = hook.edge.beside(place, 1)) if (!hook.edge.isRowEnd(place)) open++;
  return open;
}
