import type { Historied, History } from '../engine/1-pattern/history.ts';
import { moveBetween, type Move } from '../engine/1-pattern/historyMove.ts';
import type { Pattern } from '../engine/1-pattern/pattern.ts';
import { keepFault, SLOW_FAULT, type KeepFault } from './keepFault.ts';
import type { Put, Shelf, Standing } from './shelf.ts';

/** How a pattern is kept just now. A plain value; a new one each time something changes. */
export interface KeepState {
  /**
   * `kept`: everything is on the device. `waiting`: changes are to be kept in a moment. `keeping`: they are being
   * written. `failed`: they could not be, `fault` says why; they are tried again. `overtaken`: another window has kept
   * something newer while there were changes here, so this one writes no more: open the newer one, or keep this as a copy.
   */
  readonly status: 'kept' | 'waiting' | 'keeping' | 'failed' | 'overtaken';
  /** When it was last kept, milliseconds; null if never. */
  readonly keptAt: number | null;
  readonly revision: number;
  /** Changes that are not on the device; null if there are none. */
  readonly unkept: { /** When the first of them was made, milliseconds. */ readonly since: number } | null;
  readonly fault: KeepFault | null;
  /** The browser had cleared what was kept; it was kept again from here. */
  readonly wasCleared: boolean;
}

/** What a keeper is built from. Time and timers are passed in. */
export interface KeeperParts extends Historied {
  readonly shelf: Shelf;
  readonly standing: Standing;
  /** The drawing for the shelf, made when a whole is written and not with every change. */
  readonly picture: (pattern: Pattern) => string;
  readonly now: () => number;
  /** Runs something later; the returned function calls it off. */
  readonly after: (delayMs: number, run: () => void) => () => void;
  /** Called when moves (or, `isWhole`, a whole) have reached the device. */
  readonly onKept?: (kept: Historied & { readonly revision: number; readonly at: number; readonly isWhole: boolean }) => void;
}

/** Keeps one pattern on the device as it changes. */
export interface Keeper {
  /** Takes the newest state; what changed is written within `KEEP_WITHIN_MS`. */
  keep(pattern: Pattern, history: History): void;
  /** Writes at once what waits, and is done when it is written or has failed. */
  flush(): Promise<void>;
  /** As `flush`, and writes a whole with its picture if there are moves since the last one. */
  settle(): Promise<void>;
  /** Goes on from what another window has kept. What waits here is given up. */
  adopt(taken: Historied & { readonly standing: Standing }): void;
  /** Stops writing, because another window writes; what waits stays here to be kept as a copy. */
  overtake(): void;
  readonly state: () => KeepState;
  /** Calls the listener at every change of state until the returned function is called. */
  subscribe(listener: (state: KeepState) => void): () => void;
  /** Stops all timers; what waits is still written by `flush`. */
  close(): void;
}

/** A change is on its way to the device after this time, so that it is there within a quarter of a second. */
export const KEEP_WITHIN_MS = 60;
/** After a failure it is tried again after this time. */
export const RETRY_AFTER_MS = 2_000;
/** A write that takes longer than this is said to be slow. */
export const SLOW_AFTER_MS = 5_000;
/** A whole is written when nothing has changed for this time … */
export const SETTLE_AFTER_MS = 4_000;
/** … and at the latest after so many moves. */
export const MOST_MOVES = 200;

/** A keeper for a pattern that stands on the shelf as `standing` says (`NEVER_KEPT` for a new one, which is kept at once). */
export function createKeeper(parts: KeeperParts): Keeper {
  const { shelf, picture, now, after } = parts;
  let { standing } = parts;
  let seen: Historied = { pattern: parts.pattern, history: parts.history };
  let moves: Move[] = [];
  // Wholes that were asked for, because what is new can't be said as moves, and those that are written.
  let asked = 0;
  let answered = 0;
  let isWriting = false;
  let written: Promise<void> = Promise.resolve();
  const timers = { write: null as (() => void) | null, settle: null as (() => void) | null };
  let state: KeepState = { status: 'kept', keptAt: standing.keptAt, revision: standing.revision, unkept: null, fault: null, wasCleared: false };
  const listeners = new Set<(state: KeepState) => void>();

  function become(change: Partial<KeepState>): void {
    state = { ...state, ...change };
    for (const listener of [...listeners]) listener(state);
  }

  function later(timer: keyof typeof timers, delayMs: number, run: () => void): void {
    timers[timer]?.();
    timers[timer] = after(delayMs, () => {
      timers[timer] = null;
      run();
    });
  }

  function callOff(timer: keyof typeof timers): void {
    timers[timer]?.();
    timers[timer] = null;
  }

  const needsWhole = () => asked > answered;
  const isWaiting = () => moves.length > 0 || needsWhole();
  const movesSinceWhole = () => (standing.whole === null ? 0 : standing.revision - standing.whole.revision);

  function write(andSettle = false): Promise<void> {
    if (!isWriting) written = writeAll(andSettle);
    return written;
  }

  async function writeAll(andSettle: boolean): Promise<void> {
    isWriting = true;
    const stopWaiting = after(SLOW_AFTER_MS, () => become({ status: 'failed', fault: SLOW_FAULT }));
    try {
      while (state.status !== 'overtaken') {
        if (isWaiting()) await (needsWhole() ? writeWhole() : writeMoves());
        else if (movesSinceWhole() >= (andSettle ? 1 : MOST_MOVES)) await writeWhole();
        else break;
      }
    } catch (error) {
      become({ status: 'failed', fault: keepFault(error) });
      later('write', RETRY_AFTER_MS, () => void write());
    } finally {
      stopWaiting();
      isWriting = false;
    }
  }

  async function writeMoves(): Promise<void> {
    callOff('write');
    if (state.status !== 'failed') become({ status: 'keeping' });
    const load = { pattern: seen.pattern, moves: [...moves], at: now() };
    const { history } = seen;
    const put = await shelf.append(load, standing);
    done(put, { pattern: load.pattern, history }, load, false);
  }

  async function writeWhole(): Promise<void> {
    callOff('write');
    if (state.status !== 'failed') become({ status: 'keeping' });
    const load = { ...seen, moves: [...moves], at: now() };
    const answers = asked;
    const put = await shelf.put({ ...load, pictureSvg: drawn(load.pattern) }, needsWhole() ? { ...standing, whole: null } : standing);
    if (put.kind === 'kept') answered = answers;
    done(put, load, load, true);
  }

  function done(put: Put, kept: Historied, { moves: taken, at }: { readonly moves: readonly Move[]; readonly at: number }, isWhole: boolean): void {
    if (put.kind === 'overtaken') return become({ status: 'overtaken', fault: null });
    if (put.kind === 'noBase') {
      if (standing.whole !== null) become({ wasCleared: true });
      asked++;
      return;
    }
    standing = put.standing;
    moves = moves.slice(taken.length);
    parts.onKept?.({ pattern: kept.pattern, history: kept.history, revision: standing.revision, at, isWhole });
    become({ status: isWaiting() ? 'keeping' : 'kept', keptAt: standing.keptAt, revision: standing.revision, unkept: isWaiting() ? { since: state.unkept?.since ?? at } : null, fault: null });
    if (!isWhole) later('settle', SETTLE_AFTER_MS, () => void write(true));
  }

  /** A drawing that can't be made must not stop the keeping. */
  function drawn(pattern: Pattern): string | null {
    try {
      return picture(pattern);
    } catch {
      return null;
    }
  }

  const keeper: Keeper = {
    keep(pattern, history) {
      const move = moveBetween(seen.history, history);
      seen = { pattern, history };
      if (move) moves.push(move);
      else asked++;
      if (state.status === 'overtaken') return become({ unkept: state.unkept ?? { since: now() } });
      // While a save is under way its loop takes up what waits; after a failure it is not tried with every change.
      if (!isWriting && timers.write === null) later('write', KEEP_WITHIN_MS, () => void write());
      const status = state.status === 'failed' ? 'failed' : isWriting ? 'keeping' : 'waiting';
      become({ status, unkept: state.unkept ?? { since: now() } });
    },
    async flush() {
      callOff('write');
      await write();
    },
    async settle() {
      callOff('write');
      callOff('settle');
      if (isWriting) await written;
      await write(true);
    },
    adopt(taken) {
      ({ standing } = taken);
      seen = { pattern: taken.pattern, history: taken.history };
      moves = [];
      answered = asked;
      callOff('write');
      callOff('settle');
      become({ status: 'kept', keptAt: standing.keptAt, revision: standing.revision, unkept: null, fault: null });
    },
    overtake() {
      callOff('write');
      callOff('settle');
      become({ status: 'overtaken', fault: null });
    },
    state: () => state,
    subscribe(listener) {
      listeners.add(listener);
      return () => listeners.delete(listener);
    },
    close() {
      callOff('write');
      callOff('settle');
    },
  };
  if (standing.revision === 0) keeper.keep(parts.pattern, parts.history);
  return keeper;
}

/** A pattern as one of its own: another id and title, the rest the same. Its steps go on to work. */
export function copyOf(pattern: Pattern, id: string, title: string): Pattern {
  return { ...pattern, id, title };
}
