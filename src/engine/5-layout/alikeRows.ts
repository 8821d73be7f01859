import type { Fabric, WorkedRow } from '../3-fabric/fabric.ts';
import { isAsWorked } from '../3-fabric/work.ts';
import { sectionRows, type IndexedRow } from './ground.ts';
import { startOfRow } from './stoodRow.ts';

/** The rows of a section in two fabrics, and how many of them are alike from the start on and back from the end. */
export interface AlikeRows {
  readonly old: readonly IndexedRow[];
  readonly now: readonly IndexedRow[];
  readonly start: number;
  readonly end: number;
}

const OF_ROW = ['word', 'side', 'direction', 'made', 'used', 'placed', 'ring', 'round'] as const satisfies readonly (keyof WorkedRow)[];

/**
 * Compares a section in two fabrics row by row: rows are alike when they have the same stitches in the same places but for their
 * numbers, which are all moved by as much. Yarns, words and numbers of rows are not looked at. Linear; rows that were kept when the
 * one fabric was worked from the other are known to be alike without a look at their stitches.
 */
export function alikeRows(old: Fabric, now: Fabric, section: number): AlikeRows {
  const [was, is] = [section < old.sections.length ? sectionRows(old, section) : [], sectionRows(now, section)];
  const asWorked = isAsWorked(old) && isAsWorked(now);
  const isAlike = (a: IndexedRow, b: IndexedRow): boolean => (asWorked && a.index === b.index && old.rows[a.index] === now.rows[b.index]) || areAlike(old, now, a, b);
  const most = Math.min(was.length, is.length);
  let start = 0;
  while (start < most && isAlike(was[start]!, is[start]!)) start++;
  let end = 0;
  while (end < most - start && isAlike(was[was.length - 1 - end]!, is[is.length - 1 - end]!)) end++;
  return { old: was, now: is, start, end };
}

function areAlike(old: Fabric, now: Fabric, was: IndexedRow, is: IndexedRow): boolean {
  const [from, to] = [startOfRow({ fabric: old }, was), startOfRow({ fabric: now }, is)];
  const count = was.end - from;
  if (count !== is.end - to || was.first - from !== is.first - to) return false;
  const rows = is.index - was.index;
  const sameReport = OF_ROW.every((field) => was[field] === is[field]) && was.left.ahead === is.left.ahead && was.left.behind === is.left.behind;
  return sameReport && is.below === (was.below < 0 ? was.below : was.below + rows) && sameStitches(old, now, from, to, count, rows) && sameBases(old, now, from, to, count);
}

function sameStitches(old: Fabric, now: Fabric, from: number, to: number, count: number, rows: number): boolean {
  const { kind, flags, legs, legKind, row, previous, baseStart } = old;
  const [kindNow, flagsNow, legsNow, legKindNow, rowNow, previousNow, startNow] = [now.kind, now.flags, now.legs, now.legKind, now.row, now.previous, now.baseStart];
  const [moved, basesMoved] = [to - from, startNow[to]! - baseStart[from]!];
  for (let a = from, b = to; a < from + count; a++, b++) {
    if (kind[a] !== kindNow[b] || flags[a] !== flagsNow[b] || legs[a] !== legsNow[b] || legKind[a] !== legKindNow[b] || rowNow[b]! - row[a]! !== rows || startNow[b + 1]! - baseStart[a + 1]! !== basesMoved) return false;
    const before = previous[a]!;
    if (previousNow[b] !== (before < 0 ? before : before + moved)) return false;
  }
  return true;
}

function sameBases({ bases, baseStart }: Fabric, now: Fabric, from: number, to: number, count: number): boolean {
  const [moved, end, by] = [to - from, baseStart[from + count]!, now.baseStart[to]! - baseStart[from]!];
  for (let b = baseStart[from]!; b < end; b++) if (now.bases[b + by]! - bases[b]! !== moved) return false;
  return true;
}
