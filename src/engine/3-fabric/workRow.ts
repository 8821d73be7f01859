import type { Instruction } from '../notation/instruction.ts';
import { goToOtherSide, settleChains } from './chains.ts';
import { NONE, PLACE } from './edge.ts';
import { FLAG } from './fabric.ts';
import { closeRing, closeUp, joinAt, joinRound, sewSeam } from './joins.ts';
import { joinAtOpening } from './openings.ts';
import { amountOf, MOST_STITCHES, report, type RowWork } from './rowWork.ts';
import { workEvenly } from './workEvenly.ts';
import { workInPattern, workSpread } from './workPattern.ts';
import { workRepeat } from './workRepeat.ts';
import { workMeshes } from './workMeshes.ts';
import { picotsAhead, skipPicots } from './workPicots.ts';
import { impliedTurn, settleGroupChains, workGroup, workStitch } from './workStitch.ts';

/** Works the clauses of a row one after another, until they end or the row is stopped. */
export function workRow(work: RowWork): void {
  work.row.body.forEach((clause, index) => {
    work.hook.instruction = index;
    if (!work.stopped) workClause(work, clause);
  });
}

function workBody(work: RowWork, body: readonly Instruction[]): void {
  for (const clause of body) if (!work.stopped) workClause(work, clause);
}

function workClause(work: RowWork, clause: Instruction): void {
  const { hook, program } = work;
  const { state } = hook;
  switch (clause.kind) {
    case 'work':
      workStitch(work, clause);
      return;
    case 'group':
      workGroup(work, clause, (inner) => workBody(inner, clause.body));
      return;
    case 'chain':
      makeChains(work, clause);
      return;
    case 'skip':
      skip(work, clause);
      return;
    case 'skipSeam': {
      let beyond = state.behind === NONE ? NONE : hook.edge.beside(state.behind, state.direction);
      while (beyond !== NONE && hook.edge.isRowEnd(beyond)) beyond = hook.edge.beside(beyond, state.direction);
      if (beyond === NONE || !hook.edge.isMark(beyond) || hook.edge.what.at(beyond) === PLACE.end) report(work, 'doubtful', 'noSeam', clause.range);
      return;
    }
    case 'turn':
      // Chains made before a turn rise to the row after it.
      if (state.pending > 0) state.pendingAtStart = true;
      hook.turn();
      return;
    case 'leave':
      leave(work, clause);
      return;
    case 'repeat':
      workRepeat(work, clause, (body) => workBody(work, body));
      return;
    case 'ring': {
      const piece = hook.startPiece(true);
      state.thread = NONE;
      piece.centre = hook.make('ring', [], FLAG.foundation);
      piece.foundation = [piece.centre, piece.centre];
      work.startsPiece = false;
      return;
    }
    case 'joinRing':
      closeRing(work, clause);
      return;
    case 'join':
      joinRound(work, clause);
      return;
    case 'joinAt':
      if (clause.from === 'opening') joinAtOpening(work, clause);
      else joinAt(work, clause, 1);
      return;
    case 'yarn': {
      const index = program.letters.indexOf(clause.letter);
      if (index < 0) report(work, 'wrong', 'unknownYarn', clause.range, { found: clause.letter, expected: program.letters.join(', ') });
      else state.yarn = index;
      return;
    }
    case 'marker':
      state.marker = state.behind;
      return;
    case 'otherSide':
      if (!goToOtherSide(hook)) report(work, 'wrong', 'noBase', clause.range);
      return;
    case 'seam':
      if (clause.closes && hook.piece?.closed) closeUp(work, clause);
      else sewSeam(work, clause);
      return;
    case 'fastenOff':
      settleChains(hook);
      state.cut = true;
      state.thread = NONE;
      return;
    case 'drawThrough':
      for (let place = hook.ahead(); place !== NONE; place = hook.ahead()) hook.take(place);
      return;
    case 'forSizes':
      // A row of a program is one size's already; a row worked without one is met here.
      if (clause.sizes.includes(program.size)) workBody(work, clause.body);
      return;
    case 'inPattern':
      workInPattern(work, clause);
      return;
    case 'mesh':
      workMeshes(work, clause);
      return;
    case 'spread':
      workSpread(work, clause);
      return;
    case 'evenly':
      workEvenly(work, clause);
      return;
    case 'noJoin':
    case 'remark':
    case 'unread':
    case 'asRows':
      return;
  }
}

function makeChains(work: RowWork, clause: Extract<Instruction, { kind: 'chain' }>): void {
  const { hook } = work;
  const { state } = hook;
  const count = amountOf(work, clause.count);
  if (count > MOST_STITCHES) {
    report(work, 'wrong', 'tooManyStitches', clause.range, { found: count, expected: MOST_STITCHES });
    work.stopped = true;
    return;
  }
  if (work.group) settleGroupChains(work);
  else if (work.startsPiece && hook.placed === 0 && state.pending === 0) hook.startPiece(false);
  state.cut = false;
  if (state.pending === 0) state.pendingAtStart = hook.placed === 0;
  state.pendingCounts = clause.counts;
  state.turned = state.turned && state.pendingAtStart;
  for (let i = 0; i < count; i++) hook.make('ch', [], 0);
  state.pending += count;
  if (clause.counts === 'each') settleChains(hook);
}

function skip(work: RowWork, clause: Extract<Instruction, { kind: 'skip' }>): void {
  const { hook } = work;
  if (!work.group && hook.state.pending > 0 && !hook.state.pendingAtStart) settleGroupChains(work);
  if (!work.group && hook.state.piece !== NONE) impliedTurn(work);
  const count = amountOf(work, clause.count);
  if (clause.what === 'picot') {
    const found = skipPicots(hook, count);
    if (found < count) report(work, 'wrong', 'notEnoughPlaces', clause.range, { expected: count, found, params: { what: clause.what } });
    return;
  }
  const { laid } = hook;
  const under: number[] = [];
  // Chains that nothing was worked after yet: an opening that can be worked into later.
  const opens = hook.round && clause.what === 'st' && laid.length > 0 && hook.edge.stitch.at(hook.lastPut) === laid.at(-1);
  for (let i = 0; i < count; i++) {
    const next = hook.ahead();
    // "Skip the sl st" and "skip 1 st" take a slip stitch that doesn't count, if it is what comes next.
    const slip = next !== NONE && hook.isSlip(next) && (clause.what === 'st' || clause.what === 'slst');
    if (slip && hook.inReach(next)) hook.take(next);
    else {
      const taken = hook.takeNext(clause.what);
      if (!taken) {
        report(work, 'wrong', 'notEnoughPlaces', clause.range, { expected: count, found: i, params: { what: clause.what } });
        return;
      }
      under.push(...taken.stitches);
    }
  }
  if (opens && under.length > 0) hook.openings.push({ chains: laid, skipped: under });
}

function leave(work: RowWork, clause: Extract<Instruction, { kind: 'leave' }>): void {
  const { hook } = work;
  settleChains(hook);
  work.leftSaid = true;
  work.stopped = true;
  if (clause.count === 'rest') return;
  const said = amountOf(work, clause.count);
  const rest = clause.what === 'picot' ? picotsAhead(hook) : Math.max(hook.reachCount('st'), hook.reachCount('sp'));
  if (rest !== said) report(work, 'wrong', 'leftCount', clause.range, { found: rest, expected: said });
}
