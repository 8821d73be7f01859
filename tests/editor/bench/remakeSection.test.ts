import { describe, expect, it } from 'vitest';
import { NO_HISTORY, perform, undo } from '../../../src/engine/1-pattern/history.ts';
import type { Pattern } from '../../../src/engine/1-pattern/pattern.ts';
import { SOCK } from '../../../src/engine/2-construct/recipes/defaults.ts';
import { handWritten } from '../../../src/engine/2-construct/recipes/handWritten.ts';
import { sectionsByHand } from '../../../src/engine/2-construct/recipes/gradePattern.ts';
import { editRowText } from '../../../src/editor/bench/commands/editRowText.ts';
import { layYarn } from '../../../src/editor/bench/commands/layYarn.ts';
import { remakeSection } from '../../../src/editor/bench/commands/remakeSection.ts';
import { setStitch } from '../../../src/editor/bench/commands/setStitch.ts';
import { handNotice } from '../../../src/editor/bench/handNotice.ts';
import { measure, pieceOf, requestOf } from '../../engine/2-construct/recipes/pieceOf.ts';
import { after, benchOf } from './benchOf.ts';

const FEET = [measure('footGirth', 22, 25), measure('footLength', 22, 25), measure('legLength', 20, 22)];
const made: Pattern = { ...pieceOf(requestOf(SOCK, FEET)).pattern, piece: { measures: FEET } };
const section = (id: string) => made.sections.findIndex((each) => each.id === id);
const bench = (pattern: Pattern, id = 'foot') => benchOf(pattern, 0, section(id));
/** A stitch in the middle of a row of the foot. */
function middle(pattern: Pattern, up: number): number {
  const { fabric } = bench(pattern);
  const { firstRow } = fabric.sections[section('foot')]!;
  const row = fabric.rows[firstRow + up]!;
  return Math.floor((row.first + row.end) / 2);
}
const edited = (pattern: Pattern) => after(pattern, setStitch(middle(pattern, 3), { kind: 'increase' })(bench(pattern)));

describe('a section of a recipe that is changed by hand', () => {
  it('is told from those that are as their recipes made them', () => {
    expect(handWritten(made)).toEqual([]);
    expect(handWritten(edited(made))).toEqual(['foot']);
    expect(sectionsByHand(edited(made), 'sock')).toEqual(['foot']);
    const coloured = after(made, layYarn([middle(made, 3)], 'B')(bench(made)));
    expect(handWritten(coloured)).toEqual([]);
  });

  it('is told of at the first edit by hand, and not at the next, nor after taking it back', () => {
    const first = perform({ pattern: made, history: NO_HISTORY }, setStitch(middle(made, 3), { kind: 'increase' })(bench(made))!);
    if (!first.ok) throw new Error(first.reason);
    expect(handNotice(made, NO_HISTORY)).toBeNull();
    expect(handNotice(first.pattern, first.history)?.id).toBe('foot');
    const second = perform(first, setStitch(middle(first.pattern, 5), { kind: 'decrease' })(bench(first.pattern))!);
    expect(second.ok && handNotice(second.pattern, second.history)).toBeNull();
    const back = undo(first);
    expect(back.ok && handNotice(back.pattern, back.history)).toBeNull();
  });

  it('is made from its recipe again in one step, and no other section with it', () => {
    const other = after(made, editRowText({ line: made.sections[section('leg')]!.lines.at(-1)!.id, nth: 0 }, 'sc in each st around.', 'row', 'the row')(bench(made, 'leg')));
    const changed = edited(other);
    expect(handWritten(changed)).toEqual(['leg', 'foot']);
    const step = remakeSection('foot', bench(changed));
    if ('reason' in step) throw new Error(step.reason);
    const again = after(changed, step);
    expect(again.sections[section('foot')]).toEqual(made.sections[section('foot')]);
    expect(again.sections.filter(({ id }) => id !== 'foot')).toEqual(changed.sections.filter(({ id }) => id !== 'foot'));
    expect(handWritten(again)).toEqual(['leg']);
  });

  it('follows what the pattern measures now', () => {
    const longer: Pattern = { ...edited(made), piece: { measures: FEET.map((one) => (one.name === 'footLength' ? { ...one, cm: [24, 27] } : one)) } };
    const step = remakeSection('foot', bench(longer));
    if ('reason' in step) throw new Error(step.reason);
    const rows = (pattern: Pattern) => { const { firstRow, endRow } = bench(pattern).fabric.sections[section('foot')]!; return endRow - firstRow; };
    // 2 cm more at 20 rows over 10 cm.
    expect(rows(after(longer, step))).toBe(rows(made) + 4);
  });

  it.each([
    ['a section without a recipe', (pattern: Pattern): Pattern => ({ ...pattern, sections: pattern.sections.map((each) => ({ ...each, recipe: null })) }), /written by hand from the start/],
    ['a recipe that is not known', (pattern: Pattern): Pattern => ({ ...pattern, sections: pattern.sections.map((each) => ({ ...each, recipe: { name: 'glove.foot', settings: {} } })) }), /recipe is not known/],
    ['a measurement that is missing', (pattern: Pattern): Pattern => ({ ...pattern, piece: {} }), /girth of the foot is not known/],
    ['a section as its recipe makes it', () => made, /as its recipe makes it/],
  ] as const)('says why not for %s', (_, change, reason) => {
    const step = remakeSection('foot', bench(change(edited(made))));
    expect('reason' in step && step.reason).toMatch(reason);
  });
});
