/** Time that passes only when it is told to; what is due is run in its order. */
export interface Clock {
  readonly now: () => number;
  readonly after: (delayMs: number, run: () => void) => () => void;
  /** Lets time pass. */
  pass(ms: number): void;
  /** Delays of what is to run, from now on, soonest first. */
  waiting(): readonly number[];
}

export function clock(): Clock {
  let now = 0;
  const due = new Set<{ at: number; run: () => void }>();
  return {
    now: () => now,
    after(delayMs, run) {
      const entry = { at: now + delayMs, run };
      due.add(entry);
      return () => due.delete(entry);
    },
    pass(ms) {
      const end = now + ms;
      for (;;) {
        const next = [...due].filter((entry) => entry.at <= end).sort((a, b) => a.at - b.at)[0];
        if (!next) break;
        now = Math.max(now, next.at);
        due.delete(next);
        next.run();
      }
      now = end;
    },
    waiting: () => [...due].map((entry) => entry.at - now).sort((a, b) => a - b),
  };
}

/** Lets the calls to a store that are under way come to their end. */
export async function settle(turns = 40): Promise<void> {
  for (let i = 0; i < turns; i++) await new Promise((resolve) => setImmediate(resolve));
}
