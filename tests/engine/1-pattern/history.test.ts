import { describe, expect, it } from 'vitest';
import { historyList, joinSteps, NO_HISTORY, perform, redo, undo, type Historied } from '../../../src/engine/1-pattern/history.ts';
import { readSteps, writeSteps } from '../../../src/engine/1-pattern/stepsText.ts';
import { SMALL } from './smallPattern.ts';

function titled(now: Historied, title: string, at: number): Historied {
  const moved = perform(now, { label: `Name it ${title}`, at, edits: [{ kind: 'set', field: 'title', value: title }] });
  if (!moved.ok) throw new Error(moved.reason);
  return moved;
}

const START: Historied = { pattern: SMALL, history: NO_HISTORY };

describe('history', () => {
  it('lists its steps in words, and which of them are undone', () => {
    const now = titled(titled(START, 'one', 1), 'two', 2);
    const back = undo(now);
    expect(historyList(now.history)).toEqual([
      { label: 'Name it one', at: 1, isDone: true },
      { label: 'Name it two', at: 2, isDone: true },
    ]);
    expect(back.ok && historyList(back.history).map((step) => step.isDone)).toEqual([true, false]);
    expect(back.ok && back.step.done.label).toBe('Name it two');
  });

  it('forgets undone steps when a new one is made', () => {
    const back = undo(titled(titled(START, 'one', 1), 'two', 2));
    const now = back.ok && titled(back, 'three', 3);
    expect(now && historyList(now.history).map((step) => step.label)).toEqual(['Name it one', 'Name it three']);
    expect(now && redo(now)).toEqual({ ok: false, reason: 'There is nothing to do again.' });
  });

  it('stays as it is when a transaction is refused', () => {
    expect(perform(START, { label: 'x', at: 0, edits: [{ kind: 'removeMotif', motif: 'gone' }] })).toEqual({ ok: false, reason: 'There is no motif "gone".' });
    expect(undo(START)).toEqual({ ok: false, reason: 'There is nothing to undo.' });
  });

  it('keeps five thousand steps and goes back through all of them', () => {
    let now = START;
    for (let i = 0; i < 5_000; i++) now = titled(now, `title ${i}`, i);
    expect(now.history.past).toHaveLength(5_000);
    for (let i = 0; i < 5_000; i++) {
      const moved = undo(now);
      if (moved.ok) now = moved;
    }
    expect(now.pattern).toStrictEqual(SMALL);
    expect(now.history.future).toHaveLength(5_000);
  });

  it('makes one step of the moves of a drag', () => {
    const now = titled(titled(START, 'one', 1), 'two', 2);
    const [first, second] = now.history.past as [(typeof now.history.past)[0], (typeof now.history.past)[0]];
    const step = joinSteps(first, second);
    expect(step.done).toMatchObject({ label: 'Name it one', at: 2 });
    const back = undo({ pattern: now.pattern, history: { past: [step], future: [] } });
    expect(back.ok && back.pattern).toStrictEqual(SMALL);
    expect(back.ok && redo(back)).toMatchObject({ ok: true, pattern: { title: 'two' } });
  });

  it.each(['', 'null', '{}', '[{"done":1}]', '[{"done":{"label":"x","at":0,"edits":[{"kind":"explode"}]},"inverse":{"label":"x","at":0,"edits":[]}}]'])('reads no steps from %s', (text) => {
    expect(readSteps(text)).toBeNull();
  });

  it('reads the steps that it wrote', () => {
    const { past } = titled(START, 'one', 1).history;
    expect(readSteps(writeSteps(past))).toStrictEqual(past);
  });
});
