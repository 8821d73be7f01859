import type { Instruction } from '../notation/instruction.ts';
import { settleChains } from './chains.ts';
import { NONE, PLACE } from './edge.ts';
import { FLAG } from './fabric.ts';
import type { Hook, Piece } from './hook.ts';
import { amountOf, report, type RowWork } from './rowWork.ts';

type Clause<K extends Instruction['kind']> = Extract<Instruction, { kind: K }>;

/** Closes a flat edge to a ring; chains of the foundation that nothing was worked into drop off. */
export function closeEdge(hook: Hook, piece: Piece, mark: number): void {
  hook.close(piece, mark);
  for (let place = hook.ahead(); place !== NONE && isIdleFoundation(hook, place); place = hook.ahead()) hook.take(place);
}

function isIdleFoundation(hook: Hook, place: number): boolean {
  return hook.edge.row.at(place) !== hook.row && hook.stitches.has(hook.edge.stitch.at(place), FLAG.foundation);
}

/** `join to form a ring`: closes the chains just made (or, after stitches, the round). */
export function closeRing(work: RowWork, clause: Clause<'joinRing'>): void {
  const { hook } = work;
  const piece = hook.piece;
  const chainsOnly = hook.state.pending > 0 && hook.placed === 0;
  if (!piece || (!chainsOnly && hook.placed === 0 && piece.foundation[0] === piece.foundation[1])) {
    report(work, 'wrong', 'noRing', clause.range);
    return;
  }
  settleChains(hook);
  if (!piece.closed) hook.close(piece, PLACE.roundStart);
  if (piece.centre === NONE) piece.centre = piece.foundation[0];
  hook.state.facing = 1;
  // The chains of the ring are no part of a round that begins in the same row.
  hook.startBehind = NONE;
  hook.make('slst', [piece.foundation[0]], FLAG.join);
}

/** `join with sl st in first st`: closes the round; the slip stitch takes no place and counts as no stitch. */
export function joinRound(work: RowWork, clause: Clause<'join'>): void {
  const { hook } = work;
  const piece = hook.piece;
  if (!piece || (hook.placed === 0 && hook.state.pending === 0)) {
    report(work, 'wrong', 'noBase', clause.range);
    return;
  }
  if (hook.placed === 0) {
    closeRing(work, { kind: 'joinRing', range: clause.range });
    return;
  }
  settleChains(hook);
  if (!piece.closed) closeEdge(hook, piece, PLACE.roundStart);
  const first = hook.ahead();
  hook.make('slst', first === NONE ? [] : [hook.edge.stitch.at(first)], FLAG.join);
  hook.state.sameIsAhead = true;
}

/** Sews the side edges together: the edge closes to a ring with the seam between its last and its first stitch. */
export function sewSeam(work: RowWork, clause: Clause<'seam'>): void {
  const { hook } = work;
  const piece = hook.piece;
  if (!piece || piece.closed) {
    report(work, 'wrong', 'noSeam', clause.range);
    return;
  }
  settleChains(hook);
  hook.close(piece, PLACE.seam);
  // The seam takes the ends of all rows on both sides.
  for (const way of [1, -1]) {
    for (let end = hook.edge.beside(piece.mark, way); hook.edge.isRowEnd(end); end = hook.edge.beside(piece.mark, way)) hook.dropRowEnd(end);
  }
  const rightSide = hook.state.direction * hook.state.facing;
  const before = hook.edge.beside(piece.mark, -rightSide);
  const after = hook.edge.beside(piece.mark, rightSide);
  if (before === piece.mark) return;
  hook.seams.push({ row: hook.edge.row.at(before), before: hook.edge.stitch.at(before), after: hook.edge.stitch.at(after) });
}

/**
 * Closes a ring laid flat, as a toe: from the hook on, the stitches of its first half are joined to those of the second, the
 * nearest to the last. With an odd number one lies at the fold, on itself. Takes every place; makes no stitch.
 */
export function closeUp(work: RowWork, clause: Clause<'seam'>): void {
  const { hook } = work;
  settleChains(hook);
  const open: number[] = [];
  for (let place = hook.ahead(); place !== NONE; place = hook.ahead()) {
    const counts = hook.isStitch(place);
    hook.standBefore(place);
    const stitch = hook.take(place);
    if (counts) open.push(stitch);
  }
  if (open.length < 2) {
    report(work, 'wrong', 'noSeam', clause.range);
    return;
  }
  hook.closings.push({ row: hook.row, pairs: open.slice(0, open.length >> 1).map((stitch, i) => [stitch, open[open.length - 1 - i]!] as const) });
}

/** Takes up the yarn that a join names. */
export function takeYarn(work: RowWork, { yarn, range }: Clause<'joinAt'>): void {
  const { hook, program } = work;
  if (yarn === null) return;
  const index = program.letters.indexOf(yarn);
  if (index < 0) report(work, 'wrong', 'unknownYarn', range, { found: yarn, expected: program.letters.join(', ') });
  else hook.state.yarn = index;
}

/**
 * Puts the hook at the nth place before or after the seam (or at the first place), facing so that *before* works towards the
 * seam and *after* away from it. `facing` 1: the right side, -1: the wrong side. Takes no place.
 */
export function joinAt(work: RowWork, clause: Clause<'joinAt'>, facing: 1 | -1): void {
  const { hook } = work;
  const { state, edge } = hook;
  const piece = hook.piece;
  takeYarn(work, clause);
  if (!piece) {
    report(work, 'wrong', 'noPiece', clause.range);
    return;
  }
  settleChains(hook);
  if (!piece.closed && clause.from !== 'start') report(work, 'wrong', 'noSeam', clause.range);
  state.direction = state.direction * state.facing * facing;
  state.facing = facing;
  state.cut = false;
  state.thread = NONE;
  state.turned = true;
  state.sameIsAhead = true;
  hook.below = NONE;
  const nth = clause.from === 'start' ? 1 : Math.max(1, amountOf(work, clause.nth));
  const way = clause.from === 'beforeSeam' ? -state.direction : state.direction;
  let place = piece.mark;
  let found = 0;
  while (found < nth) {
    const next = edge.beside(place, way);
    if (next === piece.mark) break;
    place = next;
    if (hook.isStitch(place)) found++;
  }
  if (found < nth) report(work, 'wrong', 'notEnoughPlaces', clause.range, { expected: nth, found });
  if (place === piece.mark) return;
  state.behind = edge.beside(place, -state.direction);
}
