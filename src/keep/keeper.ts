import type { History } from '../engine/1-pattern/history.ts';
import type { Pattern } from '../engine/1-pattern/pattern.ts';
import { keepFault, type KeepFault } from './keepFault.ts';
import type { Shelf, Standing } from './shelf.ts';
import type { Windows } from './windows.ts';

/** How a pattern is kept just now. A plain value; a new one each time something changes. */
export interface KeepState {
  /**
   * `kept`: everything is on the device. `waiting`: changes are to be kept in a moment. `keeping`: they are being
   * written. `failed`: they could not be, `fault` says why; they are tried again. `overtaken`: another window has kept a
   * newer copy, so this one writes no more: open the newer one, or keep this as a copy (`copyOf`).
   */
  readonly status: 'kept' | 'waiting' | 'keeping' | 'failed' | 'overtaken';
  /** When it was last kept, milliseconds; null if never. */
  readonly keptAt: number | null;
  readonly revision: number;
  /** Whether there are changes that are not on the device. */
  readonly hasUnkept: boolean;
  readonly fault: KeepFault | null;
  /** Revision of the newer copy, for `overtaken`. */
  readonly newer: number | null;
}

/** What a keeper is built from. Time and timers are passed in. */
export interface KeeperParts {
  readonly id: string;
  readonly shelf: Shelf;
  readonly standing: Standing;
  readonly windows: Windows;
  /** The drawing for the shelf, made when it is written and not with every change. */
  readonly picture: (pattern: Pattern) => string;
  readonly now: () => number;
  /** Runs something later; the returned function calls it off. */
  readonly after: (delayMs: number, run: () => void) => () => void;
}

/** Keeps one pattern on the device as it changes. */
export interface Keeper {
  /** Takes the newest state; it is written within `KEEP_WITHIN_MS`. */
  keep(pattern: Pattern, history: History): void;
  /** Writes at once what waits, and is done when it is written or has failed. */
  flush(): Promise<void>;
  readonly state: () => KeepState;
  /** Calls the listener at every change of state until the returned function is called. */
  subscribe(listener: (state: KeepState) => void): () => void;
  /** Stops listening to other windows; what waits is still written by `flush`. */
  close(): void;
}

/** A change is on its way to the device at the latest after this time. */
export const KEEP_WITHIN_MS = 250;
/** After a failure it is tried again after this time, and with the next change. */
export const RETRY_AFTER_MS = 10_000;

/** A keeper for a pattern that stands on the shelf as `standing` says (`NEVER_KEPT` for a new one). */
export function createKeeper({ id, shelf, standing: start, windows, picture, now, after }: KeeperParts): Keeper {
  let standing = start;
  let waiting: { readonly pattern: Pattern; readonly history: History } | null = null;
  let callOff: (() => void) | null = null;
  let isWriting = false;
  let written: Promise<void> = Promise.resolve();
  let state: KeepState = { status: 'kept', keptAt: start.keptAt, revision: start.revision, hasUnkept: false, fault: null, newer: null };
  const listeners = new Set<(state: KeepState) => void>();

  function become(change: Partial<KeepState>): void {
    state = { ...state, ...change };
    for (const listener of [...listeners]) listener(state);
  }

  function later(delayMs: number): void {
    callOff?.();
    callOff = after(delayMs, () => {
      callOff = null;
      void write();
    });
  }

  function write(): Promise<void> {
    if (!isWriting) written = writeAll();
    return written;
  }

  async function writeAll(): Promise<void> {
    isWriting = true;
    try {
      while (waiting !== null && state.status !== 'overtaken') await writeOne(waiting);
    } catch (error) {
      become({ status: 'failed', fault: keepFault(error) });
      later(RETRY_AFTER_MS);
    } finally {
      isWriting = false;
    }
  }

  async function writeOne(load: NonNullable<typeof waiting>): Promise<void> {
    callOff?.();
    callOff = null;
    become({ status: 'keeping' });
    const put = await shelf.put({ ...load, pictureSvg: drawn(load.pattern), at: now() }, standing);
    if (put.kind === 'overtaken') return become({ status: 'overtaken', newer: put.revision });
    standing = put.standing;
    if (waiting === load) waiting = null;
    windows.tell({ kind: 'kept', id, revision: standing.revision });
    // Another window may have told of a newer copy while this one was written.
    const isOvertaken = state.newer !== null && state.newer > standing.revision;
    become({ status: isOvertaken ? 'overtaken' : waiting === null ? 'kept' : 'keeping', keptAt: standing.keptAt, revision: standing.revision, hasUnkept: waiting !== null, fault: null });
  }

  /** A drawing that can't be made must not stop the keeping. */
  function drawn(pattern: Pattern): string {
    try {
      return picture(pattern);
    } catch {
      return '';
    }
  }

  const stopListening = windows.listen((news) => {
    if (news.kind !== 'kept' || news.id !== id || news.revision <= standing.revision) return;
    become(!isWriting ? { status: 'overtaken', newer: news.revision } : { newer: news.revision });
  });

  return {
    keep(pattern, history) {
      waiting = { pattern, history };
      if (state.status === 'overtaken') return become({ hasUnkept: true });
      // While a save is under way its loop takes up what waits.
      if (!isWriting && (callOff === null || state.status === 'failed')) later(KEEP_WITHIN_MS);
      become({ status: !isWriting ? 'waiting' : 'keeping', hasUnkept: true });
    },
    async flush() {
      callOff?.();
      callOff = null;
      await write();
    },
    state: () => state,
    subscribe(listener) {
      listeners.add(listener);
      return () => listeners.delete(listener);
    },
    close() {
      stopListening();
      callOff?.();
      callOff = null;
    },
  };
}

/** A pattern as one of its own: another id and title, the rest the same. Its steps go on to work. */
export function copyOf(pattern: Pattern, id: string, title: string): Pattern {
  return { ...pattern, id, title };
}
