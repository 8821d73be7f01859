import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { openPatternFile, patternFault, writePatternFile } from '../../../src/engine/1-pattern/file.ts';
import { FILE_VERSION } from '../../../src/engine/1-pattern/migrations/migrateUp.ts';
import { patternFromText } from '../../../src/engine/1-pattern/patternFromText.ts';

const LINES = [
  'Puffin Quay', 'Terms: US', 'Terms: UK', 'Gauge: 16 sts and 18 rows = 10 cm in sc', 'Gauge: 0 sts and 0 rows = 0 cm', 'Hook: 0 mm', 'Yarn A: slate #4b5a6b', 'Yarn B: red', 'Yarns: A slate, B chalk',
  'Sizes: S (M, L)', 'Sizes: S (S, S)', 'Sizes:', 'LEG (worked flat, then seamed)', 'FOOT', 'HEEL:', 'Foundation: with A, ch 41 (45, 49).', 'Rows 2-6: ch 1, turn', 'Rows 2–1: ch 1', 'Rows 5-4 (8, 9): sc',
  'Rows 2-(5, 6, 7): sc', 'Row 0: sc', 'Rows 1-99999999: sc', 'Row 99999999999999999999: sc', 'Rnds 3–8: with Q sc 3', 'Next row: change to z', 'Rows 6-14: rep rows 4 and 5', 'Seam the side edges.', 'Row 4 (5): sc', 'Rows 1.5-3: sc',
];

describe('what is read from text', () => {
  it('can always be kept and opened again, whatever the text says', () => {
    fc.assert(
      fc.property(fc.array(fc.oneof({ weight: 4, arbitrary: fc.constantFrom(...LINES) }, fc.string()), { maxLength: 14 }), (lines) => {
        const { pattern } = patternFromText(lines.join('\n'));
        if (!pattern) return;
        expect(patternFault(pattern)).toBeNull();
        expect(openPatternFile(writePatternFile(pattern))).toStrictEqual({ kind: 'ok', pattern, from: FILE_VERSION });
      }),
      { numRuns: 2_000, seed: 3 },
    );
  });

  it.each([
    ['a very long title', `${'x'.repeat(10_000)}\nLEG\nRow 1: sc`],
    ['a very long row', `A\nLEG\nRow 1: ${'sc, '.repeat(40_000)}`],
    ['seven hundred sections', `A\n${Array.from({ length: 700 }, (_, i) => `PART ${i}\nRow 1: sc 1.`).join('\n')}`],
    ['sixty sizes', `A\nSizes: ${Array.from({ length: 60 }, (_, i) => `s${i}`).join(', ')}\nLEG\nRow 1: sc`],
  ])('can be kept: %s', (_, text) => {
    expect(patternFault(patternFromText(text).pattern)).toBeNull();
  });
});
