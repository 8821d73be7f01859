import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { applyTransaction } from '../../../src/engine/1-pattern/applyTransaction.ts';
import type { Edit } from '../../../src/engine/1-pattern/edit.ts';
import { openPatternFile, patternFault, writePatternFile } from '../../../src/engine/1-pattern/file.ts';
import { FILE_VERSION } from '../../../src/engine/1-pattern/migrations/migrateUp.ts';
import { NO_HISTORY, perform, redo, undo, type Historied } from '../../../src/engine/1-pattern/history.ts';
import { readSteps, writeSteps } from '../../../src/engine/1-pattern/stepsText.ts';
import { arbitraryEditNumbers, arbitraryPattern, editFrom } from './arbitraryPattern.ts';

const RUNS = { numRuns: 1_500, seed: 20_240_511 };

/** A transaction of edits, each drawn on the pattern as the edits before it left it. */
function edits(start: Historied['pattern'], draws: readonly (readonly number[])[]): readonly Edit[] {
  const out: Edit[] = [];
  let now = start;
  for (const numbers of draws) {
    const edit = editFrom(now, numbers);
    out.push(edit);
    const applied = applyTransaction(now, { label: '', at: 0, edits: [edit] });
    if (applied.ok) now = applied.pattern;
  }
  return out;
}

const someDraws = fc.array(arbitraryEditNumbers, { minLength: 1, maxLength: 4 });

describe('the laws of edits', () => {
  it('makes only patterns that open from a file again', () => {
    let made = 0;
    let refused = 0;
    fc.assert(
      fc.property(arbitraryPattern, someDraws, (pattern, draws) => {
        expect(patternFault(pattern)).toBeNull();
        for (const edit of edits(pattern, draws)) {
          const applied = applyTransaction(pattern, { label: 'x', at: 1, edits: [edit] });
          if (!applied.ok) {
            refused++;
            expect(applied.reason).toMatch(/^\S.*\.$/s);
            continue;
          }
          made++;
          expect(patternFault(applied.pattern)).toBeNull();
        }
      }),
      RUNS,
    );
    expect(made).toBeGreaterThan(1_000);
    expect(refused).toBeGreaterThan(300);
  });

  it('takes every transaction back exactly, and leaves the pattern it started from untouched', () => {
    fc.assert(
      fc.property(arbitraryPattern, someDraws, (pattern, draws) => {
        const before = structuredClone(pattern);
        const applied = applyTransaction(pattern, { label: 'x', at: 1, edits: edits(pattern, draws).filter((edit) => applyTransaction(pattern, { label: '', at: 0, edits: [edit] }).ok) });
        expect(pattern).toStrictEqual(before);
        if (!applied.ok) return;
        const back = applyTransaction(applied.pattern, applied.inverse);
        expect(back.ok && back.pattern).toStrictEqual(before);
        expect(back.ok && applyTransaction(pattern, back.inverse)).toMatchObject({ ok: true, pattern: applied.pattern });
      }),
      RUNS,
    );
  });

  it('comes back to the start by undo and to the end by redo, through JSON', () => {
    fc.assert(
      fc.property(arbitraryPattern, fc.array(arbitraryEditNumbers, { minLength: 1, maxLength: 8 }), (pattern, draws) => {
        let now: Historied = { pattern, history: NO_HISTORY };
        for (const [at, numbers] of draws.entries()) {
          const moved = perform(now, { label: `step ${at}`, at, edits: [editFrom(now.pattern, numbers)] });
          if (moved.ok) now = moved;
        }
        const end = now;
        const steps = readSteps(writeSteps(end.history.past));
        expect(steps).toStrictEqual(end.history.past);
        now = { pattern: end.pattern, history: { past: steps!, future: [] } };
        for (const _ of end.history.past) {
          const moved = undo(now);
          expect(moved.ok).toBe(true);
          if (moved.ok) now = moved;
        }
        expect(now.pattern).toStrictEqual(pattern);
        expect(undo(now).ok).toBe(false);
        for (const _ of end.history.past) {
          const moved = redo(now);
          if (moved.ok) now = moved;
        }
        expect(now.pattern).toStrictEqual(end.pattern);
        expect(now.history).toStrictEqual(end.history);
      }),
      RUNS,
    );
  });

  it('writes a file that opens as the same pattern and is written the same again', () => {
    fc.assert(
      fc.property(arbitraryPattern, (pattern) => {
        const text = writePatternFile(pattern);
        const opened = openPatternFile(text);
        expect(opened).toStrictEqual({ kind: 'ok', pattern, from: FILE_VERSION });
        expect(opened.kind === 'ok' && writePatternFile(opened.pattern)).toBe(text);
      }),
      { ...RUNS, numRuns: 500 },
    );
  });
});
