import type { Instruction } from '../notation/instruction.ts';
import { settleChains } from './chains.ts';
import { NONE, PLACE } from './edge.ts';
import { takeYarn } from './joins.ts';
import { amountOf, report, type RowWork } from './rowWork.ts';

/**
 * Joins at the nth stitch of an opening that chains over skipped stitches left in a ring, the last one that nothing was worked
 * into yet: the ring parts in two. The new one has the skipped stitches in the order of the round, then the undersides of the
 * chains back along the other side, each a place that can be worked once; the right side faces.
 */
export function joinAtOpening(work: RowWork, clause: Extract<Instruction, { kind: 'joinAt' }>): void {
  const { hook } = work;
  const { state, edge, stitches } = hook;
  takeYarn(work, clause);
  settleChains(hook);
  const which = hook.openings.findLastIndex((_, index) => !state.entered.includes(index));
  const opening = hook.openings[which];
  if (!opening) {
    report(work, 'wrong', 'notEnoughPlaces', clause.range, { expected: 1, found: 0, params: { what: 'open' } });
    return;
  }
  state.entered = [...state.entered, which];
  const piece = hook.startPiece(true);
  const places = [...opening.skipped.map((stitch) => [stitch, PLACE.top] as const), ...opening.chains.toReversed().map((stitch) => [stitch, PLACE.bottom] as const)];
  const nth = Math.max(1, amountOf(work, clause.nth));
  if (nth > places.length) report(work, 'wrong', 'notEnoughPlaces', clause.range, { expected: nth, found: places.length, params: { what: 'open' } });
  const from = (nth - 1) % places.length;
  let behind = piece.mark;
  for (const [stitch, what] of [...places.slice(from), ...places.slice(0, from)]) {
    const place = edge.add(stitch, stitches.rows.at(stitch), what, NONE);
    edge.insert(place, behind, 1);
    behind = place;
  }
  state.turned = true;
  state.sameIsAhead = true;
}
