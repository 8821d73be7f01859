import { cpuMs } from '../../setup/cpuMs.ts';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { averageCells } from '../../../src/engine/4-colour/averageCells.ts';
import { cleanCells } from '../../../src/engine/4-colour/cleanCells.ts';
import { paletteOfPicture } from '../../../src/engine/4-colour/paletteOfPicture.ts';
import type { Picture } from '../../../src/engine/4-colour/picture.ts';
import { cellsUp, pictureMotif, type PictureSettings } from '../../../src/engine/4-colour/pictureMotif.ts';
import type { Dither } from '../../../src/engine/4-colour/reduceColours.ts';

const YARNS = [
  { letter: 'A', colour: '#4b5a6b' },
  { letter: 'B', colour: '#f2efe6' },
  { letter: 'C', colour: '#e07b39' },
];
const BLACK_WHITE = [{ letter: 'A', colour: '#000000' }, { letter: 'B', colour: '#ffffff' }];
const SQUARE = { widthMm: 5, heightMm: 5 };

/** A picture from a function of the pixel: red, green, blue, alpha, 0 to 255. */
function picture(width: number, height: number, pixel: (x: number, y: number) => readonly [number, number, number, number]): Picture {
  const rgba = new Uint8ClampedArray(width * height * 4);
  for (let y = 0; y < height; y++) for (let x = 0; x < width; x++) rgba.set(pixel(x, y), (y * width + x) * 4);
  return { width, height, rgba };
}

const bytes = (colour: string) => [1, 3, 5].map((at) => parseInt(colour.slice(at, at + 2), 16)) as [number, number, number];
const of = (colour: string) => [...bytes(colour), 255] as const;

function settings(more: Partial<PictureSettings>): PictureSettings {
  return { part: null, across: 8, up: null, cell: SQUARE, yarns: YARNS, detail: 0.5, dither: 'none', isCleaned: false, ...more };
}

const linear = (byte: number) => (byte / 255 <= 0.04045 ? byte / 255 / 12.92 : ((byte / 255 + 0.055) / 1.055) ** 2.4);

describe('a motif from a picture', () => {
  it.each<Dither>(['none', 'ordered', 'floydSteinberg'])('that is drawn in the yarns already is that drawing, whatever its scale: dither %s', (dither) => {
    const cells = ['ABCAB', 'BBCCA', 'CABAC'];
    const drawn = picture(5 * 7, 3 * 7, (x, y) => of(YARNS.find((yarn) => yarn.letter === cells[Math.floor(y / 7)]![Math.floor(x / 7)])!.colour));
    expect(pictureMotif(drawn, settings({ across: 5, dither }))).toEqual(cells);
    // A part of it: the two columns in the middle.
    expect(pictureMotif(drawn, settings({ across: 2, dither, part: { x: 14, y: 0, width: 14, height: 21 } }))).toEqual(['CA', 'CC', 'BA']);
    // Cells smaller than a pixel.
    expect(pictureMotif(drawn, settings({ across: 70, dither }))!.filter((_, y) => y % 14 === 6).map((row) => [...row].filter((__, x) => x % 14 === 6).join(''))).toEqual(cells);
  });

  it('has cells of the true shape: wide stitches, fewer across for their height', () => {
    // 18 stitches and 20 rows in 10 cm: cells of 5.56 by 5 mm, so a square picture of 45 stitches has 50 rows.
    expect(cellsUp({ width: 300, height: 300 }, 45, { widthMm: 100 / 18, heightMm: 5 })).toBe(50);
    expect(cellsUp({ width: 400, height: 300 }, 40, SQUARE)).toBe(30);
    expect(cellsUp({ width: 4_000, height: 1 }, 4, SQUARE)).toBe(1);
    expect(pictureMotif(picture(30, 30, () => of('#000000')), settings({ across: 9, cell: { widthMm: 100 / 18, heightMm: 5 } }))).toHaveLength(10);
  });

  it('averages by area in linear light, as counting small squares does', () => {
    const pixels = fc.tuple(fc.integer({ min: 1, max: 7 }), fc.integer({ min: 1, max: 6 })).chain(([width, height]) => fc.tuple(fc.constant(width), fc.constant(height), fc.array(fc.nat(255), { minLength: width * height * 4, maxLength: width * height * 4 })));
    fc.assert(
      fc.property(pixels, fc.integer({ min: 1, max: 9 }), fc.integer({ min: 1, max: 9 }), ([width, height, data], across, up) => {
        const found = averageCells({ width, height, rgba: Uint8Array.from(data) }, { x: 0, y: 0, width, height }, across, up)!;
        for (let y = 0; y < up; y++) {
          for (let x = 0; x < across; x++) {
            // Squares of 1 / (width × across) by 1 / (height × up) never cross a border.
            const sum = [0, 0, 0, 0];
            for (let sx = 0; sx < width; sx++) for (let sy = 0; sy < height; sy++) {
              const at = (Math.floor((y * height + sy) / up) * width + Math.floor((x * width + sx) / across)) * 4;
              const alpha = data[at + 3]! / 255;
              for (const channel of [0, 1, 2] as const) sum[channel]! += linear(data[at + channel]!) * alpha;
              sum[3]! += alpha;
            }
            expect(found.cover[y * across + x]).toBeCloseTo(sum[3]! / (width * height), 9);
            if (sum[3]! > 0) for (const channel of [0, 1, 2] as const) expect(found.rgb[3 * (y * across + x) + channel]).toBeCloseTo(sum[channel]! / sum[3]!, 9);
          }
        }
      }),
      { numRuns: 300, seed: 2_1 },
    );
  });

  it('is grey of half the light where black and white pixels alternate, which is no half of the bytes', () => {
    const checks = picture(32, 32, (x, y) => of((x + y) % 2 === 0 ? '#000000' : '#ffffff'));
    const yarns = [{ letter: 'A', colour: '#808080' }, { letter: 'B', colour: '#bcbcbc' }];
    // Half of the light is #bc (sRGB, IEC 61966-2-1), not #80.
    expect(pictureMotif(checks, settings({ across: 4, yarns }))!.join('')).toBe('B'.repeat(16));
  });

  it.each<Dither>(['ordered', 'floydSteinberg'])('keeps the light of a grey in a mix of black and white: dither %s', (dither) => {
    for (const grey of [60, 120, 188, 230]) {
      const cells = pictureMotif(picture(4, 4, () => [grey, grey, grey, 255]), settings({ across: 64, yarns: BLACK_WHITE, dither }))!.join('');
      const white = [...cells].filter((letter) => letter === 'B').length / cells.length;
      expect(Math.abs(white - linear(grey))).toBeLessThan(dither === 'ordered' ? 1 / 32 + 1e-9 : 0.01);
    }
  });

  it('leaves cells empty that are less than half covered', () => {
    const round = picture(40, 40, (x, y) => (Math.hypot(x - 19.5, y - 19.5) < 20 ? of('#4b5a6b') : [255, 0, 255, 0]));
    const cells = pictureMotif(round, settings({ across: 8 }))!;
    expect(cells).toEqual(['..AAAA..', '.AAAAAA.', 'AAAAAAAA', 'AAAAAAAA', 'AAAAAAAA', 'AAAAAAAA', '.AAAAAA.', '..AAAA..']);
  });

  it('is smoother or crisper by its detail', () => {
    // A faint spot, hardly lighter than halfway between two yarns.
    const yarns = [{ letter: 'A', colour: '#404040' }, { letter: 'B', colour: '#c0c0c0' }];
    const spot = picture(7, 7, (x, y) => (x === 3 && y === 3 ? of('#8c8c8c') : of('#606060')));
    const at = (detail: number) => pictureMotif(spot, settings({ across: 7, yarns, detail }))![3]![3];
    expect([at(0), at(0.5), at(1)]).toEqual(['A', 'B', 'B']);
    const fainter = picture(7, 7, (x, y) => (x === 3 && y === 3 ? of('#787878') : of('#606060')));
    expect([0.5, 1].map((detail) => pictureMotif(fainter, settings({ across: 7, yarns, detail }))![3]![3])).toEqual(['A', 'B']);
  });

  it('is the same again from the same settings, and says how far it is', () => {
    const noise = picture(300, 200, (x, y) => [(x * 7 + y * 13) % 256, (x * y) % 256, (x ^ y) % 256, 255]);
    const steps: number[] = [];
    const wanted = settings({ across: 60, dither: 'floydSteinberg', detail: 0.8, isCleaned: true });
    const one = pictureMotif(noise, wanted, (done) => steps.push(done));
    expect(pictureMotif(noise, wanted)).toEqual(one);
    expect(steps.length).toBeGreaterThan(30);
    expect(steps.every((done, i) => done > 0 && done <= 1 && done >= (steps[i - 1] ?? 0))).toBe(true);
    expect(steps.at(-1)).toBe(1);
  });

  it('stops when it is told to', () => {
    const plain = picture(64, 640, () => of('#000000'));
    for (const until of [1, 3, 12]) {
      let calls = 0;
      expect(pictureMotif(plain, settings({ across: 8 }), () => ++calls < until)).toBeNull();
      expect(calls).toBe(until);
    }
  });

  it('takes a picture of 4000 × 3000 in seconds', () => {
    const large = picture(4_000, 3_000, (x, y) => [x & 255, y & 255, (x + y) & 255, 255]);
    const before = cpuMs();
    expect(pictureMotif(large, settings({ across: 100, dither: 'floydSteinberg', detail: 0.7 }))).toHaveLength(75);
    expect(cpuMs() - before).toBeLessThan(8_000);
  });

  it.each<[string, () => unknown, string]>([
    ['bytes that are not four a pixel', () => pictureMotif({ width: 2, height: 2, rgba: new Uint8Array(12) }, settings({})), '12 bytes given for a picture of 2 × 2, 16 expected'],
    ['a part beyond the edge', () => pictureMotif(picture(4, 4, () => of('#000000')), settings({ part: { x: 2, y: 0, width: 3, height: 2 } })), 'a part of 3 × 2 at 2, 0 asked of a picture of 4 × 4'],
    ['more cells than a motif has', () => pictureMotif(picture(4, 4, () => of('#000000')), settings({ across: 401 })), '401 cells across asked for, 1 to 400 expected'],
    ['no yarns', () => pictureMotif(picture(4, 4, () => of('#000000')), settings({ yarns: [] })), '0 yarns given to reduce a picture to, at least 1 expected'],
    ['no colours', () => paletteOfPicture(picture(4, 4, () => of('#000000')), 0), '0 colours asked for, 1 or more expected'],
  ])('refuses %s', (_, act, message) => {
    expect(act).toThrow(message);
  });
});

describe('cleaning', () => {
  it('leaves no lone cell, and changes lone cells only', () => {
    const grid = fc.integer({ min: 1, max: 8 }).chain((width) => fc.array(fc.string({ unit: fc.constantFrom('A', 'B', 'C', '.'), minLength: width, maxLength: width }), { minLength: 1, maxLength: 7 }));
    const isLone = (rows: readonly string[], x: number, y: number) => {
      for (let dy = -1; dy <= 1; dy++) for (let dx = -1; dx <= 1; dx++) if ((dx !== 0 || dy !== 0) && rows[y + dy]?.[x + dx] === rows[y]![x]) return false;
      return true;
    };
    fc.assert(
      fc.property(grid, (rows) => {
        const after = cleanCells(rows, 'ABC');
        const isOne = rows.length * rows[0]!.length === 1;
        rows.forEach((row, y) =>
          [...row].forEach((letter, x) => {
            if (!isOne) expect(isLone(after, x, y)).toBe(false);
            if (after[y]![x] !== letter) expect(isLone(rows, x, y)).toBe(true);
          }),
        );
      }),
      { numRuns: 800, seed: 2_2 },
    );
  });

  it('takes the yarn that most neighbours have', () => {
    expect(cleanCells(['BBA', 'BCA', 'BBA'])).toEqual(['BBA', 'BBA', 'BBA']);
    // As many of each: the first in order.
    expect(cleanCells(['BBBB', 'CDDD', 'AAAA'], 'ABCD')[1]).toBe('ADDD');
  });
});

describe('the palette of a picture', () => {
  it('is its colours and their shares, where there are no more than asked for', () => {
    const flag = picture(10, 10, (_, y) => of(y < 5 ? '#4b5a6b' : y < 8 ? '#f2efe6' : '#e07b39'));
    expect(paletteOfPicture(flag, 3)).toEqual([{ colour: '#4b5a6b', share: 0.5 }, { colour: '#f2efe6', share: 0.3 }, { colour: '#e07b39', share: 0.2 }]);
    expect(paletteOfPicture(flag, 12)).toHaveLength(3);
    expect(paletteOfPicture(flag, 1)).toHaveLength(1);
    expect(paletteOfPicture(flag, 2, { x: 0, y: 8, width: 10, height: 2 })).toEqual([{ colour: '#e07b39', share: 1 }]);
  });

  it('groups shades that are near one another', () => {
    const shaded = picture(64, 64, (x, y) => (x < 32 ? [200 + (y % 16), 30, 30, 255] : [20, 20, 180 + (y % 16), 255]));
    const palette = paletteOfPicture(shaded, 2)!;
    expect(palette.map((one) => one.share)).toEqual([0.5, 0.5]);
    const [blue, red] = palette.map((one) => bytes(one.colour));
    expect(red![0]).toBeGreaterThan(200);
    expect(blue![2]).toBeGreaterThan(180);
  });

  it('looks through what is transparent, and stops when it is told to', () => {
    expect(paletteOfPicture(picture(4, 4, () => [9, 9, 9, 100]), 3)).toEqual([]);
    expect(paletteOfPicture(picture(4, 400, () => of('#000000')), 3, null, () => false)).toBeNull();
  });

  it('accounts for the whole picture, and is the same again', () => {
    fc.assert(
      fc.property(fc.array(fc.nat(255), { minLength: 48, maxLength: 48 }), fc.integer({ min: 1, max: 6 }), (data, count) => {
        const rgba = Uint8Array.from(data.flatMap((byte, i) => (i % 3 === 2 ? [byte, 255] : [byte])));
        const palette = paletteOfPicture({ width: 4, height: 4, rgba }, count)!;
        expect(palette.length).toBeGreaterThan(0);
        expect(palette.length).toBeLessThanOrEqual(count);
        expect(palette.reduce((sum, one) => sum + one.share, 0)).toBeCloseTo(1, 9);
        expect(paletteOfPicture({ width: 4, height: 4, rgba }, count)).toEqual(palette);
      }),
      { numRuns: 200, seed: 2_3 },
    );
  });
});
