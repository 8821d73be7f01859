import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { openPatternFile, packPatternFile } from '../../../src/engine/1-pattern/file.ts';
import { NO_HISTORY, perform, redo, undo, type Historied, type Moved } from '../../../src/engine/1-pattern/history.ts';
import { makeMove, moveBetween, readMoves, writeMoves, type Move } from '../../../src/engine/1-pattern/historyMove.ts';
import type { Pattern } from '../../../src/engine/1-pattern/pattern.ts';
import { construct } from '../../../src/engine/2-construct/construct.ts';
import type { Fabric } from '../../../src/engine/3-fabric/fabric.ts';
import { work } from '../../../src/engine/3-fabric/work.ts';
import { colour } from '../../../src/engine/4-colour/colour.ts';
import { check } from '../../../src/engine/readings/checks/check.ts';
import { seededNumbers } from '../../setup/seededNumbers.ts';
import { editFrom } from './arbitraryPattern.ts';
import { SMALL } from './smallPattern.ts';

/** What the bench shows of a pattern, worked from its document; `before` is the fabric that it is worked on from. */
function shown(pattern: Pattern, before: Fabric | null) {
  const fabric = work(construct(pattern, 0), before);
  const colours = colour(pattern, fabric, 0);
  return { fabric, colours, findings: check(pattern, fabric, colours) };
}

/** All that the fabric and the readings say, in plain values. */
function said({ fabric, colours, findings }: ReturnType<typeof shown>) {
  const { count, kind, row, flags, previous, rows } = fabric;
  return { count, kind: [...kind.slice(0, count)], row: [...row.slice(0, count)], flags: [...flags.slice(0, count)], previous: [...previous.slice(0, count)], rows, yarn: [...colours.yarn.slice(0, count)], findings };
}

const demo = openPatternFile(readFileSync(new URL('../../files/v003/everything.json', import.meta.url), 'utf8'));
const STARTS: readonly Pattern[] = [SMALL, ...(demo.kind === 'ok' ? [demo.pattern] : [])];
const STEPS = 1_000;

describe('a long day of work: ten thousand edits, undos, redos and reloads', () => {
  it.each([1, 2, 3, 4, 5, 6, 7, 8, 9, 10])('document, fabric and readings are as if made anew each hundred steps, and memory stays flat (sitting %i)', (seed) => {
    const draw = seededNumbers(600 + seed);
    const start = STARTS[seed % STARTS.length]!;
    let now: Historied = { pattern: start, history: NO_HISTORY };
    let base: Historied = now;
    let journal: Move[] = [];
    let bench = shown(now.pattern, null);
    const tally = { made: 0, undone: 0, redone: 0, refused: 0, reloads: 0 };
    const heapMb: number[] = [];

    for (let step = 1; step <= STEPS; step++) {
      const chance = draw();
      const numbers = Array.from({ length: 12 }, () => Math.floor(draw() * 1_000));
      let moved: Moved;
      if (chance < 0.22) moved = undo(now);
      else if (chance < 0.34) moved = redo(now);
      else moved = perform(now, { label: `step ${step}`, at: step, edits: [editFrom(now.pattern, numbers)] });
      if (!moved.ok) {
        tally.refused++;
      } else {
        const next = { pattern: moved.pattern, history: moved.history };
        const move = moveBetween(now.history, next.history);
        if (!move) throw new Error('a step that is no move');
        journal.push(move);
        tally[move.kind === 'do' ? 'made' : move.kind === 'undo' ? 'undone' : 'redone']++;
        now = next;
      }
      // As on screen: worked on from the fabric before, now and then and not at every step.
      if (step % 5 === 0) bench = shown(now.pattern, bench.fabric);

      if (step % 100 === 0) {
        // A reload: the whole that was kept, and the journal on top of it, both from their texts.
        const opened = openPatternFile(packPatternFile(base.pattern));
        if (opened.kind !== 'ok') throw new Error(opened.kind);
        let again: Historied = { pattern: opened.pattern, history: base.history };
        for (const each of readMoves(writeMoves(journal)) ?? []) {
          const replayed = makeMove(again, each);
          if (!replayed.ok) throw new Error(replayed.reason);
          again = { pattern: replayed.pattern, history: replayed.history };
        }
        expect(again.pattern).toStrictEqual(now.pattern);
        expect([again.history.past.length, again.history.future.length]).toEqual([now.history.past.length, now.history.future.length]);
        const anew = openPatternFile(packPatternFile(now.pattern));
        if (anew.kind !== 'ok') throw new Error(anew.kind);
        expect(said(bench)).toEqual(said(shown(anew.pattern, null)));
        tally.reloads++;
        [now, base, journal] = [again, again, []];
        bench = shown(now.pattern, bench.fabric);
        if (globalThis.gc) globalThis.gc();
        heapMb.push(process.memoryUsage().heapUsed / 1e6);
      }
    }
    expect(tally.reloads).toBe(STEPS / 100);
    expect(tally.made).toBeGreaterThan(STEPS / 4);
    expect(tally.undone + tally.redone).toBeGreaterThan(STEPS / 20);
    // All of it can be taken back to the very start.
    while (now.history.past.length > 0) {
      const moved = undo(now);
      if (!moved.ok) throw new Error(moved.reason);
      now = moved;
    }
    expect(now.pattern).toStrictEqual(start);
    // Steps are kept; fabrics and patterns of before are not. A fabric a step would come to hundreds of megabytes.
    expect(Math.max(...heapMb.slice(-5)) - Math.max(...heapMb.slice(0, 5))).toBeLessThan(120);
  });
});
