// The runes' types come with the package; the compiler of the tests knows no Svelte.
import type {} from 'svelte';
import { describe, expect, it } from 'vitest';
import { NO_HISTORY } from '../../../src/engine/1-pattern/history.ts';
import type { Pattern } from '../../../src/engine/1-pattern/pattern.ts';
import { patternFromText } from '../../../src/engine/1-pattern/patternFromText.ts';
import { stoodRows } from '../../../src/engine/5-layout/layOutSection.ts';
import { layYarn } from '../../../src/editor/bench/commands/layYarn.ts';
import { editRowText } from '../../../src/editor/bench/commands/editRowText.ts';
import { renamePattern } from '../../../src/editor/bench/commands/renamePattern.ts';
import { setWording } from '../../../src/editor/takeAway/setWording.ts';
import { Session } from '../../../src/editor/bench/session.svelte.ts';
import { enginePattern } from '../../bench/enginePattern.ts';
import { LEG } from './benchOf.ts';

function start(pattern: Pattern = LEG) {
  const kept: string[] = [];
  let clock = 0;
  const session = new Session({ pattern, history: NO_HISTORY, keep: (next) => kept.push(next.title), now: () => ++clock });
  return { session, kept };
}

describe('a session', () => {
  it('works everything out from the document, and anew after a step', () => {
    const { session } = start();
    expect(session.fabric.rows.map((row) => row.made)).toEqual([11, 10, 10, 10, 10, 10, 10]);
    expect(session.ledger.size).toBe(7);
    expect(session.entries.map((entry) => entry.name)).toEqual(['Foundation', 'Row 1', 'Row 2', 'Row 3', 'Row 4', 'Row 5', 'Row 6', 'Note']);
    session.commit(editRowText({ line: 'plain', nth: 4 }, 'ch 1, turn, sc2tog, sc in each st across.', 'row', 'row 6'));
    expect(session.fabric.rows.at(-1)!.made).toBe(9);
  });

  it('keeps the layout of the rows that an edit leaves as they stood, those above it too, and takes the old ones up again with undo', () => {
    const { session } = start(patternFromText(enginePattern('panel', 20, 30)).pattern!);
    const places = () => stoodRows(session.layout)!.stood.map((row) => row.places);
    const kept = (before: ReturnType<typeof places>) => places().filter((one, row) => one === before[row]).length;
    const [first, drawing] = [places(), session.drawing];
    const line = session.pattern.sections[0]!.lines[15]!;
    session.commit(editRowText({ line: line.id, nth: 0 }, 'ch 2, turn, hdc in each st across.', 'row', 'row 15'));
    expect(session.drawing).not.toBe(drawing);
    expect([first.length, kept(first)]).toEqual([31, 30]);
    const second = places();
    session.undo();
    expect(session.drawing.stitches.glyphY).toEqual(drawing.stitches.glyphY);
    expect(kept(second)).toBe(30);
  });

  it('records and keeps each step, takes it back and does it again', () => {
    const { session, kept } = start();
    expect([session.undoLabel, session.redoLabel]).toEqual([null, null]);
    expect(session.commit(renamePattern('First'))).toBe(true);
    expect(session.commit(renamePattern('Second'))).toBe(true);
    session.undo();
    expect([session.pattern.title, session.undoLabel, session.redoLabel]).toEqual(['First', 'Rename to First', 'Rename to Second']);
    session.redo();
    expect(kept).toEqual(['First', 'Second', 'First', 'Second']);
  });

  it('shows the words as the pattern is worded, in its terms until others are asked for', () => {
    const { session } = start();
    const words = () => session.words.get(2)!;
    expect(words()).toBe('ch 1, turn, sc in each st across. (10 sc)');
    session.commit(setWording({ terms: 'uk', count: 'dash' }));
    expect(words()).toBe('ch 1, turn, dc in each st across — 10 dc.');
    session.showTerms('us');
    expect(words()).toBe('ch 1, turn, sc in each st across — 10 sc.');
    session.showTerms('uk');
    session.undo();
    expect(words()).toBe('ch 1, turn, sc in each st across. (10 sc)');
  });

  it('does nothing for a command that gives no step, and says why a step is refused', () => {
    const { session, kept } = start();
    expect(session.commit(renamePattern(''))).toBe(false);
    expect(session.refusal).toBeNull();
    expect(session.commit(({ at }) => ({ label: 'Take off', at, edits: [{ kind: 'removePlacement', placement: 'gone' }] }))).toBe(false);
    expect(session.refusal).toBe('There is no placement "gone".');
    expect(kept).toEqual([]);
  });

  it('shows another size with its own counts', () => {
    const { session } = start();
    session.size = 1;
    expect(session.fabric.rows[1]!.made).toBe(12);
    expect(session.grids[0]!.fabric.rows[1]!.made).toBe(10);
  });

  it('lights a stitch with its base, and keeps it in hand when the pointer is gone', () => {
    const { session } = start();
    const row = session.fabric.rows[3]!;
    session.pointAt(row.first + 4, 'chart');
    expect(session.highlight).toMatchObject({ row: 3, stitch: row.first + 4 });
    expect(session.highlight!.bases).toHaveLength(1);
    session.pointAt(null, 'chart');
    expect(session.inHand?.stitch).toBe(row.first + 4);
  });

  it('finds what a line would say before it is changed', () => {
    const { session } = start();
    const entry = session.entries[1]!;
    const found = session.findingsIf(entry, editRowText(entry.key, 'sc in 2nd ch from hook and in each ch across. (9 (12) sc)', 'line', 'row 1'));
    expect(found.map((each) => [each.rule, each.mend?.text])).toEqual([['statedCount', '10 (12)']]);
    expect(session.pattern).toBe(LEG);
  });

  it('counts the yarns of a row after the layers of colour', () => {
    const { session } = start();
    const row = session.fabric.rows[2]!;
    session.commit(layYarn([row.first + 1, row.first + 2], 'B'));
    expect(session.yarnsOf(2)).toEqual([8, 2]);
  });
});
