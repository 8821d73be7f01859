import { describe, expect, it } from 'vitest';
import { colourDifference, labOf, toneContrast } from '../../../src/engine/craft/colourDifference.ts';

// Sharma, Wu, Dalal, "The CIEDE2000 color-difference formula", Color Res. Appl. 30(1), 2005, table 1: all 34 pairs, L a b each.
const PAIRS: readonly (readonly [readonly [number, number, number], readonly [number, number, number], number])[] = [
  [[50, 2.6772, -79.7751], [50, 0, -82.7485], 2.0425],
  [[50, 3.1571, -77.2803], [50, 0, -82.7485], 2.8615],
  [[50, 2.8361, -74.0200], [50, 0, -82.7485], 3.4412],
  [[50, -1.3802, -84.2814], [50, 0, -82.7485], 1.0000],
  [[50, -1.1848, -84.8006], [50, 0, -82.7485], 1.0000],
  [[50, -0.9009, -85.5211], [50, 0, -82.7485], 1.0000],
  [[50, 0, 0], [50, -1, 2], 2.3669],
  [[50, -1, 2], [50, 0, 0], 2.3669],
  [[50, 2.4900, -0.0010], [50, -2.4900, 0.0009], 7.1792],
  [[50, 2.4900, -0.0010], [50, -2.4900, 0.0010], 7.1792],
  [[50, 2.4900, -0.0010], [50, -2.4900, 0.0011], 7.2195],
  [[50, 2.4900, -0.0010], [50, -2.4900, 0.0012], 7.2195],
  [[50, -0.0010, 2.4900], [50, 0.0009, -2.4900], 4.8045],
  [[50, -0.0010, 2.4900], [50, 0.0010, -2.4900], 4.8045],
  [[50, -0.0010, 2.4900], [50, 0.0011, -2.4900], 4.7461],
  [[50, 2.5, 0], [50, 0, -2.5], 4.3065],
  [[50, 2.5, 0], [73, 25, -18], 27.1492],
  [[50, 2.5, 0], [61, -5, 29], 22.8977],
  [[50, 2.5, 0], [56, -27, -3], 31.9030],
  [[50, 2.5, 0], [58, 24, 15], 19.4535],
  [[50, 2.5, 0], [50, 3.1736, 0.5854], 1.0000],
  [[50, 2.5, 0], [50, 3.2972, 0], 1.0000],
  [[50, 2.5, 0], [50, 1.8634, 0.5757], 1.0000],
  [[50, 2.5, 0], [50, 3.2592, 0.3350], 1.0000],
  [[60.2574, -34.0099, 36.2677], [60.4626, -34.1751, 39.4387], 1.2644],
  [[63.0109, -31.0961, -5.8663], [62.8187, -29.7946, -4.0864], 1.2630],
  [[61.2901, 3.7196, -5.3901], [61.4292, 2.2480, -4.9620], 1.8731],
  [[35.0831, -44.1164, 3.7933], [35.0232, -40.0716, 1.5901], 1.8645],
  [[22.7233, 20.0904, -46.6940], [23.0331, 14.9730, -42.5619], 2.0373],
  [[36.4612, 47.8580, 18.3852], [36.2715, 50.5065, 21.2231], 1.4146],
  [[90.8027, -2.0831, 1.4410], [91.1528, -1.6435, 0.0447], 1.4441],
  [[90.9257, -0.5406, -0.9208], [88.6381, -0.8985, -0.7239], 1.5381],
  [[6.7747, -0.2908, -2.4247], [5.8714, -0.0985, -2.2286], 0.6377],
  [[2.0776, 0.0795, -1.1350], [0.9033, -0.0636, -0.5514], 0.9082],
];

describe('the difference of two colours', () => {
  it('has all 34 published pairs', () => {
    expect(PAIRS).toHaveLength(34);
  });

  it.each(PAIRS.map((pair, i) => [i + 1, ...pair] as const))('pair %i is as published, either way round', (_, [l, a, b], [l2, a2, b2], wanted) => {
    expect(colourDifference({ l, a, b }, { l: l2, a: a2, b: b2 })).toBeCloseTo(wanted, 4);
    expect(colourDifference({ l: l2, a: a2, b: b2 }, { l, a, b })).toBeCloseTo(wanted, 4);
  });

  it('is 100 from black to white, and 0 from a colour to itself', () => {
    expect(colourDifference(labOf('#000000'), labOf('#ffffff'))).toBeCloseTo(100, 3);
    expect(colourDifference(labOf('#d8702a'), labOf('#d8702a'))).toBe(0);
  });

  it('refuses a text that is no colour', () => {
    expect(() => labOf('#12')).toThrow('"#12" is no colour');
  });
});

describe('the contrast of two colours in light and dark', () => {
  // Derived from WCAG 2.2, relative luminance (0.04045) and contrast ratio; each recomputed by hand to four places.
  it.each([
    ['#000000', 21.0],
    ['#767676', 4.5422],
    ['#777777', 4.4781],
    ['#595959', 7.0047],
    ['#949494', 3.0335],
    ['#959595', 2.9953],
    ['#0000ff', 8.5925],
    ['#ff0000', 3.9985],
    ['#00ff00', 1.3722],
  ])('%s on white is %d to 1', (colour, ratio) => {
    expect(toneContrast(colour, '#ffffff')).toBeCloseTo(ratio, 4);
    expect(toneContrast('#ffffff', colour)).toBeCloseTo(ratio, 4);
  });

  it('red on blue is 2.1489 to 1', () => {
    expect(toneContrast('#ff0000', '#0000ff')).toBeCloseTo(2.1489, 4);
  });
});
