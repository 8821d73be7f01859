import { describe, expect, it } from 'vitest';
import { FILE_VERSION } from '../../src/engine/1-pattern/migrations/migrateUp.ts';
import { NO_HISTORY, perform, undo, type Historied } from '../../src/engine/1-pattern/history.ts';
import { NEVER_KEPT, shelfOf, type Put, type Standing } from '../../src/keep/shelf.ts';
import { SMALL } from '../engine/1-pattern/smallPattern.ts';
import { memoryStore } from './memoryStore.ts';

const START: Historied = { pattern: SMALL, history: NO_HISTORY };

/** `count` steps on, each a change of title. */
function on(now: Historied, count: number): Historied {
  let state = now;
  for (let i = 0; i < count; i++) {
    const n = state.history.past.length;
    const moved = perform(state, { label: `title ${n}`, at: n, edits: [{ kind: 'set', field: 'title', value: `title ${n}` }] });
    if (!moved.ok) throw new Error(moved.reason);
    state = moved;
  }
  return state;
}

const load = (state: Historied, at: number) => ({ ...state, pictureSvg: '<svg/>', at });

function kept(put: Put): Standing {
  if (put.kind !== 'kept') throw new Error(`overtaken by ${put.revision}`);
  return put.standing;
}

describe('the shelf', () => {
  it('gives back what was put on it, with its history and the times', async () => {
    const shelf = shelfOf(memoryStore(), 'one');
    const state = on(START, 3);
    const first = kept(await shelf.put(load(START, 1_000), NEVER_KEPT));
    await shelf.put(load(state, 2_000), first);
    const taken = await shelf.take('quay');
    expect(taken).toMatchObject({ kind: 'ok', pattern: state.pattern, history: state.history, standing: { revision: 2, createdAt: 1_000, keptAt: 2_000 }, isHistoryLost: false });
    expect(await shelf.take('gone')).toEqual({ kind: 'missing' });
  });

  it('keeps undone steps to be done again', async () => {
    const shelf = shelfOf(memoryStore(), 'one');
    const back = undo(on(START, 3));
    if (!back.ok) throw new Error(back.reason);
    await shelf.put(load(back, 1), NEVER_KEPT);
    const taken = await shelf.take('quay');
    expect(taken.kind === 'ok' && taken.history).toStrictEqual(back.history);
  });

  it('lists cards, last kept first', async () => {
    const shelf = shelfOf(memoryStore(), 'one');
    await shelf.put(load(START, 1), NEVER_KEPT);
    await shelf.put(load({ ...START, pattern: { ...SMALL, id: 'cap', title: 'Cap' } }, 2), NEVER_KEPT);
    const { cards, unreadable } = await shelf.list();
    expect(unreadable).toEqual([]);
    expect(cards.map(({ id, title, sizes, keptAt, pictureSvg }) => [id, title, sizes, keptAt, pictureSvg])).toEqual([
      ['cap', 'Cap', ['S', 'M'], 2, '<svg/>'],
      ['quay', 'Puffin Quay', ['S', 'M'], 1, '<svg/>'],
    ]);
    expect(cards[0]).not.toHaveProperty('file');
  });

  it('writes only the newest piece of a long history', async () => {
    const store = memoryStore();
    const shelf = shelfOf(store, 'one');
    let state = on(START, 140);
    let standing = kept(await shelf.put(load(state, 1), NEVER_KEPT));
    const before = [...store.values.keys()].filter((key) => key.startsWith('steps/'));
    expect(before).toHaveLength(3);
    state = on(state, 1);
    standing = kept(await shelf.put(load(state, 2), standing));
    const after = [...store.values.keys()].filter((key) => key.startsWith('steps/'));
    expect(after).toHaveLength(3);
    expect(after.filter((key) => before.includes(key))).toHaveLength(2);
    // Undo changes no step, so no piece is written.
    const writes = store.calls['setMany'];
    const back = undo(state);
    if (!back.ok) throw new Error(back.reason);
    kept(await shelf.put(load(back, 3), standing));
    expect(store.calls['setMany']).toBe(writes);
    const taken = await shelf.take('quay');
    expect(taken.kind === 'ok' && taken.history).toStrictEqual(back.history);
  });

  it('goes on from the pieces that are there after a reload', async () => {
    const store = memoryStore();
    const state = on(START, 120);
    await shelfOf(store, 'one').put(load(state, 1), NEVER_KEPT);
    const again = shelfOf(store, 'two');
    const taken = await again.take('quay');
    if (taken.kind !== 'ok') throw new Error(taken.kind);
    await again.put(load(on(taken, 1), 2), taken.standing);
    const keys = [...store.values.keys()].filter((key) => key.startsWith('steps/'));
    expect(keys.filter((key) => key.startsWith('steps/quay/one-'))).toHaveLength(2);
    const end = await again.take('quay');
    expect(end.kind === 'ok' && end.history.past).toHaveLength(121);
  });

  it('does not overwrite what another window kept meanwhile, and leaves nothing of the try behind', async () => {
    const store = memoryStore();
    const mine = shelfOf(store, 'mine');
    const theirs = shelfOf(store, 'theirs');
    const standing = kept(await mine.put(load(on(START, 1), 1), NEVER_KEPT));
    const taken = await theirs.take('quay');
    if (taken.kind !== 'ok') throw new Error(taken.kind);
    const newer = on(taken, 2);
    kept(await theirs.put(load(newer, 2), taken.standing));
    const values = structuredClone(store.values);
    expect(await mine.put(load(on(START, 4), 3), standing)).toEqual({ kind: 'overtaken', revision: 2 });
    expect(store.values).toEqual(values);
    const end = await mine.take('quay');
    expect(end.kind === 'ok' && end.pattern).toEqual(newer.pattern);
  });

  it('takes no save of its own for another window’s when the browser did not confirm it', async () => {
    const store = memoryStore();
    const shelf = shelfOf(store, 'one');
    const standing = kept(await shelf.put(load(START, 1), NEVER_KEPT));
    store.isUnconfirmed = true;
    await expect(shelf.put(load(on(START, 1), 2), standing)).rejects.toThrow('frozen');
    store.isUnconfirmed = false;
    expect(await shelf.put(load(on(START, 2), 3), standing)).toMatchObject({ kind: 'kept' });
  });

  it('counts a save as done when only the clearing up fails', async () => {
    const store = memoryStore();
    const shelf = shelfOf(store, 'one');
    const standing = kept(await shelf.put(load(on(START, 1), 1), NEVER_KEPT));
    store.failure = { methods: ['delMany'], error: new Error('no') };
    expect(await shelf.put(load(on(START, 2), 2), standing)).toMatchObject({ kind: 'kept', standing: { revision: 2 } });
  });

  it('removes a pattern with all its pieces, and no other’s', async () => {
    const store = memoryStore();
    const shelf = shelfOf(store, 'one');
    await shelf.put(load(on(START, 60), 1), NEVER_KEPT);
    await shelf.put(load({ ...on(START, 1), pattern: { ...SMALL, id: 'quay2' } }, 1), NEVER_KEPT);
    await shelf.remove('quay');
    expect([...store.values.keys()].every((key) => key.includes('quay2'))).toBe(true);
    expect(store.values.size).toBe(2);
  });

  it('gives the pattern without its history if a piece is damaged', async () => {
    const store = memoryStore();
    const shelf = shelfOf(store, 'one');
    const state = on(START, 60);
    await shelf.put(load(state, 1), NEVER_KEPT);
    store.values.set([...store.values.keys()].find((key) => key.startsWith('steps/'))!, 'no steps');
    const taken = await shelf.take('quay');
    expect(taken).toMatchObject({ kind: 'ok', pattern: state.pattern, history: NO_HISTORY, isHistoryLost: true });
    if (taken.kind !== 'ok') return;
    // The next save starts a new history and clears the old pieces.
    kept(await shelf.put(load(on(taken, 1), 2), taken.standing));
    expect([...store.values.keys()].filter((key) => key.startsWith('steps/'))).toHaveLength(1);
  });

  it('gives the text of a file that is not sound, and lists what it can’t read', async () => {
    const store = memoryStore();
    const shelf = shelfOf(store, 'one');
    await shelf.put(load(START, 1), NEVER_KEPT);
    store.values.set('pattern/quay', { ...(store.values.get('pattern/quay') as object), file: '{"format":"turnwork-pattern","version":9}' });
    store.values.set('pattern/odd', 5);
    store.values.set('another/thing', 5);
    expect(await shelf.take('quay')).toEqual({ kind: 'unsound', file: '{"format":"turnwork-pattern","version":9}', opened: { kind: 'newer', version: 9, known: FILE_VERSION } });
    expect(await shelf.take('odd')).toMatchObject({ kind: 'unsound', file: '5' });
    expect((await shelf.list()).unreadable).toEqual(['pattern/odd']);
  });
});
