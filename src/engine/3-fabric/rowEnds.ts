import { NONE, PLACE } from './edge.ts';
import { FLAG } from './fabric.ts';
import type { Hook } from './hook.ts';

/**
 * Opens the two ends of the flat row just worked, each as a place that hangs on the row's outermost stitch there. Rounds have
 * none, nor has a row that goes all round a ring, or one that turned between its stitches; an end that is tied to an earlier
 * row is closed, and so is the beginning of the row after it. What is made next lies beyond.
 */
export function openRowEnds(hook: Hook): void {
  const { edge, state, startBehind, lastPut, rowDirection } = hook;
  if (startBehind === NONE || lastPut === NONE) return;
  const wasTied = state.tied;
  state.tied = hook.stitches.has(edge.stitch.at(lastPut), FLAG.attaching);
  if (hook.round || hook.bent || fillsRing(hook)) return;
  const first = edge.beside(startBehind, rowDirection);
  // Turned already, the hook stands beyond the row.
  const turned = state.direction !== rowDirection && state.behind === edge.beside(lastPut, rowDirection);
  if (!wasTied) edge.insert(edge.add(edge.stitch.at(first), hook.row, PLACE.rowEnd, NONE), startBehind, rowDirection);
  if (state.tied) return;
  const end = edge.add(edge.stitch.at(lastPut), hook.row, PLACE.rowEnd, NONE);
  edge.insert(end, lastPut, rowDirection);
  if (turned) state.behind = end;
}

function fillsRing(hook: Hook): boolean {
  const { edge, lastPut, rowDirection } = hook;
  if (!hook.piece?.closed) return false;
  let place = edge.beside(lastPut, rowDirection);
  while (edge.isMark(place) || edge.isRowEnd(place)) place = edge.beside(place, rowDirection);
  return edge.row.at(place) === hook.row;
}

/** Row ends that lie next ahead, one after another. Slip stitches that don't count, and marks, may stand between. */
export function rowEndsAhead(hook: Hook): number {
  return rowEndPlaces(hook).length;
}

/** The row ends that lie next ahead, from the nearest on. */
export function rowEndPlaces(hook: Hook): readonly number[] {
  const places: number[] = [];
  let from = hook.state.behind;
  for (let place = nextRowEnd(hook, from); place !== NONE; place = nextRowEnd(hook, from)) {
    if (place === hook.state.behind || place === places[0]) break;
    places.push(place);
    from = place;
  }
  return places;
}

/** Takes the next row end; null where a stitch or the end of all stands before one. */
export function takeRowEnd(hook: Hook): { stitches: readonly number[]; place: number } | null {
  const { edge, state } = hook;
  const place = nextRowEnd(hook, state.behind);
  if (place === NONE) return null;
  let passesEnd = false;
  for (let between = edge.beside(state.behind, state.direction); between !== place; between = edge.beside(state.behind, state.direction)) {
    if (edge.isMark(between)) {
      passesEnd ||= edge.what.at(between) === PLACE.end;
      state.behind = between;
    } else hook.take(between);
  }
  const stitch = hook.take(place);
  if (passesEnd) moveMark(hook);
  return { place, stitches: [stitch] };
}

/** A border goes round a flat piece: its ring begins where the border does. */
function moveMark(hook: Hook): void {
  const { edge, state } = hook;
  const piece = hook.piece;
  if (!piece || hook.startBehind === NONE || hook.startBehind === piece.mark) return;
  if (state.behind === piece.mark) state.behind = edge.beside(piece.mark, -state.direction);
  edge.remove(piece.mark);
  edge.insert(piece.mark, hook.startBehind, hook.rowDirection);
}

function nextRowEnd(hook: Hook, from: number): number {
  const { edge, state } = hook;
  if (from === NONE) return NONE;
  let marks = 0;
  for (let place = edge.beside(from, state.direction); place !== from && marks < 2; place = edge.beside(place, state.direction)) {
    if (edge.isRowEnd(place)) return place;
    if (edge.isMark(place)) marks++;
    else if (!hook.isSlip(place)) return NONE;
  }
  return NONE;
}
