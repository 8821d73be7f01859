import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { patternFromText, type Pattern } from '../../../src/engine/index.ts';
import { makeDemo } from '../../setup/demo.ts';

/** Puffin Quay with everything that may be said about it where it is published. */
export const DEMO: Pattern = {
  ...makeDemo(readFileSync(join(import.meta.dirname, '../../samples/puffin-quay/structure.txt'), 'utf8')).pattern,
  imprint: {
    about: 'Boots for cold floors.\nThe leg is one panel, worked flat and seamed.', licence: 'For your own use.', credits: 'Tested by three friends of the quay.', edition: 'second edition', date: '2024-05-01',
    editions: [{ name: 'First edition', date: '2023-11-02', errata: 'Heel, row 2, size M: 20 sts, was 19.' }],
  },
};

/** A small pattern in two sizes: a flat band whose sizes differ only in width. */
export const BAND: Pattern = patternOf('Band\nTerms: US\nGauge: 20 sts and 24 rows = 10 cm in sc\nHook: 4 mm\nYarn A: slate #4b5a6b\nSizes: S, M\n\nBAND (worked flat)\nFoundation: ch 11 (17).\nRow 1 (RS): sc in 2nd ch from hook and in each ch across. (10 (16) sc)\nRows 2-6: ch 1, turn, sc in each st across. (10 (16) sc)\nFasten off.\n');

export function patternOf(text: string): Pattern {
  const { pattern } = patternFromText(text);
  if (!pattern) throw new Error('the text gave no pattern');
  return pattern;
}
