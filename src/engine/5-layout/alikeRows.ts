import type { Fabric, WorkedRow } from '../3-fabric/fabric.ts';
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
const OF_STITCH = ['kind', 'flags', 'legs', 'legKind'] as const satisfies readonly (keyof Fabric)[];

/**
 * Compares a section in two fabrics row by row: rows are alike when they have the same stitches in the same places but for their
 * numbers, which are all moved by as much. Yarns, words and numbers of rows are not looked at. Linear, half a millisecond for 60,000 stitches.
 */
export function alikeRows(old: Fabric, now: Fabric, section: number): AlikeRows {
  const [was, is] = [section < old.sections.length ? sectionRows(old, section) : [], sectionRows(now, section)];
  const most = Math.min(was.length, is.length);
  let start = 0;
  while (start < most && isAlike(old, now, was[start]!, is[start]!)) start++;
  let end = 0;
  while (end < most - start && isAlike(old, now, was[was.length - 1 - end]!, is[is.length - 1 - end]!)) end++;
  return { old: was, now: is, start, end };
}

function isAlike(old: Fabric, now: Fabric, was: IndexedRow, is: IndexedRow): boolean {
  const [from, to] = [startOfRow({ fabric: old }, was), startOfRow({ fabric: now }, is)];
  const count = was.end - from;
  if (count !== is.end - to || was.first - from !== is.first - to) return false;
  const rows = is.index - was.index;
  if (!OF_ROW.every((field) => was[field] === is[field]) || was.left.ahead !== is.left.ahead || was.left.behind !== is.left.behind || !isMoved(was.below, is.below, rows)) return false;
  const moved = to - from;
  return (
    OF_STITCH.every((name) => sameNumbers(old[name], now[name], from, to, count)) && movedNumbers(old.row, now.row, from, to, count, rows) && movedNumbers(old.previous, now.previous, from, to, count, moved) &&
    sameBases(old, now, from, to, count, moved)
  );
}

function isMoved(was: number, is: number, by: number): boolean {
  return was < 0 ? is === was : is === was + by;
}

function sameNumbers(one: ArrayLike<number>, other: ArrayLike<number>, from: number, to: number, count: number): boolean {
  for (let i = 0; i < count; i++) if (one[from + i] !== other[to + i]) return false;
  return true;
}

function movedNumbers(one: Int32Array, other: Int32Array, from: number, to: number, count: number, by: number): boolean {
  for (let i = 0; i < count; i++) {
    const was = one[from + i]!;
    if (other[to + i] !== (was < 0 ? was : was + by)) return false;
  }
  return true;
}

function sameBases(old: Fabric, now: Fabric, from: number, to: number, count: number, by: number): boolean {
  const [base, baseNow] = [old.baseStart[from]!, now.baseStart[to]!];
  for (let i = 1; i <= count; i++) if (old.baseStart[from + i]! - base !== now.baseStart[to + i]! - baseNow) return false;
  return movedNumbers(old.bases, now.bases, base, baseNow, old.baseStart[from + count]! - base, by);
}
