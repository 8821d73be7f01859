import { describe, expect, it } from 'vitest';
import type { Pattern } from '../../../src/engine/1-pattern/pattern.ts';
import { check } from '../../../src/engine/readings/checks/check.ts';
import { turnHere } from '../../../src/editor/bench/commands/turnHere.ts';
import { after, benchOf, LEG, stitchesOfRow } from './benchOf.ts';

const texts = (pattern: Pattern) => pattern.sections[0]!.lines.map((line) => line.text);
const made = (pattern: Pattern, size: number) => benchOf(pattern, size).fabric.rows.map((row) => row.made);
const wrong = (pattern: Pattern, size: number) => {
  const state = benchOf(pattern, size);
  return check(pattern, state.fabric, state.colours).filter((each) => each.degree === 'wrong');
};

describe('turning here', () => {
  it('stops the row, says what is left in every size, and the rows above follow with their counts', () => {
    const state = benchOf(LEG);
    // Row 3 is the second row of a line of five; its stitch 0 is the turning chain.
    const turned = after(LEG, turnHere(stitchesOfRow(state, 3)[6]!)(state));
    expect(texts(turned).slice(2)).toEqual([
      'ch 1, turn, sc in each st across. (10 (12) sc)',
      'ch 1, turn, sc in next 6 (8) sts. Leave 4 unworked. (6 (8) sc)',
      'ch 1, turn, sc in each st across. (6 (8) sc)',
      'Rest the hands.',
    ]);
    expect(made(turned, 0)).toEqual([11, 10, 10, 6, 6, 6, 6]);
    expect(made(turned, 1)).toEqual([13, 12, 12, 8, 8, 8, 8]);
    expect([wrong(turned, 0), wrong(turned, 1)]).toEqual([[], []]);
  });

  it('cuts a first row into its foundation', () => {
    const state = benchOf(LEG);
    const turned = after(LEG, turnHere(stitchesOfRow(state, 1)[4]!)(state));
    expect(made(turned, 0).slice(1)).toEqual([4, 4, 4, 4, 4, 4]);
    expect(wrong(turned, 0)).toEqual([]);
  });

  it('ends the words after the last stitch of a clause, whatever the clause', () => {
    const lines = LEG.sections[0]!.lines.map((line) => (line.id === 'plain' ? { ...line, text: 'ch 1, turn, *sc in next st, 2 sc in next st; rep from * 2 more times, sc in next 4 (6) sts. (13 (15) sc)' } : line));
    const shell: Pattern = { ...LEG, sections: [{ ...LEG.sections[0]!, lines: lines.map((line) => (line.kind === 'row' && line.id === 'plain' ? { ...line, label: { ...line.label, rows: 1 } } : line)) }] };
    const state = benchOf(shell);
    const row2 = stitchesOfRow(state, 2);
    const turned = after(shell, turnHere(row2[9]!)(state));
    expect(texts(turned)[2]).toBe('ch 1, turn, *sc in next st, 2 sc in next st; rep from * 2 more times. Leave 4 (6) unworked. (9 sc)');
    expect(turnHere(row2[5]!)(state)).toBeNull();
  });

  it.each([
    ['the last stitch of a row', 10],
    ['a turning chain', 0],
  ])('is no step after %s', (_, at) => {
    const state = benchOf(LEG);
    expect(turnHere(stitchesOfRow(state, 4)[at]!)(state)).toBeNull();
  });

  it('is no step where a smaller size would have no stitch left', () => {
    const state = benchOf(LEG, 1);
    expect(turnHere(stitchesOfRow(state, 4)[2]!)(state)).toBeNull();
    expect(turnHere(stitchesOfRow(state, 4)[3]!)(state)).not.toBeNull();
  });
});
