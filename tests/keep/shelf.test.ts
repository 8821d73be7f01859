import { describe, expect, it } from 'vitest';
import { writePatternFile } from '../../src/engine/1-pattern/file.ts';
import { NO_HISTORY, perform, undo, type Historied } from '../../src/engine/1-pattern/history.ts';
import { moveBetween, type Move } from '../../src/engine/1-pattern/historyMove.ts';
import { FILE_VERSION } from '../../src/engine/1-pattern/migrations/migrateUp.ts';
import { writeSteps } from '../../src/engine/1-pattern/stepsText.ts';
import { sealed } from '../../src/keep/sealed.ts';
import { NEVER_KEPT, shelfOf, type Put, type Shelf, type Standing } from '../../src/keep/shelf.ts';
import { SMALL } from '../engine/1-pattern/smallPattern.ts';
import { memoryStore, type MemoryStore } from './memoryStore.ts';

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

/** The small pattern `count` steps on; always the very same states. */
const through: Historied[] = [START];
function after(count: number): Historied {
  while (through.length <= count) through.push(on(through.at(-1)!, 1));
  return through[count]!;
}

function back(now: Historied): Historied {
  const moved = undo(now);
  if (!moved.ok) throw new Error(moved.reason);
  return moved;
}

const load = (state: Historied, at: number) => ({ pattern: state.pattern, history: state.history, pictureSvg: '<svg/>', at });

function kept(put: Put): Standing {
  if (put.kind !== 'kept') throw new Error(put.kind);
  return put.standing;
}

/** Adds the moves that lead through states, one after another, to the journal. */
async function append(shelf: Shelf, states: readonly Historied[], standing: Standing, at: number): Promise<Put> {
  const moves = states.slice(1).map((state, i): Move => {
    const move = moveBetween(states[i]!.history, state.history);
    if (!move) throw new Error('not one move apart');
    return move;
  });
  return shelf.append({ pattern: states.at(-1)!.pattern, moves, at }, standing);
}

const keysUnder = (store: MemoryStore, prefix: string) => [...store.values.keys()].filter((key) => key.startsWith(prefix)).sort();

describe('the shelf', () => {
  it('gives back what was put on it and what was added to the journal since, with its history and the times', async () => {
    const store = memoryStore();
    const shelf = shelfOf(store, 'one');
    const states = [START, after(1), after(2), back(after(2))];
    const first = kept(await shelf.put(load(START, 1_000), NEVER_KEPT));
    const second = kept(await append(shelf, states.slice(0, 3), first, 2_000));
    kept(await append(shelf, states.slice(2), second, 3_000));
    const taken = await shelf.take('quay');
    expect(taken).toMatchObject({ kind: 'ok', standing: { revision: 4, createdAt: 1_000, keptAt: 3_000, whole: { revision: 1 } }, isHistoryLost: false, lost: null });
    expect(taken.kind === 'ok' && [taken.pattern, taken.history]).toStrictEqual([states[3]!.pattern, states[3]!.history]);
    expect(await shelf.take('gone')).toEqual({ kind: 'missing' });
  });

  it('writes only the moves when moves are added, never the document', async () => {
    const store = memoryStore();
    const shelf = shelfOf(store, 'one');
    const standing = kept(await shelf.put(load(START, 1), NEVER_KEPT));
    const before = new Map(store.values);
    await append(shelf, [START, after(1)], standing, 2);
    const changed = [...store.values].filter(([key, value]) => before.get(key) !== value);
    expect(changed.map(([key]) => key).sort()).toEqual(['journal/quay/000000000002', 'pattern/quay']);
    expect(JSON.stringify(changed).length).toBeLessThan(600);
  });

  it('lists cards, last kept first', async () => {
    const shelf = shelfOf(memoryStore(), 'one');
    await shelf.put(load(START, 1), NEVER_KEPT);
    await shelf.put(load({ ...START, pattern: { ...SMALL, id: 'cap', title: 'Cap' } }, 2), NEVER_KEPT);
    const { cards, putAway, unreadable } = await shelf.list();
    expect([putAway, unreadable]).toEqual([[], []]);
    expect(cards.map(({ id, title, sizes, keptAt, pictureSvg }) => [id, title, sizes, keptAt, pictureSvg])).toEqual([
      ['cap', 'Cap', ['S', 'M'], 2, '<svg/>'],
      ['quay', 'Puffin Quay', ['S', 'M'], 1, '<svg/>'],
    ]);
  });

  it('writes only the newest piece of a long history, and keeps two wholes with the journal between them', async () => {
    const store = memoryStore();
    const shelf = shelfOf(store, 'one');
    let state = after(140);
    let standing = kept(await shelf.put(load(state, 1), NEVER_KEPT));
    const before = keysUnder(store, 'steps/');
    expect(before).toHaveLength(3);
    for (let round = 0; round < 4; round++) {
      const next = on(state, 1);
      standing = kept(await append(shelf, [state, next], standing, 2 + round));
      standing = kept(await shelf.put(load(next, 2 + round), standing));
      state = next;
    }
    expect(keysUnder(store, 'whole/')).toEqual(['whole/quay/000000000004', 'whole/quay/000000000005']);
    expect(keysUnder(store, 'journal/')).toEqual(['journal/quay/000000000005']);
    const now = keysUnder(store, 'steps/');
    expect(now.filter((key) => before.includes(key))).toHaveLength(2);
    // The last piece of each of the two wholes.
    expect(now).toHaveLength(4);
    const taken = await shelf.take('quay');
    expect(taken.kind === 'ok' && taken.history).toStrictEqual(state.history);
  });

  it('goes on after a reload from the pieces and wholes that are there', async () => {
    const store = memoryStore();
    await shelfOf(store, 'one').put(load(after(120), 1), NEVER_KEPT);
    const again = shelfOf(store, 'two');
    const taken = await again.take('quay');
    if (taken.kind !== 'ok') throw new Error(taken.kind);
    const next = on(taken, 1);
    const standing = kept(await append(again, [taken, next], taken.standing, 2));
    kept(await again.put(load(next, 2), standing));
    expect(keysUnder(store, 'steps/quay/one-')).toHaveLength(3);
    expect(keysUnder(store, 'steps/quay/two-')).toHaveLength(1);
    const end = await again.take('quay');
    expect(end.kind === 'ok' && end.history.past).toHaveLength(121);
  });

  it('does not overwrite what another window kept meanwhile, by moves or as a whole', async () => {
    const store = memoryStore();
    const mine = shelfOf(store, 'mine');
    const theirs = shelfOf(store, 'theirs');
    const standing = kept(await mine.put(load(START, 1), NEVER_KEPT));
    const newer = after(2);
    kept(await append(theirs, [START, after(1), newer], standing, 2));
    const values = structuredClone(store.values);
    expect(await append(mine, [START, after(1)], standing, 3)).toEqual({ kind: 'overtaken', revision: 3 });
    expect(await mine.put(load(after(4), 3), standing)).toEqual({ kind: 'overtaken', revision: 3 });
    expect(store.values).toEqual(values);
    const end = await mine.take('quay');
    expect(end.kind === 'ok' && end.pattern).toEqual(newer.pattern);
  });

  it('takes no save of its own for another window’s when the browser did not confirm it, and makes no move twice', async () => {
    const store = memoryStore();
    const shelf = shelfOf(store, 'one');
    const states = [START, after(1), after(2)];
    const standing = kept(await shelf.put(load(START, 1), NEVER_KEPT));
    store.isUnconfirmed = true;
    await expect(append(shelf, states.slice(0, 2), standing, 2)).rejects.toThrow('frozen');
    store.isUnconfirmed = false;
    expect(kept(await append(shelf, states, standing, 3)).revision).toBe(3);
    const taken = await shelf.take('quay');
    expect(taken.kind === 'ok' && taken.history.past.map((step) => step.done.label)).toEqual(['title 0', 'title 1']);
  });

  it('asks for a whole where there is nothing that moves could go on from', async () => {
    const store = memoryStore();
    const shelf = shelfOf(store, 'one');
    const standing = kept(await shelf.put(load(START, 1), NEVER_KEPT));
    expect(await append(shelf, [START, after(1)], NEVER_KEPT, 2)).toEqual({ kind: 'noBase' });
    store.values.clear();
    expect(await append(shelf, [START, after(1)], standing, 2)).toEqual({ kind: 'noBase' });
    expect(store.values.size).toBe(0);
    expect(kept(await shelf.put(load(after(1), 3), { ...standing, whole: null })).revision).toBe(2);
    expect(await shelf.take('quay')).toMatchObject({ kind: 'ok', pattern: { title: 'title 0' } });
  });

  it('reads what other windows have added without reading the whole again', async () => {
    const store = memoryStore();
    const writer = shelfOf(store, 'writer');
    const reader = shelfOf(store, 'reader');
    const standing = kept(await writer.put(load(START, 1), NEVER_KEPT));
    expect(await reader.takeSince(START, standing)).toBeNull();
    const next = after(2);
    kept(await append(writer, [START, after(1), next], standing, 2));
    store.values.delete('whole/quay/000000000001');
    const since = await reader.takeSince(START, standing);
    expect(since).toMatchObject({ kind: 'ok', standing: { revision: 3, whole: null } });
    expect(since?.kind === 'ok' && since.history).toStrictEqual(next.history);
  });

  it('puts away, brings back and removes with all that is kept of it, and no other’s', async () => {
    const store = memoryStore();
    const shelf = shelfOf(store, 'one');
    await shelf.put(load(after(60), 1), NEVER_KEPT);
    await shelf.put(load({ ...after(1), pattern: { ...SMALL, id: 'quay2' } }, 1), NEVER_KEPT);
    await shelf.putAway('quay', 5);
    expect((await shelf.list()).putAway.map(({ id, putAwayAt }) => [id, putAwayAt])).toEqual([['quay', 5]]);
    expect((await shelf.list()).cards.map(({ id }) => id)).toEqual(['quay2']);
    await shelf.bringBack('quay');
    expect((await shelf.list()).cards.map(({ id }) => id)).toEqual(['quay', 'quay2']);
    await shelf.remove('quay');
    expect([...store.values.keys()].every((key) => key.includes('quay2'))).toBe(true);
    expect(store.values.size).toBe(4);
  });

  it('is back on the shelf when somebody works on it after it was put away', async () => {
    const shelf = shelfOf(memoryStore(), 'one');
    const standing = kept(await shelf.put(load(START, 1), NEVER_KEPT));
    await shelf.putAway('quay', 5);
    await append(shelf, [START, after(1)], standing, 6);
    expect((await shelf.list()).cards).toHaveLength(1);
  });

  it('keeps the id of one pattern out of the keys of another', async () => {
    const store = memoryStore();
    const shelf = shelfOf(store, 'one');
    await shelf.put(load({ ...after(1), pattern: { ...SMALL, id: 'a' } }, 1), NEVER_KEPT);
    await shelf.put(load({ ...after(1), pattern: { ...SMALL, id: 'a/b' } }, 2), NEVER_KEPT);
    await shelf.remove('a');
    expect(await shelf.take('a/b')).toMatchObject({ kind: 'ok', isHistoryLost: false });
  });
});

describe('what was damaged', () => {
  /** A shelf with two wholes and moves after each: revisions 1 (whole), 2–3 (moves), 3 (whole), 4, 5. */
  async function filled() {
    const store = memoryStore();
    const shelf = shelfOf(store, 'one');
    const states = Array.from({ length: 5 }, (_, i) => after(i));
    let standing = kept(await shelf.put(load(states[0]!, 10), NEVER_KEPT));
    standing = kept(await append(shelf, states.slice(0, 3), standing, 20));
    standing = kept(await shelf.put(load(states[2]!, 30), standing));
    standing = kept(await append(shelf, states.slice(2, 4), standing, 40));
    kept(await append(shelf, states.slice(3), standing, 50));
    const change = (key: string, how: (text: string) => string) => {
      const value = store.values.get(key) as Record<string, unknown>;
      const field = 'file' in value ? 'file' : 'moves';
      const { text, sum } = value[field] as { text: string; sum: number };
      store.values.set(key, { ...value, [field]: { text: how(text), sum } });
    };
    return { store, shelf, states, change };
  }

  it.each<[string, (text: string) => string]>([
    ['cut off', (text) => text.slice(0, -20)],
    ['changed in one letter', (text) => text.replace('Puffin', 'Muffin')],
    ['empty', () => ''],
  ])('is read from the whole before and the journal when the newest whole is %s', async (_, how) => {
    const { shelf, states, change } = await filled();
    change('whole/quay/000000000003', (text) => how(text.replace('title 1', 'Puffin')));
    const taken = await shelf.take('quay');
    expect(taken).toMatchObject({ kind: 'ok', lost: null, isHistoryLost: false, standing: { revision: 5, whole: null } });
    expect(taken.kind === 'ok' && [taken.pattern, taken.history]).toStrictEqual([states[4]!.pattern, states[4]!.history]);
  });

  it.each<[string, string, number]>([
    ['the last moves', 'journal/quay/000000000005', 1],
    ['moves before others', 'journal/quay/000000000004', 2],
  ])('is given up to %s, and how much is missing is said', async (_, key, moves) => {
    const { shelf, states, change } = await filled();
    change(key, (text) => text.replace('title', 'tutle'));
    const taken = await shelf.take('quay');
    expect(taken).toMatchObject({ kind: 'ok', lost: { moves, since: moves === 1 ? 40 : 30 }, standing: { revision: 5, whole: null } });
    expect(taken.kind === 'ok' && taken.pattern).toStrictEqual(states[4 - moves]!.pattern);
    // Working on writes a whole over the gap.
    if (taken.kind !== 'ok') return;
    const next = on(taken, 1);
    expect(await append(shelf, [taken, next], taken.standing, 60)).toEqual({ kind: 'noBase' });
    kept(await shelf.put(load(next, 60), taken.standing));
    expect(await shelf.take('quay')).toMatchObject({ kind: 'ok', pattern: next.pattern, lost: null });
  });

  it('is found again when the head is lost, and listed', async () => {
    const { store, shelf, states } = await filled();
    store.values.delete('pattern/quay');
    expect(await shelf.take('quay')).toMatchObject({ kind: 'ok', pattern: states[4]!.pattern, standing: { revision: 5 } });
    expect((await shelf.list()).cards).toMatchObject([{ id: 'quay', title: 'title 3', pictureSvg: '<svg/>' }]);
    store.values.set('pattern/quay', 5);
    expect((await shelf.list()).cards).toMatchObject([{ id: 'quay', title: 'title 3' }]);
  });

  it('is the pattern without its history if the pieces of both wholes are gone', async () => {
    const { store, shelf, states } = await filled();
    for (const key of keysUnder(store, 'steps/')) store.values.set(key, 'no steps');
    // The first whole names no pieces: nothing was done before it. Its journal leads to everything.
    expect(await shelf.take('quay')).toMatchObject({ kind: 'ok', isHistoryLost: false, lost: null });
    store.values.delete('whole/quay/000000000001');
    const taken = await shelf.take('quay');
    expect(taken).toMatchObject({ kind: 'ok', isHistoryLost: true, lost: null, pattern: states[4]!.pattern });
    expect(taken.kind === 'ok' && taken.history.past.map((step) => step.done.label)).toEqual(['title 2', 'title 3']);
  });

  it('is given as text if no whole is sound, and what can’t be read at all is counted', async () => {
    const store = memoryStore();
    const shelf = shelfOf(store, 'one');
    await shelf.put(load(START, 1), NEVER_KEPT);
    const file = '{"format":"turnwork-pattern","version":900}';
    store.values.set('whole/quay/000000000001', { ...(store.values.get('whole/quay/000000000001') as object), file: sealed(file) });
    store.values.set('pattern/odd', 5);
    store.values.set('another/thing', 5);
    expect(await shelf.take('quay')).toEqual({ kind: 'unsound', file, opened: { kind: 'newer', version: 900, known: FILE_VERSION } });
    expect(await shelf.take('odd')).toMatchObject({ kind: 'unsound', file: '5' });
    expect((await shelf.list()).unreadable).toEqual(['pattern/odd']);
  });
});

describe('a pattern of the first shelves', () => {
  it('is listed, taken with its history, and kept on in the newer way', async () => {
    const state = after(60);
    const [one, two] = [state.history.past.slice(0, 50), state.history.past.slice(50)];
    const store = memoryStore(new Map<string, unknown>([
      ['pattern/quay', { id: 'quay', title: 'title 59', sizes: ['S', 'M'], revision: 9, createdAt: 1, keptAt: 2, pictureSvg: '<svg id="old"/>', writer: 'w', file: writePatternFile(state.pattern), pieces: ['steps/quay/w-1', 'steps/quay/w-2'], done: 60 }],
      ['steps/quay/w-1', writeSteps(one)],
      ['steps/quay/w-2', writeSteps(two)],
    ]));
    const shelf = shelfOf(store, 'one');
    expect((await shelf.list()).cards).toMatchObject([{ title: 'title 59', revision: 9, pictureSvg: '<svg id="old"/>' }]);
    const taken = await shelf.take('quay');
    expect(taken).toMatchObject({ kind: 'ok', isHistoryLost: false, standing: { revision: 9, createdAt: 1, whole: null } });
    expect(taken.kind === 'ok' && taken.history).toStrictEqual(state.history);
    if (taken.kind !== 'ok') return;
    const next = on(taken, 1);
    expect(await append(shelf, [taken, next], taken.standing, 5)).toEqual({ kind: 'noBase' });
    expect(kept(await shelf.put(load(next, 5), taken.standing)).revision).toBe(10);
    const end = await shelf.take('quay');
    expect(end.kind === 'ok' && end.history).toStrictEqual(next.history);
    expect(store.values.get('pattern/quay')).not.toHaveProperty('file');
  });
});
