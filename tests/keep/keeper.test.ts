import { describe, expect, it } from 'vitest';
import { NO_HISTORY } from '../../src/engine/1-pattern/history.ts';
import type { Pattern } from '../../src/engine/1-pattern/pattern.ts';
import { keepFault } from '../../src/keep/keepFault.ts';
import { copyOf, createKeeper, KEEP_WITHIN_MS, RETRY_AFTER_MS, type KeepState } from '../../src/keep/keeper.ts';
import { NEVER_KEPT, shelfOf, type Standing } from '../../src/keep/shelf.ts';
import type { WindowNews, Windows } from '../../src/keep/windows.ts';
import { SMALL } from '../engine/1-pattern/smallPattern.ts';
import { memoryStore, type MemoryStore } from './memoryStore.ts';

/** Timers that run when told to: no test waits. */
function clock() {
  let now = 0;
  let timers: { readonly at: number; readonly run: () => void }[] = [];
  return {
    now: () => now,
    after: (delayMs: number, run: () => void) => {
      const timer = { at: now + delayMs, run };
      timers.push(timer);
      return () => {
        timers = timers.filter((one) => one !== timer);
      };
    },
    pass(ms: number) {
      now += ms;
      const due = timers.filter((timer) => timer.at <= now);
      timers = timers.filter((timer) => timer.at > now);
      for (const timer of due) timer.run();
    },
    waiting: () => timers.map((timer) => timer.at - now),
  };
}

/** Windows that hear one another at once. */
function windowLine() {
  const ears = new Set<{ readonly owner: object; readonly hear: (news: WindowNews) => void }>();
  return (): Windows => {
    const owner = {};
    return {
      tell: (news) => [...ears].filter((ear) => ear.owner !== owner).forEach((ear) => ear.hear(news)),
      listen: (hear) => {
        const ear = { owner, hear };
        ears.add(ear);
        return () => ears.delete(ear);
      },
      close: () => undefined,
    };
  };
}

const titled = (title: string): Pattern => ({ ...SMALL, title });

function desk(store: MemoryStore = memoryStore(), token = 'one', windows: Windows = windowLine()(), standing: Standing = NEVER_KEPT, picture: (pattern: Pattern) => string = () => '') {
  const time = clock();
  const keeper = createKeeper({ id: 'quay', shelf: shelfOf(store, token), standing, windows, picture, now: time.now, after: time.after });
  const states: KeepState[] = [];
  keeper.subscribe((state) => states.push(state));
  const title = () => (JSON.parse((store.values.get('pattern/quay') as { file: string }).file) as { pattern: Pattern }).pattern.title;
  return { store, time, keeper, states, title };
}

/** Lets the calls to the store that are under way come to their end. */
async function settle(): Promise<void> {
  for (let i = 0; i < 20; i++) await new Promise((resolve) => setImmediate(resolve));
}

describe('the keeper', () => {
  it('keeps a change within a quarter of a second, and says when', async () => {
    const { keeper, time, states, title } = desk();
    time.pass(1_000);
    keeper.keep(titled('one'), NO_HISTORY);
    expect(keeper.state()).toMatchObject({ status: 'waiting', hasUnkept: true, keptAt: null });
    expect(time.waiting()).toEqual([KEEP_WITHIN_MS]);
    expect(KEEP_WITHIN_MS).toBeLessThanOrEqual(250);
    time.pass(250);
    await settle();
    expect(title()).toBe('one');
    expect(keeper.state()).toEqual({ status: 'kept', keptAt: 1_250, revision: 1, hasUnkept: false, fault: null, newer: null });
    expect(states.map((state) => state.status)).toEqual(['waiting', 'keeping', 'kept']);
  });

  it('is not put off by further changes, and writes the newest', async () => {
    const { keeper, time, store, title } = desk();
    for (let i = 0; i < 5; i++) {
      keeper.keep(titled(`t${i}`), NO_HISTORY);
      time.pass(50);
    }
    await settle();
    expect(title()).toBe('t4');
    expect(store.calls['update']).toBe(1);
  });

  it('takes up what changes while it writes', async () => {
    const { keeper, time, store, title } = desk();
    keeper.keep(titled('one'), NO_HISTORY);
    time.pass(250);
    keeper.keep(titled('two'), NO_HISTORY);
    expect(keeper.state().status).toBe('keeping');
    await settle();
    expect(title()).toBe('two');
    expect(store.calls['update']).toBe(2);
    expect(keeper.state()).toMatchObject({ status: 'kept', revision: 2, hasUnkept: false });
  });

  it('takes up what a listener changes at the moment it is kept', async () => {
    const { keeper, time, title } = desk();
    let isFirst = true;
    keeper.subscribe(({ status }) => {
      if (status === 'kept' && isFirst) {
        isFirst = false;
        keeper.keep(titled('two'), NO_HISTORY);
      }
    });
    keeper.keep(titled('one'), NO_HISTORY);
    time.pass(250);
    await settle();
    expect(title()).toBe('two');
  });

  it('writes at once when it is flushed, and a flush without changes writes nothing', async () => {
    const { keeper, time, store, title } = desk();
    keeper.keep(titled('one'), NO_HISTORY);
    await keeper.flush();
    expect(title()).toBe('one');
    expect(time.waiting()).toEqual([]);
    await keeper.flush();
    expect(store.calls['update']).toBe(1);
    keeper.keep(titled('two'), NO_HISTORY);
    expect(time.waiting()).toEqual([250]);
  });

  it('says why it failed, tries again by itself and with the next change', async () => {
    const { keeper, time, store, title } = desk();
    store.failure = { methods: ['update'], error: new DOMException('no room', 'QuotaExceededError') };
    keeper.keep(titled('one'), NO_HISTORY);
    time.pass(250);
    await settle();
    expect(keeper.state()).toMatchObject({ status: 'failed', hasUnkept: true, keptAt: null, fault: { kind: 'full' } });
    expect(time.waiting()).toEqual([RETRY_AFTER_MS]);
    keeper.keep(titled('two'), NO_HISTORY);
    expect(time.waiting()).toEqual([250]);
    expect(keeper.state()).toMatchObject({ status: 'waiting', fault: { kind: 'full' } });
    time.pass(250);
    await settle();
    expect(keeper.state().status).toBe('failed');
    store.failure = null;
    time.pass(RETRY_AFTER_MS);
    await settle();
    expect(title()).toBe('two');
    expect(keeper.state()).toMatchObject({ status: 'kept', fault: null, hasUnkept: false });
  });

  it('keeps a pattern whose drawing can’t be made', async () => {
    const { keeper, title } = desk(memoryStore(), 'one', windowLine()(), NEVER_KEPT, () => {
      throw new Error('no drawing');
    });
    keeper.keep(titled('one'), NO_HISTORY);
    await keeper.flush();
    expect(title()).toBe('one');
  });

  it('stops when another window has kept a newer copy, and loses nothing of either', async () => {
    const store = memoryStore();
    const line = windowLine();
    const mine = desk(store, 'mine', line());
    mine.keeper.keep(titled('one'), NO_HISTORY);
    await mine.keeper.flush();
    const taken = await shelfOf(store, 'theirs').take('quay');
    if (taken.kind !== 'ok') throw new Error(taken.kind);
    const theirs = desk(store, 'theirs', line(), taken.standing);
    theirs.keeper.keep(titled('theirs'), NO_HISTORY);
    await theirs.keeper.flush();
    expect(mine.keeper.state()).toMatchObject({ status: 'overtaken', newer: 2, hasUnkept: false });
    mine.keeper.keep(titled('mine'), NO_HISTORY);
    expect(mine.keeper.state()).toMatchObject({ status: 'overtaken', hasUnkept: true });
    expect(mine.time.waiting()).toEqual([]);
    await mine.keeper.flush();
    expect(mine.title()).toBe('theirs');
    expect(theirs.keeper.state().status).toBe('kept');

    // As a copy it is kept beside the other.
    const copy = copyOf(titled('mine'), 'quay-2', 'mine (copy)');
    expect(await shelfOf(store, 'mine').put({ pattern: copy, history: NO_HISTORY, pictureSvg: '', at: 9 }, NEVER_KEPT)).toMatchObject({ kind: 'kept' });
    expect((await shelfOf(store, 'mine').list()).cards.map((card) => card.title).sort()).toEqual(['mine (copy)', 'theirs']);
  });

  it('finds the newer copy in the store even when no window told of it', async () => {
    const store = memoryStore();
    const mine = desk(store, 'mine');
    mine.keeper.keep(titled('one'), NO_HISTORY);
    await mine.keeper.flush();
    // The other window writes between the moment this one starts and its transaction.
    store.beforeUpdate = () => {
      store.beforeUpdate = null;
      store.values.set('pattern/quay', { ...(store.values.get('pattern/quay') as object), revision: 7, writer: 'theirs' });
    };
    mine.keeper.keep(titled('two'), NO_HISTORY);
    await mine.keeper.flush();
    expect(mine.keeper.state()).toMatchObject({ status: 'overtaken', newer: 7, hasUnkept: true });
    expect(mine.title()).toBe('one');
  });

  it('hears nothing once it is closed', async () => {
    const line = windowLine();
    const mine = desk(memoryStore(), 'mine', line());
    mine.keeper.close();
    line().tell({ kind: 'kept', id: 'quay', revision: 9 });
    expect(mine.keeper.state().status).toBe('kept');
  });

  it('is not moved by news of other patterns or of older copies', () => {
    const line = windowLine();
    const mine = desk(memoryStore(), 'mine', line(), { ...NEVER_KEPT, revision: 4 });
    const other = line();
    other.tell({ kind: 'kept', id: 'cap', revision: 9 });
    other.tell({ kind: 'kept', id: 'quay', revision: 4 });
    other.tell({ kind: 'removed', id: 'quay' });
    expect(mine.keeper.state().status).toBe('kept');
    expect(mine.states).toEqual([]);
  });
});

describe('why something was not kept', () => {
  it.each([
    [new DOMException('x', 'QuotaExceededError'), 'full'],
    [new DOMException('Encountered full disk while opening backing store', 'UnknownError'), 'full'],
    [new DOMException('x', 'SecurityError'), 'blocked'],
    [new DOMException('A mutation operation was attempted on a database that did not allow mutations.', 'InvalidStateError'), 'blocked'],
    [new ReferenceError('indexedDB is not defined'), 'blocked'],
    [new Error('odd'), 'broken'],
    ['odd', 'broken'],
    [undefined, 'broken'],
  ] as const)('%s is read as %s', (error, kind) => {
    const fault = keepFault(error);
    expect(fault.kind).toBe(kind);
    expect(fault.words).toMatch(/\.$/);
  });
});
