import { across, chain, intoSection, joinBeforeSeam, leave, next, plain, same, skip, unworked, withYarn } from './clauses.ts';
import { joinSizes } from './joinSizes.ts';
import { movingRows, rows, step, type MadeRow } from './madeRow.ts';
import { sectionText } from './sectionText.ts';

/** A heel turned in short rows, in one size. */
export interface HeelPlan {
  /** Stitches of the heel. */
  readonly stitches: number;
  /** Stitches left open on the side of row 2 and on that of row 3. The sides close evenly when they are equal or the first has one more. */
  readonly leftFirst: number;
  readonly leftSecond: number;
  /** 0: both sides are left at once; else so many are left in each row, and so many taken up again. */
  readonly step: 0 | 1 | 2;
  /** Joined before the seam, or going on from a round that begins where the heel does. */
  readonly from: 'seam' | 'round';
  /** Slip stitches that tie the corners to the leg in the last two rows. */
  readonly corners: boolean;
  /** Yarn letter, or null to go on with the yarn in hand. */
  readonly yarn: string | null;
}

/** Rows of the heel in all. */
export function heelRowCount({ leftFirst, leftSecond, step }: Pick<HeelPlan, 'leftFirst' | 'leftSecond' | 'step'>): number {
  if (step === 0) return 3 + leftFirst + leftSecond;
  return 1 + (2 * (leftFirst + leftSecond)) / step;
}

/**
 * The rows of a heel turned in short rows on the edge of the leg, centred on the seam (or on the middle of its stitches, in
 * rounds): narrowed at once in rows 2 and 3, or by `step` stitches a row; then each row works its own stitches and takes up
 * one open stitch (or `step`) more, until all are used (common practice). Refuses sides that leave no stitch in the middle,
 * and stepped sides that are not equal multiples of the step.
 */
export function heelRows(plan: HeelPlan): readonly MadeRow[] {
  const { stitches, leftFirst, leftSecond, step: by } = plan;
  const middle = stitches - leftFirst - leftSecond;
  if (middle < 1) throw new RangeError(`${leftFirst} and ${leftSecond} stitches left open of a heel of ${stitches}`);
  if (by > 0 && (leftFirst !== leftSecond || leftFirst % by !== 0)) throw new RangeError(`${leftFirst} and ${leftSecond} stitches left open in steps of ${by}, expected equal multiples`);
  const narrowed = by === 0 ? atOnce(plan) : stepped(plan);
  return [...begun(plan), ...narrowed, ...closing(plan, middle)];
}

function begun({ stitches, from, yarn }: HeelPlan): MadeRow[] {
  const hook = yarn === null ? [] : [withYarn(yarn)];
  if (from === 'round') return [rows('row1', 1, [...hook, next('sc', stitches), leave('rest')], stitches, 'sc', 'RS')];
  const before = Math.ceil(stitches / 2);
  return [
    step('join', joinBeforeSeam(before, yarn)),
    rows('row1', 1, [chain(1), same('sc'), next('sc', before - 1), plain('skipSeam'), next('sc', stitches - before), leave('rest')], stitches, 'sc', 'RS'),
  ];
}

function atOnce({ stitches, leftFirst, leftSecond }: HeelPlan): MadeRow[] {
  const second = stitches - leftFirst;
  const third = second - leftSecond;
  return [
    rows('row2', 1, [chain(1), plain('turn'), next('sc', second), leave(leftFirst)], second),
    rows('row3', 1, [chain(1), plain('turn'), next('sc', third), leave(leftSecond)], third),
  ];
}

function stepped({ stitches, leftFirst, leftSecond, step: by }: HeelPlan): MadeRow[] {
  const down = (leftFirst + leftSecond) / by;
  return [movingRows('narrow', down, [chain(1), plain('turn'), across('sc', 'end', by), leave(by)], stitches - down * by, -by)];
}

function closing({ step: by, leftFirst, leftSecond, corners }: HeelPlan, middle: number): MadeRow[] {
  const each = by === 0 ? 1 : by;
  const up = (leftFirst + leftSecond) / each;
  const body = [across('sc'), unworked('sc', each)];
  const plainRows = corners ? up - 2 : up;
  const made = movingRows('close', plainRows, [chain(1), plain('turn'), ...body], middle + plainRows * each, each);
  if (!corners) return [made];
  const tie = intoSection('slst', 'leg');
  return [
    made,
    rows('corner1', 1, [chain(1), plain('turn'), ...body, tie], middle + (up - 1) * each),
    rows('corner2', 1, [chain(1), plain('turn'), skip(1, 'slst'), ...body, tie], middle + up * each),
  ];
}

/** A heel turned in short rows as a written section, one entry a size. */
export interface HeelSettings {
  readonly stitches: readonly number[];
  readonly leftFirst: readonly number[];
  readonly leftSecond: readonly number[];
  /** Yarn letter, or null to go on with the yarn in hand. */
  readonly yarn: string | null;
}

/** The written section of a heel joined at a seam, both sides left at once. */
export function shortRowHeel(name: string, { stitches, leftFirst, leftSecond, yarn }: HeelSettings): string {
  const perSize = stitches.map((count, i) => heelRows({ stitches: count, leftFirst: leftFirst[i]!, leftSecond: leftSecond[i]!, step: 0, from: 'seam', corners: false, yarn }));
  return sectionText({ name: name.toUpperCase(), remark: 'turned in short rows', lines: joinSizes('heel', perSize, 'us') });
}
