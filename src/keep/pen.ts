import type { Windows } from './windows.ts';

/** Whether this window may write on a pattern: it holds the pen, another window does, or it is asking for it. */
export type PenState = 'mine' | 'theirs' | 'asking';

/** The one pen of a pattern: of all windows, at most one holds it. */
export interface Pen {
  readonly state: () => PenState;
  /** Asks the window that holds it to hand it over; one that doesn't answer loses it. */
  take(): void;
  /** Lets it go and asks for it no more. */
  close(): void;
}

/** What a pen is built from. */
export interface PenParts {
  readonly id: string;
  /** This window among all others. */
  readonly token: string;
  /** The locks of the browser (Web Locks API, W3C); null where it has none: then every window holds a pen, and the shelf's revisions keep them apart. */
  readonly locks: Pick<LockManager, 'request'> | null;
  readonly windows: Windows;
  readonly after: (delayMs: number, run: () => void) => () => void;
  /** Done before the pen is handed over: what waits is written. */
  readonly beforeGiving: () => Promise<void>;
  readonly onChange: (state: PenState) => void;
}

/** A window that has not handed the pen over after this time (a tab that the browser has put to sleep) loses it. */
export const TAKE_AFTER_MS = 3_000;
/** Windows that only wait for the pen stand back for this time when another one asks for it. */
const STAND_BACK_MS = 500;

/** Asks for the pen of a pattern: at once where it is free, else as soon as it is. */
export function askForPen({ id, token, locks, windows, after, beforeGiving, onChange }: PenParts): Pen {
  const name = `turnwork/pattern/${id}`;
  let state: PenState = locks ? 'asking' : 'mine';
  let letGo: (() => void) | null = null;
  let queued: AbortController | null = null;
  let callOff: (() => void) | null = null;
  let isClosed = false;

  function become(next: PenState): void {
    if (isClosed || next === state) return;
    state = next;
    onChange(next);
  }

  /** Holds the lock for as long as the returned promise is open. */
  function hold(): Promise<void> {
    queued = null;
    callOff?.();
    callOff = null;
    if (isClosed) return Promise.resolve();
    return new Promise((resolve) => {
      letGo = resolve;
      become('mine');
    });
  }

  function request(options: LockOptions, otherwise: () => void): void {
    const held = locks?.request(name, options, (lock) => (lock ? hold() : otherwise()));
    // The pen was taken away, or waiting for it was called off.
    held?.catch(() => {
      if (options.signal?.aborted) return;
      letGo = null;
      become('theirs');
      wait();
    });
  }

  function wait(): void {
    if (isClosed || queued || letGo) return;
    queued = new AbortController();
    request({ signal: queued.signal }, () => undefined);
  }

  function standBack(): void {
    queued?.abort();
    queued = null;
  }

  async function give(): Promise<void> {
    await beforeGiving();
    const release = letGo;
    letGo = null;
    become('theirs');
    release?.();
    after(STAND_BACK_MS, wait);
  }

  const stopListening = windows.listen((news) => {
    if (!locks || news.kind !== 'wanted' || news.id !== id || news.by === token) return;
    if (letGo) void give();
    else if (state === 'theirs') {
      standBack();
      after(STAND_BACK_MS, wait);
    }
  });

  if (locks) {
    request({ ifAvailable: true }, () => {
      become('theirs');
      wait();
    });
  }

  return {
    state: () => state,
    take() {
      if (!locks || state === 'mine') return;
      become('asking');
      wait();
      windows.tell({ kind: 'wanted', id, by: token });
      callOff?.();
      callOff = after(TAKE_AFTER_MS, () => {
        standBack();
        request({ steal: true }, () => undefined);
      });
    },
    close() {
      isClosed = true;
      stopListening();
      callOff?.();
      standBack();
      letGo?.();
      letGo = null;
    },
  };
}
