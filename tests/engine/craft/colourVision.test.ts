import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { COLOUR_VISIONS, greyOf, seenWith, viewPalette, VISION_MATRICES } from '../../../src/engine/craft/colourVision.ts';

const hex = fc.integer({ min: 0, max: 0xffffff }).map((value) => `#${value.toString(16).padStart(6, '0')}`);

describe('colours as others see them', () => {
  // Machado, Oliveira, Fernandes 2009, severity 1.0: every row sums to 1, so that greys stay grey.
  it.each(COLOUR_VISIONS)('%s: each row of the matrix sums to 1', (vision) => {
    const m = VISION_MATRICES[vision];
    expect(m).toHaveLength(9);
    for (const row of [0, 3, 6]) expect(Math.abs(m[row]! + m[row + 1]! + m[row + 2]! - 1)).toBeLessThan(1.5e-6); // a unit of the last printed place
  });

  it('greys are unchanged', () => {
    for (const vision of COLOUR_VISIONS) for (let value = 0; value < 256; value++) {
      const grey = `#${value.toString(16).padStart(2, '0').repeat(3)}`;
      expect(seenWith(vision, grey)).toBe(grey);
    }
  });

  // Worked out from the published matrices in linear RGB, clamped and encoded (severity 1.0).
  it.each([
    ['#ff0000', 'protan', '#6d5f00'],
    ['#ff0000', 'deutan', '#a39000'],
    ['#ff0000', 'tritan', '#ff000f'],
    ['#00ff00', 'protan', '#ffe500'],
    ['#00ff00', 'deutan', '#efd63a'],
    ['#00ff00', 'tritan', '#00f7d9'],
    ['#0000ff', 'protan', '#0059ff'],
    ['#0000ff', 'deutan', '#003dfb'],
    ['#0000ff', 'tritan', '#006b96'],
    ['#808080', 'protan', '#808080'],
  ] as const)('%s is seen by %s eyes as %s', (colour, vision, seen) => {
    expect(seenWith(vision, colour)).toBe(seen);
  });

  it('black and white keeps the luminance', () => {
    expect([greyOf('#000000'), greyOf('#ffffff'), greyOf('#777777')]).toEqual(['#000000', '#ffffff', '#777777']);
    // 0.2126 of linear light, encoded (WCAG 2.2, relative luminance).
    expect(greyOf('#ff0000')).toBe('#7f7f7f');
    fc.assert(fc.property(hex, (colour) => {
        expect(greyOf(colour)).toMatch(/^#(..)\1\1$/);
      }), { numRuns: 300, seed: 4_7 });
  });

  it('views a whole palette, in its order', () => {
    expect(viewPalette(['#ff0000', '#808080'], 'full')).toEqual(['#ff0000', '#808080']);
    expect(viewPalette(['#ff0000', '#808080'], 'deutan')).toEqual(['#a39000', '#808080']);
    expect(viewPalette(['#ff0000', '#808080'], 'blackAndWhite')).toEqual(['#7f7f7f', '#808080']);
  });
});
