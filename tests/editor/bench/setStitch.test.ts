import { describe, expect, it } from 'vitest';
import type { Pattern } from '../../../src/engine/1-pattern/pattern.ts';
import { check } from '../../../src/engine/readings/checks/check.ts';
import { setStitch } from '../../../src/editor/bench/commands/setStitch.ts';
import { after, benchOf, LEG, stitchesOfRow } from './benchOf.ts';

const texts = (pattern: Pattern) => pattern.sections[0]!.lines.map((line) => line.text);
const made = (pattern: Pattern, size: number) => benchOf(pattern, size).fabric.rows.slice(1).map((row) => row.made);
const asked = (pattern: Pattern) =>
  [0, 1].flatMap((size) => {
    const state = benchOf(pattern, size);
    return check(pattern, state.fabric, state.colours).filter((each) => each.degree !== 'note');
  });

describe('setting a stitch', () => {
  it.each([
    ['increase', 'ch 1, turn, sc in next 2 sts, 2 sc in next st, sc in each st across. (11 (13) sc)', [10, 10, 11, 11, 11, 11], [12, 12, 13, 13, 13, 13]],
    ['decrease', 'ch 1, turn, sc in next 2 sts, sc2tog, sc in each st across. (9 (11) sc)', [10, 10, 9, 9, 9, 9], [12, 12, 11, 11, 11, 11]],
  ] as const)('%s: the counts of the row and of the rows above follow in every size', (change, text, small, large) => {
    const state = benchOf(LEG);
    const set = after(LEG, setStitch(stitchesOfRow(state, 3)[3]!, change)(state));
    expect(texts(set)[3]).toBe(text);
    expect([made(set, 0), made(set, 1)]).toEqual([small, large]);
    expect(asked(set)).toEqual([]);
  });

  it('sets a bobble without changing the count', () => {
    const state = benchOf(LEG);
    const set = after(LEG, setStitch(stitchesOfRow(state, 3)[3]!, 'bobble')(state));
    expect(texts(set)[3]).toContain('bobble in next st');
    expect(made(set, 0)).toEqual([10, 10, 10, 10, 10, 10]);
  });

  it('changes the first and the last stitch of a row', () => {
    const state = benchOf(LEG);
    const row3 = stitchesOfRow(state, 3);
    expect(texts(after(LEG, setStitch(row3[1]!, 'increase')(state)))[3]).toBe('ch 1, turn, 2 sc in next st, sc in each st across. (11 (13) sc)');
    // The last stitch of the small size is no last stitch in the large one, where a rest is left to say.
    expect(setStitch(row3[10]!, 'increase')(state)).toBeNull();
    expect(setStitch(row3[10]!, 'decrease')(state)).toBeNull();
  });

  it('is no step on a turning chain, in the foundation, and in a repeat', () => {
    const state = benchOf(LEG);
    expect(setStitch(stitchesOfRow(state, 3)[0]!, 'increase')(state)).toBeNull();
    expect(setStitch(2, 'increase')(state)).toBeNull();
    const repeat: Pattern = { ...LEG, sections: [{ ...LEG.sections[0]!, lines: LEG.sections[0]!.lines.map((line) => (line.id === 'plain' ? { ...line, text: 'ch 1, turn, *sc in next st, sc in next st; rep from * to end. (10 (12) sc)' } : line)) }] };
    const inRepeat = benchOf(repeat);
    expect(setStitch(stitchesOfRow(inRepeat, 3)[3]!, 'increase')(inRepeat)).toBeNull();
  });
});
