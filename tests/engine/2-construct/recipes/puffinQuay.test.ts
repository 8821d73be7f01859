import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { patternFromText } from '../../../../src/engine/1-pattern/patternFromText.ts';
import { construct } from '../../../../src/engine/2-construct/construct.ts';
import { SOCK } from '../../../../src/engine/2-construct/recipes/defaults.ts';
import type { PieceSettings } from '../../../../src/engine/2-construct/recipes/settings.ts';
import { work } from '../../../../src/engine/3-fabric/work.ts';
import { madeIn, measure, pieceOf, requestOf } from './pieceOf.ts';

/** The demo's make: ridged cuff in C, heel leaving 7, 8, 9, toe in step with three plain rounds. Counts are the project's own. */
const SETTINGS: PieceSettings = {
  ...SOCK,
  cuff: { edge: 'backLoops', heightCm: 4, yarn: 'C' },
  leg: { ...SOCK.leg, motif: { repeat: 8, edge: 0 } },
  heel: { ...SOCK.heel, yarn: 'C' },
  toe: { pace: 'half', evens: 3, inStep: true, close: 'drawn', yarn: 'C' },
};

/** 18 stitches and 20 rows to 10 cm: 26.7 cm are 48 stitches, 31.1 are 56, 35.6 are 64; 24 cm of leg are 48 rows; a foot of 23.75, 25.75, 28.25 cm has 47.5, 51.5, 56.5. */
const MEASURES = [measure('footGirth', 26.7, 31.1, 35.6), measure('legLength', 24, 24, 24), measure('footLength', 23.75, 25.75, 28.25)];
const PINS = { 'heel.left': [7, 8, 9], 'toe.stop': [12, 16, 16] };

describe('the rounds of Puffin Quay, by recipe and by hand', () => {
  const piece = pieceOf(requestOf(SETTINGS, MEASURES, { pins: PINS }));
  const { pattern } = patternFromText(readFileSync(new URL('../../../samples/puffin-quay/structure.txt', import.meta.url), 'utf8'));
  const demo = pattern!.sizes.map((_, size) => work(construct(pattern!, size)));
  const inDemo = (name: string, size: number) => {
    const section = pattern!.sections.findIndex((one) => one.name === name);
    return demo[size]!.rows.filter((row) => row.section === section && row.word !== 'step' && row.word !== 'foundation').map((row) => row.made);
  };

  it.each(['CUFF', 'LEG', 'HEEL', 'FOOT', 'TOE'])('%s is the same in every size', (name) => {
    expect(piece.findings).toEqual([]);
    for (const size of [0, 1, 2]) expect(madeIn(piece, name.toLowerCase(), size)).toEqual(inDemo(name, size));
  });

  /**
   * Every row of every size, worked out by hand from the settings. Round: 26.7 × 1.8 = 48.06, 31.1 × 1.8 = 55.98, 35.6 × 1.8 =
   * 64.08, whole repeats of 8. Cuff: 4 cm of 2 rows. Leg: 24 − 4 cm. Heel: half of the round, 7 (8, 9) left on each side, then
   * one more a row. Toe: S decreases (48 − 12) ÷ 4 = 9 times, so all in 9 rounds; M has 10 and L 12 decreases, so their last
   * 1 and 3 rounds decrease double; a plain round after each of the first three. Foot: length × 2 − half of the heel − toe.
   */
  const from = (first: number, last: number) => Array.from({ length: last - first + 1 }, (_, i) => first + i);
  const even = (count: number, rows: number) => Array.from({ length: rows }, () => count);
  it.each([
    {
      size: 0, name: 'S', cuff: even(48, 8), leg: even(48, 40), heel: [24, 17, 10, ...from(11, 24)],
      foot: even(48, 27), // 47.5 − 8.5 − 12
      toe: [44, 44, 40, 40, 36, 36, 32, 28, 24, 20, 16, 12],
    },
    {
      size: 1, name: 'M', cuff: even(56, 8), leg: even(56, 40), heel: [28, 20, 12, ...from(13, 28)],
      foot: even(56, 30), // 51.5 − 9.5 − 12
      toe: [52, 52, 48, 48, 44, 44, 40, 36, 32, 28, 24, 16],
    },
    {
      size: 2, name: 'L', cuff: even(64, 8), leg: even(64, 40), heel: [32, 23, 14, ...from(15, 32)],
      foot: even(64, 34), // 56.5 − 10.5 − 12
      toe: [60, 60, 56, 56, 52, 52, 48, 44, 40, 32, 24, 16],
    },
  ])('counted by hand: every row of size $name', ({ size, name: _name, ...sections }) => {
    for (const [section, counts] of Object.entries(sections)) {
      expect(madeIn(piece, section, size), section).toEqual(counts);
      expect(inDemo(section.toUpperCase(), size), section).toEqual(counts);
    }
    expect(sections.heel).toHaveLength([17, 19, 21][size]!);
  });
});
