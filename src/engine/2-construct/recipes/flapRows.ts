import { across, chain, joinBeforeSeam, leave, next, nextRowEnds, plain, same, skip, together, unworked, withYarn } from './clauses.ts';
import { rounds, rows, step, type MadeRow } from './madeRow.ts';

/** A heel flap with its turn and gusset, in one size. */
export interface FlapPlan {
  readonly stitches: number;
  /** Rows of the flap: even, so that it ends where it began. */
  readonly rows: number;
  /** Stitches in the middle of the turn, of the same parity as the heel. */
  readonly middle: number;
  readonly around: number;
  readonly from: 'seam' | 'round';
  readonly gusset: 'every' | 'second';
  readonly yarn: string;
  readonly footYarn: string;
}

/** Stitches of the first gusset round, and rounds that decrease two of them each to the foot's count. */
export function gussetCounts({ stitches, rows: count, middle, around }: Pick<FlapPlan, 'stitches' | 'rows' | 'middle' | 'around'>): { readonly picked: number; readonly decreases: number } {
  const picked = around - stitches + middle + 2 * count;
  return { picked, decreases: (picked - around) / 2 };
}

/** Rows of the turn, whose middle lies along the sole. */
export function turnRowCount({ stitches, middle }: Pick<FlapPlan, 'stitches' | 'middle'>): number {
  return 2 + (stitches - middle);
}

/** The flap, straight over the heel's stitches; the ends of its rows stay open for the gusset. Its last two rows narrow to the middle of the turn. */
export function flapRows(plan: FlapPlan): readonly MadeRow[] {
  const { stitches, from, yarn } = plan;
  const side = (stitches - plan.middle) / 2;
  const before = Math.ceil(stitches / 2);
  const first = from === 'seam'
    ? [step('join', joinBeforeSeam(before, yarn)), rows('row1', 1, [chain(1), same('sc'), next('sc', before - 1), plain('skipSeam'), next('sc', stitches - before), leave('rest')], stitches, 'sc', 'RS')]
    : [rows('row1', 1, [withYarn(yarn), next('sc', stitches), leave('rest')], stitches, 'sc', 'RS')];
  return [
    ...first,
    rows('rows', plan.rows - 1, [chain(1), plain('turn'), across('sc')], stitches),
    rows('turn1', 1, [chain(1), plain('turn'), next('sc', side + plan.middle), leave('rest')], side + plan.middle),
    rows('turn2', 1, [chain(1), plain('turn'), next('sc', plan.middle), leave(side)], plan.middle),
  ];
}

/** The turn: over the middle stitches only, each row tied with a slip stitch to one of those left at the side. */
export function turnRows({ stitches, middle }: Pick<FlapPlan, 'stitches' | 'middle'>): readonly MadeRow[] {
  const ties = stitches - middle;
  return [
    rows('tie1', 1, [chain(1), plain('turn'), across('sc'), unworked('slst', 1)], middle),
    rows('ties', ties - 1, [plain('turn'), skip(1, 'slst'), across('sc'), unworked('slst', 1)], middle),
  ];
}

/** The gusset: a round that picks up one stitch in each row end of the flap's sides (rows of single crochet are about as tall as a stitch is wide; common practice), then paired decreases beside the instep down to the foot's count. */
export function gussetRows(plan: FlapPlan): readonly MadeRow[] {
  const { middle, around, stitches, gusset, footYarn } = plan;
  const instep = around - stitches;
  const { picked, decreases } = gussetCounts(plan);
  const made: MadeRow[] = [
    rounds('pick', 1, [withYarn(footYarn), plain('turn'), skip(1, 'slst'), next('sc', middle), nextRowEnds('sc', plan.rows), next('sc', instep), nextRowEnds('sc', plan.rows)], picked),
  ];
  for (let i = 1; i <= decreases; i++) {
    const side = plan.rows - i;
    made.push(
      rounds(`even${i}`, gusset === 'second' ? 1 : 0, [across('sc', 'around')], picked - 2 * (i - 1)),
      rounds(`decrease${i}`, 1, [next('sc', middle + side - 1), together('sc', 2, 1), next('sc', instep), together('sc', 2, 1), next('sc', side - 1)], picked - 2 * i, 'sts'),
    );
  }
  return made;
}
