import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Line, Pattern } from '../../../src/engine/1-pattern/pattern.ts';
import { FLAG } from '../../../src/engine/3-fabric/fabric.ts';
import { floodYarn } from '../../../src/editor/bench/floodYarn.ts';
import { layYarn } from '../../../src/editor/bench/commands/layYarn.ts';
import { workedInto } from '../../../src/editor/stitch/workedInto.ts';
import { after, benchOf, LEG, stitchesOfRow } from './benchOf.ts';

const flood = (pattern: Pattern, stitch: (bench: ReturnType<typeof benchOf>) => number) => {
  const bench = benchOf(pattern);
  return floodYarn(bench.fabric, workedInto(bench.fabric), bench.colours.yarn, stitch(bench));
};
const plain = benchOf(LEG);
const counted = (bench: typeof plain) => Array.from({ length: bench.fabric.count }, (_, i) => i).filter((i) => bench.fabric.flags[i]! & FLAG.counts);
const line = (id: string, word: 'foundation' | 'row' | 'round', rows: number, text: string): Line => ({ kind: 'row', id, label: { word, rows, start: null, side: null }, text });

describe('all that hangs together in one yarn', () => {
  it('is the whole section where it is of one yarn', () => {
    expect(flood(LEG, (bench) => stitchesOfRow(bench, 3)[4]!)).toEqual(counted(plain));
    // From the turning chain, which doesn't count, it is that of the stitch beside it.
    expect(flood(LEG, (bench) => stitchesOfRow(bench, 3)[0]!)).toEqual(counted(plain));
  });

  it('ends at a row of another yarn, below it and above', () => {
    const banded = after(LEG, layYarn(stitchesOfRow(plain, 3), 'B')(plain));
    const rowsOf = (stitches: readonly number[]) => [...new Set(stitches.map((each) => plain.fabric.rows[plain.fabric.row[each]!]!.number))];
    expect(rowsOf(flood(banded, (bench) => stitchesOfRow(bench, 5)[4]!))).toEqual([4, 5, 6]);
    expect(rowsOf(flood(banded, (bench) => stitchesOfRow(bench, 3)[4]!))).toEqual([3]);
    expect(rowsOf(flood(banded, (bench) => stitchesOfRow(bench, 1)[4]!))).not.toContain(4);
  });

  it('goes round the end of a round, and stays inside a patch', () => {
    const tube: Pattern = { ...LEG, sections: [{ ...LEG.sections[0]!, lines: [line('f', 'foundation', 1, 'with A, ch 12 (14), join with sl st to form ring.'), line('r', 'round', 4, 'sc in each st around. (12 (14) sc)')] }] };
    const bench = benchOf(tube);
    const round = stitchesOfRow(bench, 2).filter((each) => bench.fabric.flags[each]! & FLAG.counts);
    const laid = after(tube, layYarn([round[0]!, round.at(-1)!], 'B')(bench));
    expect(flood(laid, () => round[0]!)).toEqual([round[0], round.at(-1)]);
  });

  it('is the same from each of its stitches, and nothing of its yarn is left beside it', () => {
    fc.assert(
      fc.property(fc.uniqueArray(fc.nat({ max: counted(plain).length - 1 }), { maxLength: 40 }), fc.nat(), (which, seed) => {
        const all = counted(plain);
        const step = layYarn(which.map((i) => all[i]!), 'B')(plain);
        const pattern = step ? after(LEG, step) : LEG;
        const from = all[seed % all.length]!;
        const filled = flood(pattern, () => from);
        const { yarn } = benchOf(pattern).colours;
        expect(filled).toContain(from);
        expect(new Set(filled.map((each) => yarn[each])).size).toBe(1);
        const other = filled[seed % filled.length]!;
        expect(flood(pattern, () => other)).toEqual(filled);
        const left = all.filter((each) => !filled.includes(each) && yarn[each] === yarn[from]);
        const { fabric } = plain;
        const touching = left.filter((each) => filled.some((one) => fabric.row[one] === fabric.row[each] && Math.abs(one - each) === 1));
        expect(touching).toEqual([]);
        expect(left.filter((each) => filled.includes(fabric.bases[fabric.baseStart[each]!]!))).toEqual([]);
      }),
      { seed: 7, numRuns: 60 },
    );
  });

  it('is found among 60,000 stitches at once', () => {
    const big: Pattern = { ...LEG, sizes: ['S'], sections: [{ ...LEG.sections[0]!, lines: [line('f', 'foundation', 1, 'with A, ch 301.'), line('a', 'row', 1, 'sc in 2nd ch from hook and in each ch across.'), line('b', 'row', 199, 'ch 1, turn, sc in each st across.')] }] };
    const bench = benchOf(big);
    const above = workedInto(bench.fabric);
    expect(counted(bench).length).toBe(60_000);
    const times = Array.from({ length: 8 }, () => {
      const start = performance.now();
      expect(floodYarn(bench.fabric, above, bench.colours.yarn, stitchesOfRow(bench, 100)[150]!).length).toBe(counted(bench).length);
      return performance.now() - start;
    });
    // 4.5 ms of processor time by itself (bundled, warm); the bound leaves room for a machine that is busy.
    expect(Math.min(...times)).toBeLessThan(60);
  });
});
