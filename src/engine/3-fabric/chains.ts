import type { StitchKind } from '../craft/stitches.ts';
import { stitchRow } from '../craft/stitches.ts';
import { NONE, PLACE } from './edge.ts';
import { FLAG } from './fabric.ts';
import type { Hook } from './hook.ts';
import { putSpace, turningChainCounts, type ChainReading } from './turningChain.ts';

/** Puts pending chains on the edge that are no turning chain: a foundation, new stitches, or a chain space. */
export function settleChains(hook: Hook): void {
  const { state, stitches } = hook;
  const end = stitches.count;
  const first = end - state.pending;
  if (state.pending === 0) return;
  state.pending = 0;
  const piece = hook.piece!;
  if (piece.foundation[1] === piece.foundation[0] && piece.centre === NONE && hook.ahead() === NONE && state.behind === piece.mark) {
    piece.foundation = [first, end];
    for (let chain = first; chain < end; chain++) {
      stitches.mark(chain, FLAG.foundation);
      hook.put(chain);
    }
  } else if (state.pendingCounts === 'each') {
    for (let chain = first; chain < end; chain++) {
      stitches.mark(chain, FLAG.counts);
      hook.put(chain);
    }
    hook.laid = Array.from({ length: end - first }, (_, i) => first + i);
  } else {
    putSpace(hook, first, end);
  }
}

/**
 * Prepares work into the nth chain from the hook: lays chains just made where they will be worked back along, turns at the
 * end of a foundation, and takes off the chains that are left out; these stand at the row's edge and count as its stitch
 * where the rule of the height says so. Returns whether there are chains enough.
 */
export function stepBackAlongChains(hook: Hook, nth: number, kind: StitchKind, reading: ChainReading): boolean {
  const { state, edge, stitches } = hook;
  const pending = state.pending;
  if (pending > 0 && (state.turned || !state.pendingAtStart)) {
    if (pending < nth) return false;
    const first = stitches.count - pending;
    const beyond = hook.ahead();
    const row = beyond === NONE ? hook.row - 1 : edge.row.at(beyond);
    state.pending = 0;
    for (let chain = first; chain < first + pending; chain++) {
      stitches.mark(chain, FLAG.foundation);
      hook.putAhead(chain, PLACE.top, row);
    }
  } else {
    settleChains(hook);
  }
  if (hook.ahead() === NONE && state.behind !== NONE && !edge.isMark(state.behind)) hook.turn();
  const skipped: number[] = [];
  while (skipped.length < nth - 1) {
    const place = hook.ahead();
    if (place === NONE) return false;
    skipped.push(hook.take(place));
  }
  if (hook.ahead() === NONE) return false;
  hook.below = edge.row.at(hook.ahead());
  standBeside(hook, skipped, kind, reading);
  return true;
}

/** The chains left out before the first stitch of a row stand beside it. */
function standBeside(hook: Hook, skipped: readonly number[], kind: StitchKind, reading: ChainReading): void {
  if (skipped.length === 0) return;
  const { state, stitches } = hook;
  const height = Math.min(skipped.length, Math.max(1, stitchRow(kind).turningChains));
  // They leave the foundation for the row's edge: nothing used them.
  hook.used -= skipped.length;
  for (const chain of skipped) {
    stitches.moveToRow(chain, hook.row);
    stitches.unmark(chain, FLAG.foundation);
    stitches.mark(chain, FLAG.turning);
  }
  if (turningChainCounts(kind, skipped.length, state.pendingCounts, reading)) {
    // The chain made last is the top.
    stitches.mark(skipped[0]!, FLAG.counts);
    stitches.standOn(skipped[0]!, hook.edge.stitch.at(hook.ahead()));
    hook.put(skipped[0]!);
  }
  // Half of the chains beyond the height span the foundation that is left out, the others hang as a space (mesh).
  const space = Math.floor((skipped.length - height) / 2);
  if (space > 0) putSpace(hook, skipped[0]! - space + 1, skipped[0]! + 1);
}

/** Goes round the end of the foundation chain: puts the far sides of its chains ahead, all but the end chain just worked into. */
export function goToOtherSide(hook: Hook): boolean {
  const piece = hook.piece;
  if (!piece || piece.foundation[0] === piece.foundation[1]) return false;
  const [first, end] = piece.foundation;
  const last = hook.state.sameBases[0] ?? first;
  const used: number[] = [];
  for (let chain = last + 1; chain < end; chain++) if (hook.stitches.has(chain, FLAG.foundation)) used.push(chain);
  // The nearest comes first, so put the farthest ahead first.
  for (const chain of used.reverse()) hook.putAhead(chain, PLACE.bottom, hook.below);
  return used.length > 0;
}
