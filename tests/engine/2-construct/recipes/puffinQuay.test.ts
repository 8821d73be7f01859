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

  it('counted by hand: heel of size S from 24 to 17 to 10 and back in 14 rows, 17 in all', () => {
    expect(madeIn(piece, 'heel', 0)).toEqual([24, 17, 10, 11, 12, 13, 14, 15, 16, 17, 18, 19, 20, 21, 22, 23, 24]);
  });

  it('counted by hand: toe of size L, four fewer in each of nine rounds and eight in the last three', () => {
    expect(madeIn(piece, 'toe', 2)).toEqual([60, 60, 56, 56, 52, 52, 48, 44, 40, 32, 24, 16]);
  });

  it('counted by hand: half of the heel’s 17 (19, 21) rows and 12 of the toe leave 27 (30, 34) rounds of foot', () => {
    expect([0, 1, 2].map((size) => madeIn(piece, 'foot', size).length)).toEqual([27, 30, 34]);
  });
});
