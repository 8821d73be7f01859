import { describe, expect, it } from 'vitest';
import type { Swatch } from '../../../src/engine/1-pattern/pieceFacts.ts';
import { Reckoning } from '../../../src/engine/2-construct/recipes/reckoning.ts';
import { nearest, type Unit } from '../../../src/engine/2-construct/recipes/origin.ts';
import { originTree } from '../../../src/editor/sizes/originTree.ts';
import { originHow, originInputs, originText, originValue } from '../../../src/editor/sizes/originWords.ts';
import { shoeWords } from '../../../src/editor/sizes/shoeWords.ts';
import { SIZE_SETS } from '../../../src/editor/sizes/sizeSets.ts';
import { washingOf } from '../../../src/editor/sizes/washing.ts';
import { yarnSources } from '../../../src/editor/sizes/yarnSources.ts';

describe('where a number comes from, in words', () => {
  const r = new Reckoning(0, { heel: [24] });
  const girth = r.given('girth', 'girth', 'cm', 25.4, 'measured');
  const around = r.reckon({ key: 'around', says: 'stitches round', unit: 'sts', formula: 'girth × stitches in 1 cm', inputs: [girth], exact: 45.72, rounding: nearest(6, 2) });
  const heel = r.reckon({ key: 'heel', says: 'stitches of the heel', unit: 'sts', formula: 'half', inputs: [around], exact: 23, rounding: nearest(2, 2) });

  it('says formula, exact number and rounding', () => {
    expect(originHow(around, 'cm')).toBe('girth × stitches in 1 cm; exactly 45.72 sts, to the nearest multiple of 2');
  });

  it('says what was given in the unit chosen', () => {
    expect(originText('girth × stitches in 1 cm; swatch in sc: 20 sts in 10 cm; measured × (1 + ease) + ease in cm', 'in')).toBe('girth × stitches in 1 inch; swatch in sc: 20 sts in 3.94 inches; measured × (1 + ease) + ease in inches');
    // 1.8 stitches a cm are 4.572 an inch of 2.54 cm, by hand.
    expect(originValue({ key: 'gauge.sc.plain.stitches', unit: 'sts/cm', value: 1.8 }, 'in')).toBe('4.572 sts/in');
    expect([originValue(girth, 'cm'), originValue(girth, 'in'), originHow(girth, 'in')]).toEqual(['25.4 cm', '10.00 in', 'measured']);
  });

  it('says yarn in metres or yards, weights, balls and prices as they are read', () => {
    const said = (unit: Unit, value: number) => (['cm', 'in'] as const).map((lengths) => originValue({ key: 'yarn.A', unit, value }, lengths));
    // A yard is 0.9144 m, by definition.
    expect(said('m', 91.44)).toEqual(['91 m', '100 yd']);
    expect(said('g/m', 0.4)).toEqual(['0.4 g/m', '0.366 g/yd']);
    expect([said('g', 78.26)[0], said('money', 6.5)[0], said('number', 2)[0], said('balls', 1)[0], said('balls', 3)[0]]).toEqual(['78.3 g', '6.50', '2', '1 ball', '3 balls']);
    expect(originValue({ key: 'yarn.margin', unit: 'share', value: 0.1 }, 'cm')).toBe('10 %');
    expect(originText('the ball: 50 g are 125 m; 100 g are 182 to 250 m', 'in')).toBe('the ball: 50 g are 137 yd; 100 g are 199 to 273 yd');
  });

  it('says what the yarns rest on, guesses apart from what was weighed', () => {
    const sources = yarnSources([{ letter: 'A', source: 'swatch 1: 14 g weighed', guessed: false }, { letter: 'B', source: 'a guess: ratios', guessed: true }, { letter: 'C', source: 'swatch 1: 14 g weighed', guessed: false }]);
    expect(sources.map(({ letters, isGuess }) => [letters, isGuess])).toEqual([['A, C', false], ['B', true]]);
    expect(sources.map(({ says }) => says)).toEqual(['From swatch 1: 14 g weighed.', 'A rough guess, as no swatch was weighed or measured: ratios. Weigh a swatch and write down its grams to have it closer.']);
  });

  it('says of a number set by hand what it would be, and still shows what that is reckoned from', () => {
    expect(originHow(heel, 'cm')).toBe('set by hand; reckoned it would be 24 sts');
    expect(originInputs(heel)).toEqual([around]);
  });

  it('says where the least number decided', () => {
    const few = r.reckon({ key: 'few', says: 'stitches', unit: 'sts', formula: 'girth', inputs: [], exact: 2, rounding: nearest(6, 2) });
    expect(originHow(few, 'cm')).toMatch(/, at least 6$/);
  });
});

describe('sizes from published measurements', () => {
  it('offers every band of feet and every age, with lengths in cm', () => {
    expect(SIZE_SETS.map(({ id, sizes }) => [id, sizes.length])).toEqual([['women', 6], ['men', 7], ['children', 8]]);
    // ANSUR II, women of 240 to 250 mm: ball girth 227 mm, heel diagonal 308 mm.
    expect(SIZE_SETS[0]!.sizes[2]).toEqual({ name: '24–25 cm', says: '24–25 cm', cm: { footLength: 24.5, footGirth: 22.7, heelDiagonal: 30.8, ankle: 21.5, calf: 37.1 } });
  });

  it.each([
    { footCm: 25, words: 'EU 39–40 · US women 8½, men 7½', source: 'Paris points: 1.5 × (25 + 1 to 1.5) = 39 to 39.75; Brannock: 3 × 9.843 − 21 = 8.53, − 22 = 7.53; in halves' },
    { footCm: 15, words: 'EU 24', source: 'published children’s table: 150 mm' },
  ])('says the shoe of a foot of $footCm cm', ({ footCm, words }) => {
    expect(shoeWords(footCm)).toBe(words);
  });
});

describe('what washing does', () => {
  const swatch = (change: Partial<Swatch>): Swatch => ({
    id: '1', stitch: 'sc', technique: 'plain', washed: false, stitches: 20, widthCm: 10, rows: 20, heightCm: 10, hookMm: null, weight: null, stretchedCm: null, yarn: null, grams: null, metres: null, ...change,
  });

  it('compares the swatch before washing with the last one after it', () => {
    const [washing] = washingOf([swatch({}), swatch({ id: '2', washed: true, widthCm: 11, heightCm: 9 })]);
    expect(washing).toMatchObject({ before: '1', after: '2' });
    expect([washing!.wide, washing!.high].map((share) => Math.round(share * 100))).toEqual([10, -10]);
  });

  it('compares nothing that was worked otherwise', () => {
    expect(washingOf([swatch({}), swatch({ id: '2', washed: true, technique: 'posts' })])).toEqual([]);
  });
});

describe('the tree of a number as it is shown', () => {
  it('shows what a number is reckoned from once, and says "as above" further down', () => {
    const r = new Reckoning(0);
    const girth = r.given('girth', 'girth', 'cm', 25, 'measured');
    const wide = r.reckon({ key: 'wide', says: 'finished', unit: 'cm', formula: 'as measured', inputs: [girth], exact: 25 });
    const half = r.reckon({ key: 'half', says: 'half', unit: 'sts', formula: 'half', inputs: [wide], exact: 12 });
    const tree = originTree(r.reckon({ key: 'all', says: 'all', unit: 'sts', formula: 'both', inputs: [wide, half], exact: 37 }));
    expect(tree.inputs[0]).toMatchObject({ isAbove: false, inputs: [{ origin: girth, isAbove: false }] });
    expect(tree.inputs[1]!.inputs[0]).toMatchObject({ origin: wide, isAbove: true, inputs: [] });
  });
});
