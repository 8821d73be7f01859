import { describe, expect, it } from 'vitest';
import { undo, type Historied } from '../../src/engine/1-pattern/history.ts';
import type { Pattern } from '../../src/engine/1-pattern/pattern.ts';
import { keepFault } from '../../src/keep/keepFault.ts';
import { copyOf, createKeeper, KEEP_WITHIN_MS, MOST_MOVES, RETRY_AFTER_MS, SETTLE_AFTER_MS, SLOW_AFTER_MS, type KeepState } from '../../src/keep/keeper.ts';
import { NEVER_KEPT, shelfOf, type Standing } from '../../src/keep/shelf.ts';
import { clock, settle } from './clock.ts';
import { memoryStore, type MemoryStore } from './memoryStore.ts';
import { START, titled } from './titles.ts';

/** A keeper of the small pattern, which is on the shelf already unless `standing` says otherwise. */
async function desk(store: MemoryStore = memoryStore(), token = 'one', standing?: Standing, picture: (pattern: Pattern) => string = () => '') {
  const time = clock();
  const shelf = shelfOf(store, token);
  let from = standing;
  if (!from) {
    const put = await shelf.put({ ...START, pictureSvg: '', at: 0 }, NEVER_KEPT);
    if (put.kind === 'kept') from = put.standing;
  }
  const keeper = createKeeper({ ...START, shelf, standing: from!, picture, now: time.now, after: time.after });
  const states: KeepState[] = [];
  keeper.subscribe((state) => states.push(state));
  const taken = async () => {
    const found = await shelfOf(store, 'reader').take('quay');
    if (found.kind !== 'ok') throw new Error(found.kind);
    return found;
  };
  const title = async () => (await taken()).pattern.title;
  const keep = (state: Historied) => keeper.keep(state.pattern, state.history);
  return { store, shelf, time, keeper, keep, states, title, taken };
}

describe('the keeper', () => {
  it('keeps a change within a quarter of a second, and says when', async () => {
    const { keeper, keep, time, states, title } = await desk();
    time.pass(1_000);
    keep(titled(START, 'one'));
    expect(keeper.state()).toMatchObject({ status: 'waiting', unkept: { since: 1_000 }, keptAt: 0 });
    expect(time.waiting()).toEqual([KEEP_WITHIN_MS]);
    expect(KEEP_WITHIN_MS).toBeLessThanOrEqual(125);
    time.pass(KEEP_WITHIN_MS);
    await settle();
    expect(await title()).toBe('one');
    expect(keeper.state()).toEqual({ status: 'kept', keptAt: 1_000 + KEEP_WITHIN_MS, revision: 2, unkept: null, fault: null, wasCleared: false });
    expect(states.map((state) => state.status)).toEqual(['waiting', 'keeping', 'kept']);
  });

  it('keeps a pattern that was never kept at once', async () => {
    const { keeper, time, title } = await desk(memoryStore(), 'one', NEVER_KEPT);
    expect(keeper.state()).toMatchObject({ status: 'waiting', keptAt: null });
    time.pass(KEEP_WITHIN_MS);
    await settle();
    expect(await title()).toBe('Puffin Quay');
    expect(keeper.state()).toMatchObject({ status: 'kept', revision: 1 });
  });

  it('is not put off by further changes, and writes them all at once', async () => {
    const { keep, time, store, title, taken } = await desk();
    let now = START;
    const calls = store.calls['transact'] ?? 0;
    for (let i = 0; i < 6; i++) {
      now = titled(now, `t${i}`);
      keep(now);
      time.pass(10);
    }
    await settle();
    expect(await title()).toBe('t5');
    expect((await taken()).history).toStrictEqual(now.history);
    expect((store.calls['transact'] ?? 0) - calls).toBe(1);
  });

  it('takes up what changes while it writes', async () => {
    const { keeper, keep, time, taken } = await desk();
    const one = titled(START, 'one');
    const two = titled(one, 'two');
    keep(one);
    time.pass(KEEP_WITHIN_MS);
    keep(two);
    expect(keeper.state().status).toBe('keeping');
    await settle();
    expect((await taken()).history).toStrictEqual(two.history);
    expect(keeper.state()).toMatchObject({ status: 'kept', revision: 3, unkept: null });
  });

  it('takes up what a listener changes at the moment it is kept', async () => {
    const { keeper, keep, time, title } = await desk();
    const one = titled(START, 'one');
    let isFirst = true;
    keeper.subscribe(({ status }) => {
      if (status !== 'kept' || !isFirst) return;
      isFirst = false;
      keep(titled(one, 'two'));
    });
    keep(one);
    time.pass(KEEP_WITHIN_MS);
    await settle();
    expect(await title()).toBe('two');
  });

  it('writes at once when it is flushed, and a flush without changes writes nothing', async () => {
    const { keeper, keep, time, store, title } = await desk();
    const one = titled(START, 'one');
    keep(one);
    await keeper.flush();
    expect(await title()).toBe('one');
    expect(time.waiting()).toEqual([SETTLE_AFTER_MS]);
    const calls = store.calls['transact'];
    await keeper.flush();
    expect(store.calls['transact']).toBe(calls);
    keep(titled(one, 'two'));
    expect(time.waiting()).toContain(KEEP_WITHIN_MS);
  });

  it('writes a whole with a drawing when nothing has changed for a while, when it is told to settle, and after many moves', async () => {
    const drawn: string[] = [];
    const { keeper, keep, time, store } = await desk(memoryStore(), 'one', undefined, (pattern) => {
      drawn.push(pattern.title);
      return '<svg/>';
    });
    const wholes = () => [...store.values.keys()].filter((key) => key.startsWith('whole/')).length;
    let now = titled(START, 'one');
    keep(now);
    time.pass(KEEP_WITHIN_MS);
    await settle();
    expect([wholes(), drawn]).toEqual([1, []]);
    time.pass(SETTLE_AFTER_MS);
    await settle();
    expect([wholes(), drawn]).toEqual([2, ['one']]);
    keep((now = titled(now, 'two')));
    await keeper.settle();
    expect(drawn).toEqual(['one', 'two']);
    await keeper.settle();
    expect(drawn).toEqual(['one', 'two']);
    for (let i = 0; i < MOST_MOVES; i++) keep((now = titled(now, `${i}`)));
    time.pass(KEEP_WITHIN_MS);
    await settle();
    expect(drawn).toEqual(['one', 'two', `${MOST_MOVES - 1}`]);
  });

  it('keeps what is more than a move as a whole', async () => {
    const { keep, keeper, taken } = await desk();
    const two = titled(titled(START, 'one'), 'two');
    keep(two);
    await keeper.flush();
    expect((await taken()).history).toStrictEqual(two.history);
    const back = undo(two);
    if (!back.ok) throw new Error(back.reason);
    keep(back);
    await keeper.flush();
    expect(await taken()).toMatchObject({ pattern: { title: 'one' }, standing: { revision: 3, whole: { revision: 2 } } });
  });

  it('says why it failed and since when, tries again by itself, and catches up', async () => {
    const { keeper, keep, time, store, taken } = await desk();
    time.pass(5_000);
    store.failure = { methods: ['transact'], error: new DOMException('no room', 'QuotaExceededError') };
    const one = titled(START, 'one');
    keep(one);
    time.pass(KEEP_WITHIN_MS);
    await settle();
    expect(keeper.state()).toMatchObject({ status: 'failed', unkept: { since: 5_000 }, keptAt: 0, fault: { kind: 'full' } });
    expect(time.waiting()).toEqual([RETRY_AFTER_MS]);
    const two = titled(one, 'two');
    keep(two);
    expect(keeper.state()).toMatchObject({ status: 'failed', unkept: { since: 5_000 }, fault: { kind: 'full' } });
    time.pass(RETRY_AFTER_MS);
    await settle();
    expect(keeper.state().status).toBe('failed');
    store.failure = null;
    time.pass(RETRY_AFTER_MS);
    await settle();
    expect((await taken()).history).toStrictEqual(two.history);
    expect(keeper.state()).toMatchObject({ status: 'kept', fault: null, unkept: null });
  });

  it('keeps what fits when the device is full, and catches up when there is room', async () => {
    const { keeper, keep, time, store, title } = await desk();
    store.room = [...store.values].reduce((sum, [, value]) => sum + JSON.stringify(value).length, 0) + 200;
    let now = START;
    for (let i = 0; i < 5; i++) {
      keep((now = titled(now, `t${i} ${'x'.repeat(100)}`)));
      time.pass(KEEP_WITHIN_MS);
      await settle();
    }
    expect(keeper.state()).toMatchObject({ status: 'failed', fault: { kind: 'full' } });
    expect(await title()).toBe('Puffin Quay');
    store.room = Infinity;
    await keeper.flush();
    expect(await title()).toMatch(/^t4/);
  });

  it('tells when the device does not answer, and takes it back when it does', async () => {
    const { keeper, keep, time, store } = await desk();
    let answer: () => void = () => undefined;
    const { transact } = store;
    store.transact = async (...args) => {
      await new Promise<void>((resolve) => (answer = resolve));
      return transact(...args);
    };
    keep(titled(START, 'one'));
    time.pass(KEEP_WITHIN_MS);
    time.pass(SLOW_AFTER_MS);
    expect(keeper.state()).toMatchObject({ status: 'failed', fault: { kind: 'slow' } });
    answer();
    await settle();
    expect(keeper.state()).toMatchObject({ status: 'kept', fault: null });
  });

  it('keeps everything again when the browser has cleared the device, and says so', async () => {
    const { keeper, keep, store, taken } = await desk();
    store.values.clear();
    const one = titled(START, 'one');
    keep(one);
    await keeper.flush();
    expect(keeper.state()).toMatchObject({ status: 'kept', wasCleared: true });
    expect((await taken()).history).toStrictEqual(one.history);
  });

  it('keeps a pattern whose drawing can’t be made', async () => {
    const { keeper, keep, title } = await desk(memoryStore(), 'one', undefined, () => {
      throw new Error('no drawing');
    });
    keep(titled(START, 'one'));
    await keeper.settle();
    expect(await title()).toBe('one');
  });

  it('stops when another window has kept something newer, and loses nothing of either', async () => {
    const mine = await desk();
    const seen = await mine.taken();
    const theirs = await desk(mine.store, 'theirs', seen.standing);
    theirs.keep(titled(START, 'theirs'));
    await theirs.keeper.flush();
    mine.keep(titled(START, 'mine'));
    await mine.keeper.flush();
    expect(mine.keeper.state()).toMatchObject({ status: 'overtaken', unkept: { since: 0 } });
    expect(await mine.title()).toBe('theirs');
    expect(theirs.keeper.state().status).toBe('kept');

    // As a copy it is kept beside the other.
    const copy = copyOf(titled(START, 'mine').pattern, 'quay-2', 'mine, copy');
    expect(await mine.shelf.put({ pattern: copy, history: START.history, pictureSvg: '', at: 9 }, NEVER_KEPT)).toMatchObject({ kind: 'kept' });
    expect((await mine.shelf.list()).cards.map((card) => card.title).sort()).toEqual(['mine, copy', 'theirs']);
  });

  it('goes on from what another window has kept when it is given it', async () => {
    const mine = await desk();
    const theirs = await desk(mine.store, 'theirs', (await mine.taken()).standing);
    const one = titled(START, 'one');
    theirs.keep(one);
    await theirs.keeper.flush();
    const newer = await mine.taken();
    mine.keeper.adopt(newer);
    mine.keep(titled(newer, 'two'));
    await mine.keeper.flush();
    expect(mine.keeper.state()).toMatchObject({ status: 'kept', revision: 3 });
    expect((await mine.taken()).history.past).toHaveLength(2);
  });
});

describe('why something was not kept', () => {
  it.each([
    [new DOMException('x', 'QuotaExceededError'), 'full'],
    [new DOMException('Encountered full disk while opening backing store', 'UnknownError'), 'full'],
    [new DOMException('x', 'SecurityError'), 'blocked'],
    [new DOMException('A mutation operation was attempted on a database that did not allow mutations.', 'InvalidStateError'), 'blocked'],
    [new ReferenceError('indexedDB is not defined'), 'blocked'],
    [new DOMException('The transaction was aborted.', 'AbortError'), 'stopped'],
    [new Error('odd'), 'broken'],
    ['odd', 'broken'],
    [undefined, 'broken'],
    [null, 'broken'],
  ] as const)('%s is read as %s', (error, kind) => {
    const fault = keepFault(error);
    expect(fault.kind).toBe(kind);
    expect(fault.words).toMatch(/\.$/);
    expect(fault.brief).toMatch(/^storage /);
  });
});
