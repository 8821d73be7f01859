import { across, chain, next, plain, together, withYarn } from './clauses.ts';
import { evenRow } from './evenRow.ts';
import { rounds, rows, step, type MadeRow } from './madeRow.ts';
import { eventRows, spreadEvenly } from './spreadEvenly.ts';

/** The leg of a sock in one size. */
export interface LegPlan {
  readonly way: 'flat' | 'rounds';
  readonly yarn: string;
  /** Stitches at its top and at the ankle; their difference is even. */
  readonly top: number;
  readonly ankle: number;
  readonly rows: number;
  /** In rounds: stitches from the start of the round to the centre back at the ankle. */
  readonly toCentre: number;
}

/**
 * The rows of a leg: even, or decreased in pairs, evenly from the top to the ankle: at both edges of a flat panel, on either
 * side of the centre back in rounds. With more pairs than every second row can take, rows take several, spread evenly where they find
 * no room at the edges. Flat, it is then
 * seamed to a ring. Refuses a leg that is wider at the ankle, or by an odd number at the top.
 */
export function legRows(plan: LegPlan): readonly MadeRow[] {
  const { top, ankle, way } = plan;
  if (top < ankle || (top - ankle) % 2 !== 0) throw new RangeError(`${top} stitches at the top and ${ankle} at the ankle, expected an even number more at the top`);
  const pairs = (top - ankle) / 2;
  const events = Math.min(pairs, Math.max(1, Math.floor(plan.rows / 2)));
  const at = pairs === 0 ? [] : eventRows(plan.rows, events);
  const units = pairs === 0 ? [] : spreadEvenly(pairs, events);
  const made: MadeRow[] = [];
  let count = top;
  let row = 0;
  at.forEach((event, i) => {
    made.push(even(plan, `even${i + 1}`, event - row, count));
    count -= 2 * units[i]!;
    made.push(decrease(plan, `decrease${i + 1}`, units[i]!, count));
    row = event + 1;
  });
  made.push(even(plan, 'rows', plan.rows - row, count));
  return way === 'flat' ? [...made, step('fasten', plain('fastenOff')), step('seam', plain('seam'))] : made;
}

function even({ way, yarn }: LegPlan, role: string, count: number, made: number): MadeRow {
  if (way === 'rounds') return rounds(role, count, [withYarn(yarn), across('sc', 'around')], made);
  return rows(role, count, [withYarn(yarn), chain(1), plain('turn'), across('sc')], made);
}

function decrease({ way, yarn, ankle, toCentre }: LegPlan, role: string, pairs: number, made: number): MadeRow {
  const from = made + 2 * pairs;
  if (way === 'flat') {
    if (4 * pairs >= from) return rows(role, 1, [withYarn(yarn), chain(1), plain('turn'), ...evenRow('sc', from, made, 'staggered', 'across')], made, 'sts');
    return rows(role, 1, [withYarn(yarn), chain(1), plain('turn'), together('sc', 2, pairs), across('sc', 'end', 2 * pairs), together('sc', 2, pairs)], made, 'sts');
  }
  // Before the centre stand `toCentre` stitches and half of what is still to be decreased.
  const before = toCentre + (made - ankle) / 2 + pairs;
  if (2 * pairs + 1 >= Math.min(before, from - before)) return rounds(role, 1, [withYarn(yarn), ...evenRow('sc', from, made, 'stacked')], made, 'sts');
  return rounds(role, 1, [withYarn(yarn), next('sc', before - 2 * pairs - 1), together('sc', 2, pairs), next('sc', 2), together('sc', 2, pairs), across('sc', 'around')], made, 'sts');
}
