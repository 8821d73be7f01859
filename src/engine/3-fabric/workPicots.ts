import { stitchCode } from '../craft/stitches.ts';
import type { Into, TextRange } from '../notation/instruction.ts';
import { NONE } from './edge.ts';
import { FLAG } from './fabric.ts';
import type { Hook } from './hook.ts';
import { report, type RowWork } from './rowWork.ts';

type Beside = Extract<Into, { at: 'beside' }>;

/**
 * Works before or after the next picot of the row below. A picot is no place on the edge: it hangs between two stitches, and
 * what is worked beside it shares the base of the stitch before. Stitches passed on the way to it lie under the row.
 */
export function workBesidePicot(work: RowWork, into: Beside, range: TextRange, make: (bases: readonly number[], flags: number) => void): void {
  const { hook } = work;
  if (!goToPicot(hook, into.side === 'after')) {
    report(work, 'wrong', 'notEnoughPlaces', range, { expected: 1, found: 0, params: { what: into.what } });
    return;
  }
  const ahead = hook.ahead();
  const shared = hook.state.sameBases.at(-1);
  const base = shared ?? (ahead === NONE ? NONE : hook.edge.stitch.at(ahead));
  make(base === NONE ? [] : [base], shared === undefined ? 0 : FLAG.sameBase);
}

/** Passes over so many picots, and the stitches before the last of them. Returns how many there were. */
export function skipPicots(hook: Hook, count: number): number {
  for (let done = 0; done < count; done++) if (!goToPicot(hook, true)) return done;
  return count;
}

/** Picots of the row below from the hook on. Linear in what is in reach. */
export function picotsAhead(hook: Hook): number {
  let count = near(hook, hook.ahead()).length;
  const first = hook.ahead();
  for (let place = first; hook.inReach(place); ) {
    const next = hook.ahead(place);
    if (next === first) break;
    count += between(hook, hook.edge.stitch.at(place), hook.inReach(next) ? hook.edge.stitch.at(next) : NONE).length;
    place = next;
  }
  return count;
}

/** Stands before the next picot that was not passed yet; `pass`: beyond it. False where there is none in reach. */
function goToPicot(hook: Hook, pass: boolean): boolean {
  for (;;) {
    const [picot] = near(hook, hook.ahead());
    if (picot !== undefined) {
      if (pass) hook.picot = picot;
      return true;
    }
    const place = hook.ahead();
    if (!hook.inReach(place)) return false;
    hook.state.behind = hook.edge.beside(place, -hook.state.direction);
    hook.state.sameBases = [hook.take(place)];
  }
}

/** Picots between the hook and the next place that were not passed yet, in working order. */
function near(hook: Hook, place: number): readonly number[] {
  const base = hook.state.sameBases.at(-1) ?? NONE;
  const hanging = hook.inReach(place) ? between(hook, hook.placed > 0 ? base : NONE, hook.edge.stitch.at(place)) : hook.placed > 0 ? between(hook, base, NONE) : [];
  return hanging.slice(hanging.indexOf(hook.picot) + 1);
}

/** Picots that hang between two stitches of one row, in the order of going from one to the other; NONE: beyond the row's end. */
function between(hook: Hook, from: number, to: number): number[] {
  const known = to === NONE ? from : to;
  if (known === NONE) return [];
  // Going round, a round's stitches come in the order they were made in; after a turn, the other way.
  const step = hook.round ? 1 : -1;
  const away = to === NONE ? step : -step;
  const picots: number[] = [];
  const code = stitchCode('picot');
  for (let stitch = known + away; stitch >= 0 && stitch < hook.stitches.count && hook.stitches.code(stitch) === code; stitch += away) picots.push(stitch);
  return to === NONE ? picots : picots.reverse();
}
