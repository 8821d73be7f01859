import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { joinSteps, NO_HISTORY, perform, redo, undo, type Historied, type Moved } from '../../../src/engine/1-pattern/history.ts';
import { makeMove, moveBetween, readMoves, writeMoves, type Move } from '../../../src/engine/1-pattern/historyMove.ts';
import { arbitraryEditNumbers, arbitraryPattern, editFrom } from './arbitraryPattern.ts';
import { SMALL } from './smallPattern.ts';

function must(moved: Moved): Historied {
  if (!moved.ok) throw new Error(moved.reason);
  return { pattern: moved.pattern, history: moved.history };
}

const titled = (now: Historied, value: string) => must(perform(now, { label: value, at: 1, edits: [{ kind: 'set', field: 'title', value }] }));
const START: Historied = { pattern: SMALL, history: NO_HISTORY };

describe('moves', () => {
  it('are found from the histories before and after', () => {
    const one = titled(START, 'one');
    const two = titled(one, 'two');
    const back = must(undo(two));
    const again = must(redo(back));
    const other = titled(back, 'other');
    expect(moveBetween(one.history, two.history)).toEqual({ kind: 'do', transaction: two.history.past[1]!.done });
    expect(moveBetween(two.history, back.history)).toEqual({ kind: 'undo' });
    expect(moveBetween(back.history, again.history)).toEqual({ kind: 'redo' });
    expect(moveBetween(back.history, other.history)).toEqual({ kind: 'do', transaction: other.history.past[1]!.done });
  });

  it('are none where histories are not one move apart', () => {
    const one = titled(START, 'one');
    const three = titled(titled(one, 'two'), 'three');
    const [first, second] = three.history.past;
    expect(moveBetween(one.history, three.history)).toBeNull();
    expect(moveBetween(three.history, one.history)).toBeNull();
    expect(moveBetween(one.history, one.history)).toBeNull();
    expect(moveBetween(NO_HISTORY, NO_HISTORY)).toBeNull();
    expect(moveBetween(titled(START, 'else').history, titled(one, 'two').history)).toBeNull();
    // The moves of a drag that were made one.
    expect(moveBetween({ past: [first!, second!], future: [] }, { past: [joinSteps(first!, second!)], future: [] })).toBeNull();
  });

  it('lead through any work to the very same pattern and history, from their text too', () => {
    fc.assert(
      fc.property(arbitraryPattern, fc.array(fc.oneof({ weight: 4, arbitrary: arbitraryEditNumbers }, fc.constantFrom<'undo' | 'redo'>('undo', 'redo')), { minLength: 1, maxLength: 20 }), (pattern, acts) => {
        let now: Historied = { pattern, history: NO_HISTORY };
        const moves: Move[] = [];
        for (const act of acts) {
          const moved = act === 'undo' ? undo(now) : act === 'redo' ? redo(now) : perform(now, { label: 'x', at: 0, edits: [editFrom(now.pattern, act)] });
          if (!moved.ok) continue;
          const next = must(moved);
          const move = moveBetween(now.history, next.history);
          if (!move) throw new Error('no move');
          moves.push(move);
          now = next;
        }
        const read = readMoves(writeMoves(moves));
        let again: Historied = { pattern, history: NO_HISTORY };
        for (const move of read ?? []) again = must(makeMove(again, move));
        expect(again).toStrictEqual(now);
      }),
      { numRuns: 400, seed: 5_151 },
    );
  });

  it.each(['', 'null', '{}', '[{"kind":"do"}]', '[{"kind":"explode"}]', '[{"kind":"undo","more":1}]', '[{"kind":"do","transaction":{"label":"x","at":0,"edits":[{"kind":"explode"}]}}]'])('are not read from %s', (text) => {
    expect(readMoves(text)).toBeNull();
  });

  it('are refused where they can’t be made', () => {
    expect(makeMove(START, { kind: 'undo' })).toEqual({ ok: false, reason: 'There is nothing to undo.' });
    expect(makeMove(START, { kind: 'redo' })).toEqual({ ok: false, reason: 'There is nothing to do again.' });
  });
});

describe('another state of the whole pattern', () => {
  it('takes the place of this one as one step, under the same id, and can be taken back', () => {
    fc.assert(
      fc.property(arbitraryPattern, arbitraryPattern, (pattern, other) => {
        const there = must(perform({ pattern, history: NO_HISTORY }, { label: 'Go back', at: 0, edits: [{ kind: 'setPattern', pattern: { ...other, id: 'another' } }] }));
        expect(there.pattern).toStrictEqual({ ...other, id: pattern.id });
        expect(must(undo(there)).pattern).toStrictEqual(pattern);
      }),
      { numRuns: 100, seed: 99 },
    );
  });

  it('is refused where no file could hold it, with the place of the fault', () => {
    const refused = perform(START, { label: 'x', at: 0, edits: [{ kind: 'setPattern', pattern: { ...SMALL, motifs: [] } }] });
    expect(refused).toEqual({ ok: false, reason: 'That state of the pattern can\'t be taken: placements.0.motif is "flag", expected the id of a motif.' });
  });
});

describe('rows of a pattern', () => {
  it('are no more than can be worked, whatever edits ask for', () => {
    const line = (rows: number) => ({ ...SMALL.sections[0]!.lines.find((each) => each.kind === 'row')!, id: `many-${rows}`, label: { word: 'row' as const, rows, start: null, side: null }, kind: 'row' as const, text: 'sc in next st' });
    const add = (rows: number) => perform(START, { label: 'x', at: 0, edits: [{ kind: 'insertLines', section: 'leg', at: 0, lines: [line(rows)] }] });
    expect(add(15_000).ok).toBe(true);
    const refused = add(20_000);
    expect(refused.ok ? '' : refused.reason).toMatch(/^The pattern would have 2\d{4} rows up to here, and at most 20000 rows in the whole pattern can be worked\.$/);
  });
});
