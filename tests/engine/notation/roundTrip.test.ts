import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { readRow } from '../../../src/engine/notation/readRow.ts';
import { writeRow } from '../../../src/engine/notation/writeRow.ts';
import { arbitraryRow } from './arbitraryRow.ts';
import { statedWithoutRange, withoutRanges } from './withoutRanges.ts';

describe('rows written and read back', () => {
  it.each([
    ['us', 1, 1500, 11],
    ['uk', 1, 600, 12],
    ['us', 3, 1000, 13],
    ['uk', 2, 400, 14],
  ] as const)('are the same instructions, in %s terms and %i sizes, %i random rows', (terms, sizes, numRuns, seed) => {
    fc.assert(
      fc.property(arbitraryRow(sizes), ({ body, stated }) => {
        const text = writeRow(body, stated, { terms });
        const read = readRow(text, { terms, sizes, letters: ['A', 'B', 'C'] });
        expect(withoutRanges(read.body), text).toEqual(withoutRanges(body));
        expect(statedWithoutRange(read.stated), text).toEqual(statedWithoutRange(stated));
        expect(read.findings.filter(({ rule }) => rule !== 'unread'), text).toEqual([]);
      }),
      { numRuns, seed },
    );
  });
});
