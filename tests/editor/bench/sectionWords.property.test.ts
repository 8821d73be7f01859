import fc from 'fast-check';
import { expect, it } from 'vitest';
import { construct } from '../../../src/engine/2-construct/construct.ts';
import { work } from '../../../src/engine/3-fabric/work.ts';
import { colour } from '../../../src/engine/4-colour/colour.ts';
import { writeRowWords } from '../../../src/engine/readings/words/writeRowWords.ts';
import { sectionWords } from '../../../src/editor/bench/sectionWords.ts';
import { editedPieces, patternsAfter, pieceBefore } from '../../engine/editedPieces.ts';

it('words that are kept from edit to edit are those that every row is written in', () => {
  fc.assert(
    fc.property(editedPieces, fc.array(fc.constantFrom('us', 'uk'), { minLength: 7, maxLength: 7 }), (piece, terms) => {
      let fabric = work(construct(pieceBefore(piece), 0));
      for (const [n, pattern] of patternsAfter(piece).entries()) {
        const program = construct(pattern, 0);
        fabric = work(program, fabric);
        const worked = { program, fabric, colours: colour(pattern, fabric, 0) };
        const words = sectionWords(worked, 0, terms[n]!);
        expect([...words.keys()]).toEqual(fabric.rows.map((_, row) => row));
        for (const [row, text] of words) expect(text).toBe(writeRowWords(worked, row, terms[n]!));
        // Another yarn laid over a row is another wording of it.
        const other = { ...worked, colours: { yarn: worked.colours.yarn.map((yarn, stitch) => (stitch % 5 === 0 ? 1 : yarn)) } };
        for (const [row, text] of sectionWords(other, 0, terms[n]!)) expect(text).toBe(writeRowWords(other, row, terms[n]!));
      }
    }),
    { numRuns: 60, seed: 4 },
  );
});
