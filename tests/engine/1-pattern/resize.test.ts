import { describe, expect, it } from 'vitest';
import { applyTransaction } from '../../../src/engine/1-pattern/applyTransaction.ts';
import { patternFault } from '../../../src/engine/1-pattern/file.ts';
import type { Pattern } from '../../../src/engine/1-pattern/pattern.ts';
import { patternFromText } from '../../../src/engine/1-pattern/patternFromText.ts';
import { resize, type NewSize } from '../../../src/engine/1-pattern/resize.ts';
import { construct } from '../../../src/engine/2-construct/construct.ts';
import { work } from '../../../src/engine/3-fabric/work.ts';

const TEXT = `Sample
Yarn A: slate #4b5a6b
Sizes: S (M, L)

LEG
Foundation: ch 41 (45, 49).
Row 1: sc in 2nd ch from hook and in each ch across. (40 (44, 48) sc)
Rows 2-4 (6, 8): ch 1, turn, sc in each st across. (40, 44, 48)
Seam the side edges.

HEEL
Join A with a sl st in the 11th (12th, 13th) st before the seam.
Row 1 (RS): ch 1, sc in same st, sc in next 20/22/24 sts. Leave the rest unworked. [21 (23, 25) sc]
Note: size L has 49 chains (not 45, 41).`;

const read = patternFromText(TEXT).pattern!;
const rowOf = (nth: number) => ({ section: 's1', row: { line: read.sections[0]!.lines[2]!.id, nth } });
const SOCK: Pattern = {
  ...read,
  sections: read.sections.map((section, i) => (i === 0 ? { ...section, recipe: { name: 'leg', settings: { stitches: [40, 44, 48], edge: 'plain', rows: 4 } } } : section)),
  cells: [
    { ...rowOf(0), size: 0, from: 3, letters: 'A' },
    { ...rowOf(0), size: 2, from: 5, letters: 'AA' },
    { ...rowOf(1), size: 1, from: 7, letters: 'A' },
  ],
};

function resized(sizes: readonly NewSize[], pattern = SOCK): Pattern {
  const edits = resize(pattern, sizes);
  const applied = applyTransaction(pattern, { label: 'Sizes', at: 0, edits });
  if (!applied.ok) throw new Error(applied.reason);
  expect(patternFault(applied.pattern)).toBeNull();
  const back = applyTransaction(applied.pattern, applied.inverse);
  expect(back.ok && back.pattern).toStrictEqual(pattern);
  // Each size is worked stitch by stitch as the size that it was taken from.
  for (const [size, { from }] of sizes.entries()) {
    const [now, old] = [work(construct(applied.pattern, size)), work(construct(pattern, from))];
    expect(now.rows.map((row) => [row.word, row.made, row.stated])).toEqual(old.rows.map((row) => [row.word, row.made, row.stated]));
    expect(now.kind).toEqual(old.kind);
    expect(now.bases).toEqual(old.bases);
  }
  return applied.pattern;
}

const texts = (pattern: Pattern) => pattern.sections.flatMap((section) => section.lines.map((line) => line.text));

describe('other sizes', () => {
  it('take a size out with its numbers, words left as they are', () => {
    const now = resized([{ name: 'S', from: 0 }, { name: 'L', from: 2 }]);
    expect(texts(now)).toEqual([
      'ch 41 (49).',
      'sc in 2nd ch from hook and in each ch across. (40 (48) sc)',
      'ch 1, turn, sc in each st across. (40, 48)',
      'Seam the side edges.',
      'Join A with a sl st in the 11th (13th) st before the seam.',
      'ch 1, sc in same st, sc in next 20/24 sts. Leave the rest unworked. [21 (25) sc]',
      texts(SOCK)[6],
    ]);
    expect(now.sections[0]!.recipe!.settings).toEqual({ stitches: [40, 48], edge: 'plain', rows: 4 });
    expect(now.sections[0]!.lines[2]).toMatchObject({ label: { rows: [3, 7] } });
    expect(now.cells.map(({ row, size, from }) => [row.nth, size, from])).toEqual([[0, 0, 3], [0, 1, 5]]);
  });

  it('put a size in with the numbers of another', () => {
    const now = resized([0, 1, 2, 2].map((from, i) => ({ name: ['S', 'M', 'L', 'XL'][i]!, from })));
    expect(now.sizes).toEqual(['S', 'M', 'L', 'XL']);
    expect(texts(now)[0]).toBe('ch 41 (45, 49, 49).');
    expect(now.cells.filter(({ size }) => size === 3)).toEqual([{ ...rowOf(0), size: 3, from: 5, letters: 'AA' }]);
  });

  it('leave one size with plain numbers', () => {
    const now = resized([{ name: '', from: 1 }]);
    expect(texts(now).slice(0, 3)).toEqual(['ch 45.', 'sc in 2nd ch from hook and in each ch across. (44 sc)', 'ch 1, turn, sc in each st across. (44)']);
    expect(now.sections[0]!.lines[2]).toMatchObject({ label: { rows: 5 } });
  });

  it('change places', () => {
    const now = resized([{ name: 'L', from: 2 }, { name: 'M', from: 1 }, { name: 'S', from: 0 }]);
    expect(texts(now)[0]).toBe('ch 49 (45, 41).');
    expect(now.cells.map(({ row, size, from }) => [row.nth, size, from])).toEqual([[0, 0, 5], [0, 2, 3], [1, 1, 7]]);
  });

  it('are renamed by one edit', () => {
    expect(resize({ ...SOCK }, [{ name: 'one', from: 0 }, { name: 'two', from: 1 }, { name: 'three', from: 2 }])).toEqual([
      { kind: 'set', field: 'sizes', value: ['one', 'two', 'three'] },
    ]);
  });

  it('grow out of a pattern of one size', () => {
    const one = patternFromText('Sample\n\nLEG\nFoundation: ch 11.\nRow 1: sc in 2nd ch from hook and in each ch across. (10 sc)').pattern!;
    const now = resized([{ name: 'S', from: 0 }, { name: 'M', from: 0 }], one);
    expect(texts(now)).toEqual(texts(one));
  });

  it('are taken from sizes that are there', () => {
    expect(() => resize(SOCK, [{ name: 'XL', from: 3 }])).toThrow('size 3 asked of a pattern of 3 sizes');
  });
});
