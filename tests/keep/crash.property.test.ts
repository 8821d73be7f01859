import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { perform, redo, undo, type Historied, type Moved } from '../../src/engine/1-pattern/history.ts';
import { createKeeper, KEEP_WITHIN_MS } from '../../src/keep/keeper.ts';
import type { KeyStore } from '../../src/keep/keyStore.ts';
import { NEVER_KEPT, shelfOf } from '../../src/keep/shelf.ts';
import { clock, settle } from './clock.ts';
import { memoryStore } from './memoryStore.ts';
import { START } from './titles.ts';

type Act = { readonly kind: 'edit' | 'undo' | 'redo' | 'wait' | 'abort' | 'mend' | 'unsure' | 'reload'; readonly ms: number };

const act: fc.Arbitrary<Act> = fc.record({
  kind: fc.constantFrom<Act['kind']>('edit', 'edit', 'edit', 'edit', 'undo', 'undo', 'redo', 'wait', 'wait', 'abort', 'mend', 'mend', 'unsure', 'reload'),
  ms: fc.oneof(fc.integer({ min: 0, max: 120 }), fc.constant(4_500)),
});

/** Does acts as a session would, kills the page after the last one, and gives every state it was in with those that were said to be kept. */
async function run(acts: readonly Act[], turnsBeforeKill: number) {
  const store = memoryStore();
  const time = clock();
  const shelf = (token: string) => shelfOf(store, token);
  await shelf('start').put({ ...START, pictureSvg: '', at: 0 }, NEVER_KEPT);
  const states: { readonly state: Historied; readonly at: number }[] = [{ state: START, at: 0 }];
  let acknowledged = 0;
  let sitting = 0;
  let state: Historied = START;
  let isDead = false;
  // A killed page calls no store again: what it has begun is done or not done as a whole.
  const living: KeyStore = { ...store, transact: (...args) => (isDead ? new Promise(() => undefined) : store.transact(...args)) };

  async function sit() {
    const taken = await shelf(`s${sitting}`).take('quay');
    if (taken.kind !== 'ok') throw new Error(taken.kind);
    state = { pattern: taken.pattern, history: taken.history };
    const from = states.length;
    states.push({ state, at: time.now() });
    const keeper = createKeeper({
      ...state, shelf: shelfOf(living, `s${sitting++}`), standing: taken.standing, picture: () => '', now: time.now, after: time.after,
      onKept: ({ pattern }) => (acknowledged = Math.max(acknowledged, from, states.findLastIndex((each) => each.state.pattern === pattern))),
    });
    return keeper;
  }

  let keeper = await sit();
  let count = 0;
  for (const { kind, ms } of acts) {
    const done: Moved | null =
      kind === 'edit' ? perform(state, { label: `n${count}`, at: 0, edits: [{ kind: 'set', field: 'title', value: `n${count++}` }] }) : kind === 'undo' ? undo(state) : kind === 'redo' ? redo(state) : null;
    if (done?.ok) {
      state = { pattern: done.pattern, history: done.history };
      states.push({ state, at: time.now() });
      keeper.keep(state.pattern, state.history);
    }
    if (kind === 'abort') store.failure = { methods: ['transact'], error: new DOMException('stopped', 'AbortError') };
    if (kind === 'mend') [store.failure, store.isUnconfirmed] = [null, false];
    if (kind === 'unsure') store.isUnconfirmed = true;
    if (kind === 'reload') {
      [store.failure, store.isUnconfirmed] = [null, false];
      await keeper.flush();
      keeper.close();
      keeper = await sit();
    }
    time.pass(ms);
    await settle(ms % 7);
  }
  const wasFailing = store.failure !== null || store.isUnconfirmed || keeper.state().status === 'failed';
  await settle(turnsBeforeKill);
  isDead = true;
  keeper.close();
  const killedAt = time.now();
  await settle();
  store.failure = null;
  store.isUnconfirmed = false;
  const taken = await shelf('after').take('quay');
  return { states, acknowledged, taken, killedAt, wasFailing };
}

describe('a page that is killed at any moment', () => {
  it('comes back in a state that it was in, no older than what was said to be kept', async () => {
    const tally = { behind: 0, runs: 0 };
    await fc.assert(
      fc.asyncProperty(fc.array(act, { minLength: 2, maxLength: 25 }), fc.nat(12), async (acts, turns) => {
        const { states, acknowledged, taken } = await run(acts, turns);
        expect(taken).toMatchObject({ kind: 'ok', lost: null, isHistoryLost: false });
        if (taken.kind !== 'ok') return;
        const key = ({ pattern, history }: Historied) => JSON.stringify([pattern.title, history.past.map((step) => step.done.label), history.future.map((step) => step.done.label)]);
        const found = states.findLastIndex(({ state }) => key(state) === key(taken));
        expect(found).toBeGreaterThanOrEqual(acknowledged);
        tally.runs++;
        if (found < states.length - 1) tally.behind++;
      }),
      { numRuns: 1_200, seed: 41_207 },
    );
    // The kills come in the midst of work: many of them cost the last moment.
    expect(tally.behind).toBeGreaterThan(tally.runs / 20);
  });

  it('loses no more than a quarter of a second where the device does its part', async () => {
    const quick = fc.record({ kind: fc.constantFrom<Act['kind']>('edit', 'edit', 'undo', 'redo', 'wait'), ms: fc.integer({ min: 0, max: 120 }) });
    await fc.assert(
      fc.asyncProperty(fc.array(quick, { minLength: 2, maxLength: 25 }), async (acts) => {
        const { states, taken, killedAt } = await run(acts, 4);
        if (taken.kind !== 'ok') throw new Error(taken.kind);
        const due = states.filter(({ at }) => at <= killedAt - 250 + KEEP_WITHIN_MS).at(-1)!;
        const index = states.indexOf(due);
        const labels = JSON.stringify([taken.pattern.title, taken.history.past.length, taken.history.future.length]);
        const reached = states.findLastIndex(({ state }) => JSON.stringify([state.pattern.title, state.history.past.length, state.history.future.length]) === labels);
        expect(reached).toBeGreaterThanOrEqual(index);
      }),
      { numRuns: 300, seed: 41_208 },
    );
  });
});
