import type { StitchKind } from '../../craft/stitches.ts';
import type { Instruction } from '../../notation/instruction.ts';
import { across, acrossEach, next, nextEach, times, together } from './clauses.ts';
import { spreadEvenly } from './spreadEvenly.ts';

/** Where changes stand: at the end of each gap, so that equal gaps put them above each other, or half a gap away from there. */
export type ChangePlace = 'stacked' | 'staggered';

/**
 * Clauses of a row of `units` in which `changes` of them are worked otherwise, spread evenly: plain units between changes
 * differ by one at most, the longer gaps first. `stacked`: a change ends each gap; `staggered`: the first comes after half a
 * gap and the other half ends the row, as both edges of a flat row need. Refuses no changes, and more than units.
 */
export function spreadChanges(units: number, changes: number, place: ChangePlace, plain: (count: number) => Instruction, change: Instruction): readonly Instruction[] {
  if (!(changes >= 1 && changes <= units)) throw new RangeError(`${changes} changes among ${units} units`);
  const gaps = [...spreadEvenly(units, changes)].sort((a, b) => b - a).map((gap) => gap - 1);
  const long = gaps[0]!;
  const short = gaps.at(-1)!;
  const longer = gaps.filter((gap) => gap === long).length;
  const group = (gap: number, count: number) => times(count, [plain(gap), change]);
  const shorter = changes - longer;
  if (place === 'stacked') return [group(long, longer), group(short, shorter)];
  const lead = Math.floor(long / 2);
  return [plain(lead), change, group(long, longer - 1), group(short, shorter), plain(long - lead)];
}

/**
 * A row or round of `stitch` that makes `to` stitches of `from`, the changes spread evenly: increases as more stitches in
 * one, decreases as stitches drawn together. Whole multiples have no plain stitches, so they go into each stitch. Refuses
 * numbers below 1 and what no stitch can do (more than 255 drawn together).
 */
export function evenRow(stitch: StitchKind, from: number, to: number, place: ChangePlace, word: 'across' | 'around' = 'around'): readonly Instruction[] {
  if (!(from >= 1 && to >= 1 && Number.isInteger(from) && Number.isInteger(to))) throw new RangeError(`${from} stitches to ${to}, expected whole numbers of 1 or more`);
  const more = to >= from;
  const units = more ? from : to;
  const each = Math.floor(more ? to / from : from / to);
  if (each >= 255) throw new RangeError(`${each} stitches drawn together or made in one, at most 254`);
  const changes = more ? to - each * from : from - each * to;
  const make = (count: number, of: number): Instruction => (of === 1 ? next(stitch, count) : more ? nextEach(stitch, of, count) : together(stitch, of, count));
  if (changes === 0) return [each === 1 ? across(stitch, word) : more ? acrossEach(stitch, each, word) : make(units, each)];
  return spreadChanges(units, changes, place, (count) => make(count, each), make(1, each + 1));
}
