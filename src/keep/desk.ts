import type { Historied, History } from '../engine/1-pattern/history.ts';
import type { Pattern } from '../engine/1-pattern/pattern.ts';
import { createKeeper, type Keeper, type KeeperParts, type KeepState } from './keeper.ts';
import { askForPen, type PenParts, type PenState } from './pen.ts';
import type { Standing } from './standing.ts';
import type { Taken } from './takeKept.ts';
import type { Windows } from './windows.ts';

/** How a pattern is kept just now, and which window writes on it. */
export type DeskState = KeepState & { readonly pen: PenState };

/** A pattern that is worked on in one of several windows. */
export interface Desk {
  readonly state: () => DeskState;
  /** Why nothing can be changed here just now, in words; null if it can. */
  readonly mayNotChange: () => string | null;
  readonly keep: Keeper['keep'];
  readonly flush: Keeper['flush'];
  readonly settle: Keeper['settle'];
  /** Asks to write here; the window that does becomes a reader. */
  takeOver(): void;
  /** Shows what is on the shelf, whatever is unkept here. */
  openNewer(): Promise<void>;
  subscribe(listener: (state: DeskState) => void): () => void;
  /** Writes what waits and lets the pattern go. */
  close(): Promise<void>;
}

/** What a desk is built from. */
export interface DeskParts extends Omit<KeeperParts, 'onKept'> {
  readonly token: string;
  readonly locks: PenParts['locks'];
  readonly windows: Windows;
  /** Shows what another window has kept. */
  readonly show: (pattern: Pattern, history: History) => void;
  readonly onKept?: KeeperParts['onKept'];
}

/** Sets a pattern on a desk: the keeper writes while this window holds the pen, and follows what others write while it doesn't. */
export function setDesk(parts: DeskParts): Desk {
  const { shelf, windows, token, locks, after, show } = parts;
  const { id } = parts.pattern;
  let now: Historied & { readonly standing: Standing } = { pattern: parts.pattern, history: parts.history, standing: parts.standing };
  // From the moment another window holds the pen until this one has it and has read what was kept meanwhile.
  let isReader = false;
  const listeners = new Set<(state: DeskState) => void>();

  const keeper = createKeeper({
    ...parts,
    onKept(kept) {
      windows.tell({ kind: 'kept', id, revision: kept.revision });
      parts.onKept?.(kept);
    },
  });
  const pen = askForPen({
    id, token, locks, windows, after,
    beforeGiving: () => keeper.flush(),
    onChange(state) {
      if (state === 'theirs') isReader = true;
      if (state === 'theirs' && keeper.state().unkept) keeper.overtake();
      if (state === 'mine') void start();
      tell();
    },
  });

  const state = (): DeskState => ({ ...keeper.state(), pen: pen.state() === 'mine' && isReader ? 'asking' : pen.state() });

  const since = () => shelf.takeSince(now, { ...now.standing, revision: keeper.state().revision });

  function tell(): void {
    for (const listener of [...listeners]) listener(state());
  }

  /** Takes what other windows have kept and shows it. A device that can't be read just now changes nothing. */
  async function follow(read: () => Promise<Taken | null>): Promise<void> {
    let taken: Taken | null;
    try {
      taken = await read();
    } catch {
      return;
    }
    if (taken?.kind !== 'ok' || keeper.state().unkept || taken.standing.revision < keeper.state().revision) return;
    const isNew = taken.pattern !== now.pattern;
    now = taken;
    keeper.adopt(taken);
    if (isNew) show(taken.pattern, taken.history);
  }

  /** The pen has come: what others wrote is read before anything is written here. */
  async function start(): Promise<void> {
    if (keeper.state().revision > 0 && !keeper.state().unkept) {
      const isBehind = isReader || (await since().catch(() => null)) !== null;
      if (isBehind) await follow(() => shelf.take(id));
    }
    isReader = false;
    tell();
  }

  const stopListening = windows.listen((news) => {
    if (news.kind !== 'kept' || news.id !== id || news.revision <= keeper.state().revision) return;
    if (keeper.state().unkept) keeper.overtake();
    else void follow(since);
  });
  const stopHearing = keeper.subscribe(tell);

  return {
    state,
    mayNotChange() {
      if (!isReader) return null;
      return pen.state() === 'theirs' ? 'Another window works on this pattern; this one only shows it. Choose “Work on here” to change it in this one.' : 'The pattern is just being taken over from the other window; try again in a moment.';
    },
    keep(pattern, history) {
      now = { ...now, pattern, history };
      keeper.keep(pattern, history);
    },
    flush: () => keeper.flush(),
    settle: () => keeper.settle(),
    takeOver: () => pen.take(),
    async openNewer() {
      const taken = await shelf.take(id);
      if (taken.kind !== 'ok') return;
      now = taken;
      keeper.adopt(taken);
      show(taken.pattern, taken.history);
    },
    subscribe(listener) {
      listeners.add(listener);
      return () => listeners.delete(listener);
    },
    async close() {
      stopListening();
      stopHearing();
      await keeper.settle();
      keeper.close();
      pen.close();
    },
  };
}
