import { PNG } from 'pngjs';
import { beforeAll, describe, expect, it } from 'vitest';
import { NODE_RESOURCES } from '../../src/cli/nodeResources.ts';
import { MOST_PIXELS, pngProblem } from '../../src/publish/pngSize.ts';
import { openPngWriter, type PngWriter } from '../../src/publish/writePng.ts';
import { fontBook } from './pdfOf.ts';
import { smallSheet } from './sheetOf.ts';

let draw: PngWriter;
beforeAll(async () => {
  draw = await openPngWriter(NODE_RESOURCES, await fontBook());
});

const dark = (bytes: Uint8Array): number => PNG.sync.read(Buffer.from(bytes)).data.filter((value, index) => index % 4 === 0 && value < 128).length;

describe('a picture of a sheet', () => {
  it.each([[254, 1000, 600], [127, 500, 300], [36, 142, 85]])('at %i dpi is %i × %i pixels', (dpi, width, height) => {
    const picture = PNG.sync.read(Buffer.from(draw(smallSheet('<rect x="10" y="10" width="20" height="30"/>'), dpi)));
    expect([picture.width, picture.height]).toEqual([width, height]);
  });

  it('covers what the sheet covers, on white', () => {
    const picture = PNG.sync.read(Buffer.from(draw(smallSheet('<rect x="10" y="10" width="20" height="30"/>'), 254)));
    expect(picture.data.filter((value, index) => index % 4 === 0 && value < 128)).toHaveLength(200 * 300);
    expect([...picture.data.subarray(0, 4)]).toEqual([255, 255, 255, 255]);
  });

  it('is the same twice', () => {
    const sheet = smallSheet('<text x="5" y="20" font-size="8" font-family="Literata">Sock</text>');
    expect(Buffer.from(draw(sheet, 150)).equals(Buffer.from(draw(sheet, 150)))).toBe(true);
  });

  it.each([['Literata', 'Alegreya Sans'], ['Alegreya Sans', 'DejaVu Sans']])('has letters in %s that are not those of %s', (one, other) => {
    const words = (family: string) => draw(smallSheet(`<text x="5" y="20" font-size="8" font-family="'${family}'">Sock 123</text>`), 150);
    expect(dark(words(one))).toBeGreaterThan(500);
    expect(Buffer.from(words(one)).equals(Buffer.from(words(other)))).toBe(false);
  });

  it('has arrows though the faces have none', () => {
    expect(dark(draw(smallSheet('<text x="5" y="20" font-size="8" font-family="Literata">↺✓</text>'), 150))).toBeGreaterThan(200);
  });
});

describe('a picture that would be too large', () => {
  it('is refused with the size and what would do', () => {
    const poster = { name: 'leg', widthMm: 2000, heightMm: 1000 };
    const says = pngProblem(poster, 300)!;
    expect(says).toBe('“leg” would be 23622 × 11811 pixels at 300 dpi (279 megapixels); at most 100 megapixels are drawn: choose 179 dpi or less');
    expect(pngProblem(poster, 179)).toBeNull();
    expect(MOST_PIXELS).toBe(100_000_000);
    expect(() => draw({ ...smallSheet(''), widthMm: 20_000 }, 1200)).toThrow(/megapixels/);
  });

  it.each([0, 35, 1201, Number.NaN])('%d dpi are refused', (dpi) => {
    expect(pngProblem({ name: 'leg', widthMm: 10, heightMm: 10 }, dpi)).toMatch(/36 to 1200 dpi were expected/);
  });

  it('is never asked for by the papers at 600 dpi', () => {
    expect(pngProblem({ name: 'page', widthMm: 297, heightMm: 210 }, 600)).toBeNull();
  });
});
