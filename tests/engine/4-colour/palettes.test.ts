import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { applyEdit } from '../../../src/engine/1-pattern/applyEdit.ts';
import type { PrintMark, Yarn } from '../../../src/engine/1-pattern/pattern.ts';
import { paletteEdit, patternInView, swapYarns, withPalette, yarnPairs } from '../../../src/engine/4-colour/palettes.ts';
import { areMarksAlike, distinctMarks, PRINT_MARKS } from '../../../src/engine/4-colour/printMarks.ts';
import { handPattern } from './handFabric.ts';

const PATTERN = handPattern({});

describe('yarns of a pattern', () => {
  it('are changed over, name, colour and mark', () => {
    const edit = swapYarns(PATTERN, 'A', 'C');
    const applied = applyEdit(PATTERN, edit);
    expect(applied.ok && applied.pattern.yarns).toEqual([
      { letter: 'A', name: 'lamp orange', colour: '#d8702a', mark: 'cross' },
      PATTERN.yarns[1],
      { letter: 'C', name: 'slate', colour: '#4b5a6b', mark: 'none' },
    ]);
    expect(() => swapYarns(PATTERN, 'A', 'Q')).toThrow('yarn "Q" asked of A, B, C');
  });

  it('are tried in other colours before any is kept', () => {
    const tried = withPalette(PATTERN, { B: '#101010' });
    expect(tried.yarns.map((yarn) => yarn.colour)).toEqual(['#4b5a6b', '#101010', '#d8702a']);
    const kept = applyEdit(PATTERN, paletteEdit(PATTERN, { B: '#101010' }));
    expect(kept.ok && kept.pattern).toEqual(tried);
  });

  it('are looked at as others see them', () => {
    expect(patternInView(PATTERN, 'full')).toBe(PATTERN);
    const grey = patternInView(PATTERN, 'blackAndWhite').yarns.map((yarn) => yarn.colour);
    for (const colour of grey) expect(colour).toMatch(/^#(..)\1\1$/);
    expect(patternInView(PATTERN, 'protan').yarns.map((yarn) => yarn.name)).toEqual(['slate', 'chalk', 'lamp orange']);
  });

  it('are compared pair by pair', () => {
    const pairs = yarnPairs([{ colour: '#ff0000' }, { colour: '#6d5f00' }, { colour: '#ffffff' }]);
    expect(pairs.map(({ one, other }) => [one, other])).toEqual([[0, 1], [0, 2], [1, 2]]);
    // Red looks like this brown to eyes that lack red, and to no other.
    expect(pairs[0]!.seen.protan).toBeLessThan(6);
    expect(Math.min(pairs[0]!.difference, pairs[0]!.seen.tritan)).toBeGreaterThan(4 * pairs[0]!.seen.protan);
    expect(pairs[1]!.contrast).toBeCloseTo(3.9985, 4);
  });
});

describe('print marks', () => {
  const marks = fc.array(fc.tuple(fc.constantFrom(...PRINT_MARKS), fc.integer({ min: 0, max: 0xffffff })), { minLength: 1, maxLength: 10 });
  const yarnsOf = (list: readonly (readonly [PrintMark, number])[]): Yarn[] => list.map(([mark, colour], i) => ({ letter: 'ABCDEFGHIJ'[i]!, name: '', colour: `#${colour.toString(16).padStart(6, '0')}`, mark }));

  it('are all told apart for up to seven yarns, and kept where they already were', () => {
    fc.assert(
      fc.property(marks, (list) => {
        const before = yarnsOf(list);
        const after = distinctMarks(before);
        const pairs = after.flatMap((one, i) => after.slice(i + 1).map((other) => [one.mark, other.mark] as const));
        if (list.length <= 7) expect(pairs.filter(([one, other]) => areMarksAlike(one, other))).toEqual([]);
        else expect(new Set(after.map((yarn) => yarn.mark)).size).toBe(Math.min(list.length, PRINT_MARKS.length));
        expect(after[0]).toBe(before[0]);
        expect(distinctMarks(after)).toEqual(list.length <= 7 ? after : distinctMarks(after));
        expect(after.map(({ mark: _, ...rest }) => rest)).toEqual(before.map(({ mark: _, ...rest }) => rest));
      }),
      { numRuns: 500, seed: 3_3 },
    );
  });

  it('go to the palest yarn first where they are missing', () => {
    const yarns = yarnsOf([['dot', 0x202020], ['dot', 0x303030], ['dot', 0xf0f0f0]]);
    expect(distinctMarks(yarns).map((yarn) => yarn.mark)).toEqual(['dot', 'slash', 'none']);
  });
});
