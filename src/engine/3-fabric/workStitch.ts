import { stitchRow } from '../craft/stitches.ts';
import { isCornerWord, isEnd, plainCall, type Instruction, type PlaceWord, type StitchCall } from '../notation/instruction.ts';
import { NONE, PLACE } from './edge.ts';
import { FLAG } from './fabric.ts';
import { stepBackAlongChains } from './chains.ts';
import { asksForCorners, cornersAhead, reachToCorner, takeCorner } from './corners.ts';
import { putSpace, settleTurningChain } from './turningChain.ts';
import { rowEndsAhead } from './rowEnds.ts';
import { amountOf, MOST_STITCHES, report, type RowWork } from './rowWork.ts';
import { isOfMeshes, takeOfGrid } from './workMeshes.ts';
import { workBesidePicot } from './workPicots.ts';

type Work = Extract<Instruction, { kind: 'work' }>;
type Placed = Extract<Instruction, { kind: 'work' | 'group' }>;

/** Works one `work` clause. */
export function workStitch(work: RowWork, clause: Work): void {
  const { hook } = work;
  if (work.group) {
    const count = clause.into.at === 'next' ? amountOf(work, clause.into.count) : 1;
    const flags = work.group.inSpace ? FLAG.inSpace : 0;
    for (let i = count * amountOf(work, clause.each); i > 0; i--) makeOne(work, clause.stitch, work.group.bases, flags | (work.group.count > 0 ? FLAG.sameBase : 0));
    return;
  }
  const each = amountOf(work, clause.each);
  if (clause.into.at === 'top' || (clause.stitch.kind === 'slst' && clause.into.at === 'fromHook' && hook.state.pending > 0 && !hook.state.pendingAtStart)) {
    workIntoTop(work, clause);
    return;
  }
  workInto(work, clause, clause.stitch.together, clause.stitch, (bases, flags) => {
    const from = clause.stitch.spike > 0 ? [ancestor(work, bases[0]!, clause.stitch.spike)] : bases;
    for (let i = 0; i < each; i++) makeOne(work, clause.stitch, from, flags | (i > 0 ? FLAG.sameBase : 0));
  });
}

/** Works several stitches into one place. */
export function workGroup(work: RowWork, clause: Extract<Instruction, { kind: 'group' }>, body: (inner: RowWork) => void): void {
  const first = clause.body.find((inner) => inner.kind === 'work');
  const call = first?.kind === 'work' ? first.stitch : plainCall('sc');
  workInto(work, clause, 1, call, (bases, flags) => {
    const inner = { bases, inSpace: (flags & FLAG.inSpace) !== 0, count: (flags & FLAG.sameBase) !== 0 ? 1 : 0 };
    work.group = inner;
    body(work);
    settleGroupChains(work);
    work.group = null;
  });
}

/** Chains inside a group hang as a space of their own. */
export function settleGroupChains(work: RowWork): void {
  const { hook } = work;
  if (hook.state.pending === 0) return;
  const end = hook.stitches.count;
  const first = end - hook.state.pending;
  hook.state.pending = 0;
  putSpace(hook, first, end);
}

/** Finds the places of a clause one after another and has something made in each. */
function workInto(work: RowWork, clause: Placed, together: number, call: StitchCall, make: (bases: readonly number[], flags: number) => void): void {
  const { hook } = work;
  const { into } = clause;
  const { state } = hook;
  if (state.piece === NONE || state.cut) {
    report(work, 'wrong', 'noPiece', clause.range);
    if (state.piece === NONE) return;
    state.cut = false;
  }
  if (into.at === 'ring') {
    const base = ringBase(work);
    if (base === NONE) {
      report(work, 'wrong', 'noRing', clause.range);
      return;
    }
    // Chains after a stitch into the ring hang between it and the next; those before the first are its height.
    const before = hook.stitches.count - state.pending - 1;
    if (before >= 0 && hook.stitches.has(before, FLAG.inSpace)) settleGroupChains(work);
    else settleTurningChain(hook, call.kind, work.reading);
    make([base], FLAG.inSpace);
    return;
  }
  if (into.at === 'fromHook') {
    if (!stepBackAlongChains(hook, into.nth, call.kind, work.reading)) {
      report(work, 'wrong', 'notEnoughPlaces', clause.range, { expected: into.nth, found: state.pending });
      return;
    }
    takeAndMake(work, clause, 1, 1, 'ch', make, 0);
    return;
  }
  // Row ends that come next are worked on round the corner, without a turn.
  if (!('what' in into) || into.what !== 'rowEnd' || rowEndsAhead(hook) === 0) impliedTurn(work);
  const turning = state.pending > 0 && state.pendingAtStart;
  const counted = turning && settleTurningChain(hook, call.kind, work.reading);
  if (!turning) settleGroupChains(work);
  switch (into.at) {
    case 'next':
      takeAndMake(work, clause, amountOf(work, into.count), together, into.what, make, 0);
      return;
    case 'marker':
      takeAndMake(work, clause, 1, together, 'st', make, 0);
      return;
    case 'first':
      if (counted) make(state.sameBases, FLAG.sameBase);
      else takeAndMake(work, clause, 1, together, into.what, make, 0);
      return;
    case 'last': {
      const rest = hook.reachCount(into.what);
      if (rest > together) {
        report(work, 'wrong', 'lastNotNext', clause.range, { expected: together, found: rest });
        for (let i = rest; i > together; i--) hook.takeNext(into.what);
      }
      takeAndMake(work, clause, 1, together, into.what, make, 0);
      return;
    }
    case 'across':
      workAcross(work, clause, together, make);
      return;
    case 'same':
      if (state.sameIsAhead) takeAndMake(work, clause, 1, 1, 'st', make, 0);
      else if (state.sameBases.length > 0) make(state.sameBases, FLAG.sameBase | (state.sameBases.length > 1 ? FLAG.inSpace : 0));
      else report(work, 'wrong', 'noBase', clause.range);
      return;
    case 'open':
    case 'section':
      workBeyond(work, clause, amountOf(work, into.count), together, make);
      return;
    case 'beside':
      workBesidePicot(work, into, clause.range, make);
      return;
    case 'top':
      return;
  }
}

function workAcross(work: RowWork, clause: Placed, together: number, make: (bases: readonly number[], flags: number) => void): void {
  const { hook } = work;
  if (clause.into.at !== 'across') return;
  const { what, except, word } = clause.into;
  const reach =
    word === 'marker' ? reachToMarker(work)
    : word === 'corner' ? reachToCorner(work, clause.range)
    : word === 'space' ? reachToSpace(work)
    : isCornerWord(what) ? cornersAhead(work, clause.range).length
    : hook.reachCount(what);
  // At a corner already, or beyond the last one, there may be nothing to work before the next.
  if ((word === 'corner' || word === 'space' || isCornerWord(what)) && reach === 0) {
    if (word === 'corner') passEndSpaces(work, clause);
    return;
  }
  if (word === 'marker' && hook.state.marker === NONE) report(work, 'wrong', 'noMarker', clause.range);
  const places = reach - amountOf(work, except);
  if (places <= 0) {
    report(work, 'wrong', 'notEnoughPlaces', clause.range, { expected: amountOf(work, except) + 1, found: reach });
    return;
  }
  if (places % together !== 0) report(work, 'wrong', 'repeatUneven', clause.range, { found: places, expected: together, params: { over: places % together } });
  takeAndMake(work, clause, Math.floor(places / together), together, what, make, 0);
  if (amountOf(work, except) === 0 && (isEnd(word) || word === 'corner') && !isCornerWord(what)) passEndSpaces(work, clause);
}

/** Chain spaces left at the end of the row below lie under this row; slip stitches that don't count stay on the edge, and a corner is still to come. */
function passEndSpaces(work: RowWork, { into, range }: Placed): void {
  const { hook } = work;
  if (into.at === 'across' && into.word === 'corner' && cornersAhead(work, range).length > 0) return;
  for (let place = hook.ahead(); hook.inReach(place) && !hook.isStitch(place) && !hook.isSlip(place); place = hook.ahead()) hook.take(place);
}

/** Stitches before the next chain space; without one, to the end. */
function reachToSpace({ hook }: RowWork): number {
  let count = 0;
  const first = hook.ahead();
  for (let place = first; hook.inReach(place) && hook.edge.run.at(place) === NONE; ) {
    if (hook.isStitch(place)) count++;
    place = hook.ahead(place);
    if (place === first) break;
  }
  return count;
}

function reachToMarker(work: RowWork): number {
  const { hook } = work;
  let count = 0;
  const first = hook.ahead();
  // Without a marker a round has no end to stop at but its own beginning.
  for (let place = first; hook.inReach(place) && place !== hook.state.marker; ) {
    if (hook.isStitch(place)) count++;
    place = hook.ahead(place);
    if (place === first) break;
  }
  return count;
}

/** Takes `count` times `together` places that answer `what` and makes what is wanted in each. */
function takeAndMake(work: RowWork, clause: Placed, count: number, together: number, what: PlaceWord, make: (bases: readonly number[], flags: number) => void, flags: number): void {
  const { hook } = work;
  if (count > MOST_STITCHES) {
    report(work, 'wrong', 'tooManyStitches', clause.range, { found: count, expected: MOST_STITCHES });
    work.stopped = true;
    return;
  }
  const grid = what === 'st' && isOfMeshes(work.row.body);
  for (let done = 0; done < count; done++) {
    if (hook.stitches.count > MOST_STITCHES * 5) {
      report(work, 'wrong', 'tooManyStitches', clause.range, { found: hook.stitches.count, expected: MOST_STITCHES * 5 });
      work.stopped = true;
      return;
    }
    const bases: number[] = [];
    let space = false;
    let farSide = 0;
    for (let i = 0; i < together; i++) {
      const corner = isCornerWord(what) ? takeCorner(work, clause.range) : null;
      if (isCornerWord(what) && !corner && asksForCorners(work)) return;
      const taken = corner ?? (grid ? takeOfGrid(hook) : hook.takeNext(what)) ?? (what !== 'st' && what !== 'sp' && what !== 'rowEnd' && !isCornerWord(what) ? hook.takeNext('st') : null);
      if (!taken) {
        report(work, 'wrong', 'notEnoughPlaces', clause.range, { expected: count * together, found: done * together + i, params: { what } });
        if (bases.length === 0) return;
        break;
      }
      if (hook.edge.what.at(taken.place) === PLACE.bottom) farSide = FLAG.otherSide;
      // A stitch into a row's end goes round its outermost stitch.
      const around = what === 'sp' || corner?.space === true;
      space ||= (around || what === 'rowEnd') && taken.stitches.length > 0;
      // A chain space stands for its middle chain.
      bases.push(around ? taken.stitches[taken.stitches.length >> 1]! : taken.stitches[0]!);
    }
    hook.state.sameBases = bases;
    hook.state.sameIsAhead = false;
    make(bases, flags | farSide | (space ? FLAG.inSpace : 0));
  }
}

/** Works beyond the row below: into open stitches of earlier rows, or of another section. */
function workBeyond(work: RowWork, clause: Placed, count: number, together: number, make: (bases: readonly number[], flags: number) => void): void {
  const { hook } = work;
  // "sc2tog over next 2 unworked sts" names its places, so they are counted and drawn together as they come.
  const places = Math.max(count, together);
  let bases: number[] = [];
  let flags = clause.into.at === 'section' ? FLAG.corner : 0;
  for (let done = 0; done < places; done++) {
    let place = hook.ahead();
    while (place !== NONE && hook.isSlip(place) && hook.edge.row.at(place) !== hook.row) {
      hook.take(place);
      place = hook.ahead();
    }
    if (place === NONE || hook.edge.row.at(place) === hook.row) {
      report(work, 'wrong', 'notEnoughPlaces', clause.range, { expected: places, found: done, params: { what: 'open' } });
      if (bases.length === 0) return;
    } else {
      hook.inReach(place);
      if (!hook.round && hook.edge.row.at(place) !== hook.below) flags |= FLAG.attaching;
      hook.standBefore(place);
      bases.push(hook.take(place));
      if (bases.length < together && done + 1 < places) continue;
    }
    hook.state.sameBases = bases;
    hook.state.sameIsAhead = false;
    make(bases, flags);
    if (place === NONE) return;
    bases = [];
    flags &= ~FLAG.attaching;
  }
}

/** On a flat edge the pattern may leave the turn unsaid; a row then begins with the stitch made last. */
export function impliedTurn(work: RowWork): void {
  const { hook } = work;
  const { state } = hook;
  if (!state.turned && !state.cut && hook.placed === 0 && !hook.round && !hook.piece!.closed && !work.join && !hook.edge.isMark(state.behind)) hook.turn();
  else if (hook.ahead() === NONE && hook.placed === 0 && state.behind !== NONE && !hook.edge.isMark(state.behind)) hook.turn();
}

/** The stitch that stands for the ring's middle; chains that form the ring go under. */
function ringBase(work: RowWork): number {
  const { hook } = work;
  const piece = hook.piece;
  if (!piece || piece.centre === NONE) return NONE;
  if (piece.foundation[1] > piece.foundation[0] && hook.stitches.has(piece.foundation[0], FLAG.foundation)) {
    for (let place = hook.ahead(); place !== NONE && hook.stitches.has(hook.edge.stitch.at(place), FLAG.foundation); place = hook.ahead()) hook.take(place);
  }
  return piece.centre;
}

function workIntoTop(work: RowWork, clause: Work): void {
  const { hook } = work;
  if (clause.stitch.kind === 'picot') {
    settleBeforePicot(work);
    for (let i = amountOf(work, clause.each); i > 0; i--) hook.make(clause.stitch, hook.state.thread === NONE ? [] : [hook.state.thread], 0);
    return;
  }
  // Chains closed by a slip stitch in their own beginning hang as a picot: no place on the edge.
  const base = hook.state.pending > 0 ? hook.stitches.count - hook.state.pending : hook.state.thread;
  hook.state.pending = 0;
  hook.make(clause.stitch, base === NONE ? [] : [base], 0);
}

function ancestor(work: RowWork, stitch: number, rows: number): number {
  let base = stitch;
  for (let i = 0; i < rows; i++) {
    const below = work.hook.stitches.firstBase(base);
    if (below === NONE) break;
    base = below;
  }
  return base;
}

/** What a picot hangs on stands already: chains before it are a space, or the turning chain of their height. */
function settleBeforePicot(work: RowWork): void {
  const { state } = work.hook;
  if (state.pending === 0) return;
  if (state.pendingAtStart && !work.group) settleTurningChain(work.hook, RISEN[Math.min(state.pending, RISEN.length) - 1]!, work.reading);
  else settleGroupChains(work);
}

/** The stitch that a turning chain of 1, 2, … rises to. */
const RISEN = ['sc', 'hdc', 'dc', 'tr', 'dtr'] as const;

/** Makes one stitch (shells and V-stitches: all of theirs) and puts its top on the edge. */
function makeOne(work: RowWork, call: StitchCall, bases: readonly number[], flags: number): void {
  const { hook } = work;
  if (work.group) {
    settleGroupChains(work);
    work.group.count++;
  }
  const row = stitchRow(call.kind);
  if (call.kind === 'shell' || call.kind === 'vst') {
    const legs = call.kind === 'vst' ? 2 : call.legs || row.legs;
    for (let leg = 0; leg < legs; leg++) {
      if (call.kind === 'vst' && leg === 1) {
        const chain = hook.make('ch', [], 0);
        putSpace(hook, chain, chain + 1);
      }
      hook.put(hook.make(call.legKind ?? row.legKind ?? 'dc', bases, flags | FLAG.counts | (leg > 0 ? FLAG.sameBase : 0)));
    }
    return;
  }
  const counts = row.counts && call.kind !== 'slst' ? FLAG.counts : 0;
  hook.put(hook.make(call, bases, flags | counts));
  hook.state.turned = false;
}
