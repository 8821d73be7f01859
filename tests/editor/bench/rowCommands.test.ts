import { describe, expect, it } from 'vitest';
import type { Pattern } from '../../../src/engine/1-pattern/pattern.ts';
import { check } from '../../../src/engine/readings/checks/check.ts';
import { layYarn } from '../../../src/editor/bench/commands/layYarn.ts';
import { mirrorRow } from '../../../src/editor/bench/commands/mirrorRow.ts';
import { removeRows } from '../../../src/editor/bench/commands/removeRows.ts';
import { repeatRows } from '../../../src/editor/bench/commands/repeatRows.ts';
import { copyRows, pasteRows } from '../../../src/editor/bench/commands/rowClip.ts';
import { setStitch } from '../../../src/editor/bench/commands/setStitch.ts';
import { blockBetween, copyBlock, pasteBlock } from '../../../src/editor/bench/commands/stitchBlock.ts';
import { swapRows } from '../../../src/editor/bench/commands/swapRows.ts';
import { workToCount } from '../../../src/editor/bench/commands/workToCount.ts';
import { after, benchOf, LEG, stitchesOfRow } from './benchOf.ts';

const texts = (pattern: Pattern) => pattern.sections[0]!.lines.map((line) => line.text);
const made = (pattern: Pattern, size: number) => benchOf(pattern, size).fabric.rows.slice(1).map((row) => row.made);
const wrong = (pattern: Pattern) =>
  [0, 1].flatMap((size) => {
    const state = benchOf(pattern, size);
    return check(pattern, state.fabric, state.colours).filter((each) => each.degree === 'wrong');
  });
const yarnsOf = (pattern: Pattern, number: number, size = 0) => {
  const state = benchOf(pattern, size);
  const letters = stitchesOfRow(state, number).filter((stitch) => state.grids[size]!.columns.columnOf[stitch]! >= 0).map((stitch) => pattern.yarns[state.colours.yarn[stitch]!]!.letter).join('');
  return state.fabric.rows.find((row) => row.number === number)!.direction === 1 ? letters : [...letters].reverse().join('');
};
const PLAIN = { line: 'plain', nth: 2 } as const;

describe('a wanted count', () => {
  it.each([
    [12, 'ch 1, turn, sc in next 2 sts, 2 sc in next st, sc in next 4 (5) sts, 2 sc in next st, sc in next 2 (3) sts. (12 (14) sc)'],
    [9, 'ch 1, turn, sc in next 4 (5) sts, sc2tog, sc in next 4 (5) sts. (9 (11) sc)'],
    [20, 'ch 1, turn, 2 sc in each st across. (20 (22) sc)'],
  ])('%i of 10: the row is rewritten in every size, and the counts above follow', (wanted, text) => {
    const set = after(LEG, workToCount(PLAIN, wanted, 'row 4')(benchOf(LEG)));
    if (wanted !== 20) expect(texts(set)[3]).toBe(text);
    expect(made(set, 0)).toEqual([10, 10, 10, wanted, wanted, wanted]);
    expect(made(set, 1)).toEqual([12, 12, 12, wanted + 2, wanted + 2, wanted + 2]);
    expect(wrong(set)).toEqual([]);
  });

  it('is made from any other count, evenly', () => {
    for (let wanted = 1; wanted <= 40; wanted++) {
      const step = workToCount(PLAIN, wanted, 'row 4')(benchOf(LEG));
      if (wanted === 10) {
        expect(step).toBeNull();
        continue;
      }
      const set = after(LEG, step);
      expect(made(set, 0)[3]).toBe(wanted);
      expect(made(set, 1)[3]).toBe(wanted + 2);
      expect(wrong(set)).toEqual([]);
    }
  });

  it('is no count at all below one, or where a row is left short', () => {
    expect(workToCount(PLAIN, 0, 'row 4')(benchOf(LEG))).toBeNull();
    expect(workToCount(PLAIN, 2.5, 'row 4')(benchOf(LEG))).toBeNull();
    expect(workToCount({ line: 'f', nth: 0 }, 12, 'the foundation')(benchOf(LEG))).toBeNull();
  });
});

describe('rows that change places', () => {
  const shaped = after(LEG, setStitch(stitchesOfRow(benchOf(LEG), 3)[3]!, { kind: 'increase' })(benchOf(LEG)));
  const laid = after(shaped, layYarn([stitchesOfRow(benchOf(shaped), 4)[2]!], 'B')(benchOf(shaped)));
  const keyOf = (pattern: Pattern, number: number) => benchOf(pattern).fabric.rows.find((row) => row.number === number)!.key;

  it('take their words and their cells along', () => {
    const before = [yarnsOf(laid, 3), yarnsOf(laid, 4)];
    const moved = after(laid, swapRows(keyOf(laid, 3), 1, 'row 3')(benchOf(laid)));
    expect(moved.cells.length).toBe(laid.cells.length);
    expect(yarnsOf(moved, 3)).toContain('B');
    expect(yarnsOf(moved, 4)).not.toContain('B');
    expect(before[1]).toContain('B');
    expect(benchOf(moved).fabric.rows.find((row) => row.number === 4)!.made).toBe(11);
  });

  it('come back by moving the other way', () => {
    const moved = after(laid, swapRows(keyOf(laid, 3), 1, 'row 3')(benchOf(laid)));
    const back = after(moved, swapRows(keyOf(moved, 4), -1, 'row 4')(benchOf(moved)));
    expect(made(back, 0)).toEqual(made(laid, 0));
    expect([3, 4].map((number) => yarnsOf(back, number))).toEqual([3, 4].map((number) => yarnsOf(laid, number)));
  });

  it('stay within their section, past no foundation', () => {
    expect(swapRows(keyOf(LEG, 1), -1, 'row 1')(benchOf(LEG))).toBeNull();
    expect(swapRows(keyOf(LEG, 6), 1, 'row 6')(benchOf(LEG))).toBeNull();
  });
});

describe('rows many at a time', () => {
  const keys = [1, 2].map((nth) => ({ line: 'plain', nth }));

  it('are worked again in their order, cells and all', () => {
    const laid = after(LEG, layYarn([stitchesOfRow(benchOf(LEG), 3)[1]!], 'B')(benchOf(LEG)));
    const more = after(laid, repeatRows(keys, 2, 'rows 3 and 4')(benchOf(laid)));
    expect(made(more, 0)).toHaveLength(10);
    expect([3, 5, 7].map((number) => yarnsOf(more, number).includes('B'))).toEqual([true, true, true]);
    expect(wrong(more)).toEqual([]);
  });

  it('are taken out as one step', () => {
    const fewer = after(LEG, removeRows(keys, 'rows 3 and 4')(benchOf(LEG)));
    expect(made(fewer, 1)).toEqual([12, 12, 12, 12]);
  });

  it('are copied into a pattern of other terms and sizes, in words and numbers that it has', () => {
    const clip = copyRows(benchOf(LEG, 1), keys)!;
    const other: Pattern = { ...LEG, terms: 'uk', sizes: [''], sections: [{ ...LEG.sections[0]!, lines: [
      { kind: 'row', id: 'f', label: { word: 'foundation', rows: 1, start: null, side: null }, text: 'with A, ch 13.' },
      { kind: 'row', id: 'a', label: { word: 'row', rows: 1, start: null, side: null }, text: 'dc in 2nd ch from hook and in each ch across. (12 dc)' },
    ] }] };
    const put = after(other, pasteRows(clip, { line: 'a', nth: 0 }, 'row 1')(benchOf(other)));
    expect(put.sections[0]!.lines.slice(2).map((line) => line.text)).toEqual(Array.from({ length: 2 }, () => 'ch 1, turn, dc in each st across. (12 dc)'));
    expect(check(put, benchOf(put).fabric, benchOf(put).colours).filter((each) => each.degree === 'wrong')).toEqual([]);
  });
});

describe('a row turned about its middle', () => {
  it('has its shaping at the other end, in every size', () => {
    const state = benchOf(LEG);
    const shaped = after(LEG, setStitch(stitchesOfRow(state, 3)[2]!, { kind: 'increase' })(state));
    const key = benchOf(shaped).fabric.rows.find((row) => row.number === 3)!.key;
    const turned = after(shaped, mirrorRow(key, 'row 3')(benchOf(shaped)));
    const line = turned.sections[0]!.lines.find((each) => each.id === key.line)!;
    expect(line.text).toBe('ch 1, turn, sc in next 8 (10) sts, 2 sc in next st, sc in next st. (11 (13) sc)');
    expect(wrong(turned)).toEqual([]);
  });

  it('has its cells from the other end, and again gives the row as it was', () => {
    const laid = after(LEG, layYarn([stitchesOfRow(benchOf(LEG), 3)[1]!, stitchesOfRow(benchOf(LEG), 3)[2]!], 'B')(benchOf(LEG)));
    const once = after(laid, mirrorRow({ line: 'plain', nth: 1 }, 'row 3')(benchOf(laid)));
    expect(yarnsOf(once, 3)).toBe([...yarnsOf(laid, 3)].reverse().join(''));
    const key = benchOf(once).fabric.rows.find((row) => row.number === 3)!.key;
    const twice = after(once, mirrorRow(key, 'row 3')(benchOf(once)));
    expect(yarnsOf(twice, 3)).toBe(yarnsOf(laid, 3));
  });

  it('is nothing to do in a plain row without cells', () => {
    expect(mirrorRow(PLAIN, 'row 4')(benchOf(LEG))).toBeNull();
  });
});

describe('a block of stitches', () => {
  const state = benchOf(LEG);
  const at = (from: ReturnType<typeof benchOf>, number: number, column: number) => {
    const row = from.fabric.rows.findIndex((each) => each.number === number);
    const { columns } = from.grids[from.size]!;
    return columns.stitches[columns.start[row]! + column]!;
  };

  it('lies between two corners, whichever is taken first', () => {
    const [a, b] = [at(state, 2, 1), at(state, 4, 3)];
    expect(blockBetween(state.grids[0]!, a, b)).toEqual(blockBetween(state.grids[0]!, b, a));
    expect(blockBetween(state.grids[0]!, a, b).map((row) => row.length)).toEqual([3, 3, 3]);
    expect(blockBetween(state.grids[0]!, at(state, 2, 3), at(state, 4, 1))).toEqual(blockBetween(state.grids[0]!, a, b));
  });

  it('is laid elsewhere as it was, and cut off where the section ends', () => {
    const laid = after(LEG, layYarn([at(state, 2, 1), at(state, 3, 2)], 'B')(state));
    const from = benchOf(laid);
    const block = copyBlock(from, at(from, 2, 1), at(from, 3, 2))!;
    expect(block.rows).toEqual(['BA', 'AB']);
    const put = after(laid, pasteBlock(block, at(from, 5, 6))(from));
    expect(yarnsOf(put, 5)).toBe('AAAAAABAAA');
    expect(yarnsOf(put, 6)).toBe('AAAAAAABAA');
    const edge = after(laid, pasteBlock(block, at(from, 6, 9))(from));
    expect(yarnsOf(edge, 6)).toBe('AAAAAAAAAB');
  });
});
