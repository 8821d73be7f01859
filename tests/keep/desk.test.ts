import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Historied, History } from '../../src/engine/1-pattern/history.ts';
import type { Pattern } from '../../src/engine/1-pattern/pattern.ts';
import { setDesk, type Desk } from '../../src/keep/desk.ts';
import { TAKE_AFTER_MS } from '../../src/keep/pen.ts';
import { NEVER_KEPT, shelfOf } from '../../src/keep/shelf.ts';
import type { Windows } from '../../src/keep/windows.ts';
import { clock, settle, type Clock } from './clock.ts';
import { lockDesk } from './lockDesk.ts';
import { memoryStore, type MemoryStore } from './memoryStore.ts';
import { START, titled } from './titles.ts';
import { windowLine } from './windowLine.ts';

interface Room {
  readonly store: MemoryStore;
  readonly time: Clock;
  readonly locks: ReturnType<typeof lockDesk> | null;
  readonly line: () => Windows;
}

async function room(withLocks = true): Promise<Room> {
  const store = memoryStore();
  await shelfOf(store, 'start').put({ ...START, pictureSvg: '', at: 0 }, NEVER_KEPT);
  return { store, time: clock(), locks: withLocks ? lockDesk() : null, line: windowLine() };
}

/** A window on the pattern of a room: what it shows, and edits that are refused where its desk says so. */
async function openWindow({ store, time, locks, line }: Room, token: string, windows = line()) {
  const shelf = shelfOf(store, token);
  const taken = await shelf.take('quay');
  if (taken.kind !== 'ok') throw new Error(taken.kind);
  let shown: Historied = { pattern: taken.pattern, history: taken.history };
  const desk: Desk = setDesk({
    ...shown, standing: taken.standing, shelf, token, locks, windows, picture: () => '', now: time.now, after: time.after,
    show: (pattern: Pattern, history: History) => (shown = { pattern, history }),
  });
  await settle();
  return {
    desk,
    title: () => shown.pattern.title,
    shown: () => shown,
    /** Makes an edit as a session would; false where it is refused. */
    edit(title: string): boolean {
      if (desk.mayNotChange() !== null) return false;
      shown = titled(shown, title);
      desk.keep(shown.pattern, shown.history);
      return true;
    },
  };
}

async function pass({ time }: Room, ms: number): Promise<void> {
  for (let left = ms; left > 0; left -= 50) {
    time.pass(Math.min(left, 50));
    await settle(8);
  }
}

const onShelf = async ({ store }: Room) => {
  const taken = await shelfOf(store, 'reader').take('quay');
  if (taken.kind !== 'ok') throw new Error(taken.kind);
  return taken;
};

describe('two windows on one pattern', () => {
  it('the first writes, the second shows what it writes and changes nothing', async () => {
    const here = await room();
    const first = await openWindow(here, 'first');
    const second = await openWindow(here, 'second');
    expect([first.desk.state().pen, second.desk.state().pen]).toEqual(['mine', 'theirs']);
    expect(first.edit('one')).toBe(true);
    expect(second.edit('mine')).toBe(false);
    expect(second.desk.mayNotChange()).toMatch(/Another window works on this pattern/);
    await pass(here, 200);
    expect(second.title()).toBe('one');
    expect(second.shown().history.past).toHaveLength(1);
  });

  it('the second writes when it asks, the first keeps what waits and becomes the reader', async () => {
    const here = await room();
    const first = await openWindow(here, 'first');
    const second = await openWindow(here, 'second');
    first.edit('one');
    // Not written yet when the other asks.
    second.desk.takeOver();
    expect(second.desk.mayNotChange()).toMatch(/being taken over/);
    await pass(here, 200);
    expect([first.desk.state().pen, second.desk.state().pen]).toEqual(['theirs', 'mine']);
    expect(second.title()).toBe('one');
    expect(second.edit('two')).toBe(true);
    expect(first.edit('three')).toBe(false);
    await pass(here, 200);
    expect(first.title()).toBe('two');
    expect((await onShelf(here)).history.past.map((step) => step.done.label)).toEqual(['Name it one', 'Name it two']);
    // And back again.
    first.desk.takeOver();
    await pass(here, 200);
    expect(first.edit('three')).toBe(true);
    await pass(here, 200);
    expect(second.title()).toBe('three');
  });

  it('the second writes by itself when the first is closed', async () => {
    const here = await room();
    const first = await openWindow(here, 'first');
    const second = await openWindow(here, 'second');
    first.edit('one');
    await first.desk.close();
    await pass(here, 100);
    expect(second.desk.state().pen).toBe('mine');
    expect(second.title()).toBe('one');
    expect(second.edit('two')).toBe(true);
  });

  it('a window that does not answer loses the pen, and what it writes later overwrites nothing', async () => {
    const here = await room();
    const asleep: Windows = { tell: () => undefined, listen: () => () => undefined, close: () => undefined };
    const first = await openWindow(here, 'first', asleep);
    const second = await openWindow(here, 'second');
    second.desk.takeOver();
    await pass(here, TAKE_AFTER_MS - 100);
    expect(second.desk.state().pen).toBe('asking');
    await pass(here, 200);
    expect(second.desk.state().pen).toBe('mine');
    expect(first.desk.state().pen).toBe('theirs');
    expect(second.edit('two')).toBe(true);
    await pass(here, 200);
    expect((await onShelf(here)).pattern.title).toBe('two');
  });

  it('what the first could not keep stays in it when it loses the pen, to be kept as a copy', async () => {
    const here = await room();
    const first = await openWindow(here, 'first');
    const second = await openWindow(here, 'second');
    here.store.failure = { methods: ['transact'], error: new DOMException('x', 'QuotaExceededError') };
    first.edit('one');
    await pass(here, 200);
    second.desk.takeOver();
    await pass(here, 200);
    here.store.failure = null;
    expect(first.desk.state()).toMatchObject({ status: 'overtaken', pen: 'theirs' });
    expect(first.desk.state().unkept).not.toBeNull();
    expect(first.title()).toBe('one');
    second.edit('two');
    await pass(here, 3_000);
    expect((await onShelf(here)).pattern.title).toBe('two');
    expect(first.title()).toBe('one');
    await first.desk.openNewer();
    expect(first.title()).toBe('two');
    expect(first.desk.state()).toMatchObject({ status: 'kept', unkept: null });
  });

  it('of three, the one that asks gets it and not the one that waited longer', async () => {
    const here = await room();
    const first = await openWindow(here, 'first');
    const second = await openWindow(here, 'second');
    const third = await openWindow(here, 'third');
    third.desk.takeOver();
    await pass(here, 300);
    expect([first, second, third].map(({ desk }) => desk.state().pen)).toEqual(['theirs', 'theirs', 'mine']);
    await third.desk.close();
    await pass(here, 1_500);
    expect([first, second].filter(({ desk }) => desk.state().pen === 'mine')).toHaveLength(1);
  });
});

describe('windows of a browser without locks', () => {
  it('both write, each on what the other has kept', async () => {
    const here = await room(false);
    const first = await openWindow(here, 'first');
    const second = await openWindow(here, 'second');
    first.edit('one');
    await pass(here, 200);
    expect(second.title()).toBe('one');
    second.edit('two');
    await pass(here, 200);
    expect(first.title()).toBe('two');
    expect((await onShelf(here)).history.past).toHaveLength(2);
  });

  it('one of two that write at the same moment is asked what to do, and nothing is overwritten', async () => {
    const here = await room(false);
    const first = await openWindow(here, 'first');
    const second = await openWindow(here, 'second');
    first.edit('one');
    second.edit('two');
    await pass(here, 200);
    const states = [first, second].map(({ desk }) => desk.state().status).sort();
    expect(states).toEqual(['kept', 'overtaken']);
    const [winner, loser] = first.desk.state().status === 'kept' ? [first, second] : [second, first];
    expect((await onShelf(here)).pattern.title).toBe(winner.title());
    expect(loser.desk.state().unkept).not.toBeNull();
  });
});

describe('windows that race', () => {
  it.each([true, false])('lose no move that was kept, whatever they do (locks: %s)', async (withLocks) => {
    const act = fc.record({ window: fc.nat(1), kind: fc.constantFrom('edit', 'edit', 'edit', 'takeOver', 'wait', 'fail', 'mend'), ms: fc.integer({ min: 0, max: 150 }) });
    await fc.assert(
      fc.asyncProperty(fc.array(act, { minLength: 4, maxLength: 18 }), async (acts) => {
        const here = await room(withLocks);
        const windows = [await openWindow(here, 'w0'), await openWindow(here, 'w1')];
        const acknowledged = new Set<string>();
        let count = 0;
        for (const { window, kind, ms } of acts) {
          const one = windows[window]!;
          const { status } = one.desk.state();
          if (kind === 'edit' && status !== 'overtaken') one.edit(`t${count++}`);
          if (kind === 'takeOver') one.desk.takeOver();
          if (kind === 'fail') here.store.failure = { methods: ['transact'], error: new DOMException('stopped', 'AbortError') };
          if (kind === 'mend') here.store.failure = null;
          here.time.pass(ms);
          await settle(kind === 'wait' ? 12 : ms % 4);
          for (const { desk, shown } of windows) if (desk.state().status === 'kept') for (const step of shown().history.past) acknowledged.add(step.done.label);
        }
        here.store.failure = null;
        await pass(here, 4_500);
        // Whatever was said to be kept is there, once, and its history leads to it.
        const { pattern, history, lost } = await onShelf(here);
        const labels = history.past.map((step) => step.done.label);
        expect(lost).toBeNull();
        expect(new Set(labels).size).toBe(labels.length);
        expect([...acknowledged].filter((label) => !labels.includes(label))).toEqual([]);
        expect(pattern.title).toBe(labels.length > 0 ? labels.at(-1)!.replace('Name it ', '') : 'Puffin Quay');
        // What is not there is still in a window that says so.
        for (const { desk, title } of windows) if (desk.state().status !== 'overtaken') expect(title()).toBe(pattern.title);
      }),
      { numRuns: 250, seed: 77_001 },
    );
  });
});
