import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { applyTransaction } from '../../../src/engine/1-pattern/applyTransaction.ts';
import { patternFromText } from '../../../src/engine/1-pattern/patternFromText.ts';
import { linesFromText, sectionToText } from '../../../src/engine/readings/words/sectionText.ts';
import { editSectionText } from '../../../src/editor/bench/commands/editSectionText.ts';
import type { BenchState } from '../../../src/editor/bench/benchState.ts';

const TEXT = 'T\nTerms: US\nSizes: S (M)\n\nLEG\nFoundation: ch 11 (13).\nRow 1 (RS): sc in 2nd ch from hook and in each ch across. (10 (12) sc)\nRows 2-6 (8): ch 1, turn, sc in each st across.\nRep last row twice.\nWeave in ends.\nRow 20: ch 1, turn, sc in each st across.\nFasten off.\n';
const pattern = patternFromText(TEXT).pattern!;
const [section] = pattern.sections;
/** The command looks at nothing of the state but the document and the time. */
const state = { pattern, at: 5 } as BenchState;

function put(text: string) {
  const transaction = editSectionText(section!.id, text)(state);
  const done = transaction && applyTransaction(pattern, transaction);
  if (!done?.ok) return null;
  return { lines: done.pattern.sections[0]!.lines, pattern: done.pattern, inverse: done };
}

describe('a section as text', () => {
  it('gives the text as it was written, and no step where nothing changes', () => {
    expect(sectionToText(section!)).toBe(TEXT.split('LEG\n')[1]!.trimEnd());
    expect(editSectionText(section!.id, sectionToText(section!))(state)).toBeNull();
  });

  it('changes, puts in and takes out lines in one step; lines that stay keep their ids', () => {
    const text = sectionToText(section!).replace('Rep last row twice.\n', '').replace('Row 1 (RS)', 'Set-up row: sc in each ch across.\nRow 1 (RS)').replace('Fasten off.', 'Fasten off B.');
    const { lines } = put(text)!;
    expect(lines.map(({ id, text: words }) => [id, words.slice(0, 12)])).toEqual([
      ['l1', 'ch 11 (13).'], ['line-1'.replace('1', lines[1]!.id.split('-')[1]!), 'sc in each c'], ['l2', 'sc in 2nd ch'], ['l3', 'ch 1, turn, '], ['l5', 'Weave in end'], ['l6', 'ch 1, turn, '], ['l7', 'Fasten off B'],
    ]);
  });

  it('any order of lines, with some left out and others new, ends in the lines that the text has', () => {
    const own = sectionToText(section!).split('\n');
    const line = fc.oneof(fc.constantFrom(...own), fc.constantFrom('Row 9: ch 1, turn, sc in next 3 sts.', 'Turn.', 'Mind the gap here.', 'Rnd 2: sc in each st around.'));
    fc.assert(
      fc.property(fc.array(line, { minLength: 1, maxLength: 12 }), (lines) => {
        const text = lines.join('\n');
        const wanted = linesFromText(text, pattern).lines.map(({ kind, text: words }) => [kind === 'row', words]);
        const after = put(text)?.lines ?? section!.lines;
        expect(after.map(({ kind, text: words }) => [kind === 'row', words])).toEqual(wanted);
        expect(new Set(after.map(({ id }) => id)).size).toBe(after.length);
      }),
      { numRuns: 300, seed: 51 },
    );
  });
});
