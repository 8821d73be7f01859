import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import pixelmatch from 'pixelmatch';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { PrintedSheet } from '../../src/engine/publish/printedSheet.ts';
import { demo, published } from './demo.ts';
import { RENDERERS, type Picture } from './renderers.ts';
import { sheetOf } from './sheetOf.ts';

/** A sheet of each kind: the charts that were looked at by eye, a schematic, a page of the booklet with type. */
const KINDS: Readonly<Record<string, () => PrintedSheet>> = {
  'flat colour': () => sample('colour-panel'),
  symbols: () => sample('colour-panel-symbols'),
  'heel wedge': () => sample('heel'),
  disc: () => sample('disc-sc'),
  'marks in black and white': () => sample('colour-panel-mono'),
  schematic: () => published(demo(), { parts: ['schematic'], sizes: 0, paper: 'a4' }).sheets[0]!,
  'page of the booklet': () => published(demo(), { parts: ['booklet', 'words'], sizes: 0, paper: 'a4' }).sheets[1]!,
};

/**
 * Programs smooth edges each in its own way, so what is compared is the mean colour of boxes of 0.6 mm: a part of all boxes may
 * differ by more than a fifth of the way from black to white (pixelmatch): librsvg sets no ligatures, poppler fits thin lines to pixels.
 */
const [BOX, CLEARLY, MOST_DIFFERENT] = [3, 0.2, 0.004];

function sample(name: string): PrintedSheet {
  const svg = readFileSync(resolve(import.meta.dirname, `../samples/drawing/${name}.svg`), 'utf8');
  // Made larger to whole millimetres, which are whole pixels: programs round half pixels in their own ways.
  return sheetOf(name, svg.replace(/width="([\d.]+)mm" height="([\d.]+)mm" viewBox="(\S+) (\S+) \S+ \S+"/, (_, w: string, h: string, x: string, y: string) => {
    const [width, height] = [Math.ceil(Number(w)), Math.ceil(Number(h))];
    return `width="${width}mm" height="${height}mm" viewBox="${x} ${y} ${width} ${height}"`;
  }));
}

const folder = mkdtempSync(join(tmpdir(), 'turnwork-renderers-'));
const sheets = Object.entries(KINDS).map(([kind, make]) => ({ ...make(), name: kind.replaceAll(' ', '-') }));
let reference: readonly Picture[] = [];

beforeAll(async () => {
  reference = (await RENDERERS.resvg(sheets))!;
}, 30_000);
afterAll(() => rmSync(folder, { recursive: true, force: true }));

/** Part of the pixels that differ; sizes may differ by the rounding of a pixel. */
function difference(a: Picture, b: Picture): number {
  const [width, height] = [Math.floor(Math.min(a.width, b.width) / BOX), Math.floor(Math.min(a.height, b.height) / BOX)];
  expect(Math.abs(a.width - b.width), 'widths').toBeLessThanOrEqual(1);
  expect(Math.abs(a.height - b.height), 'heights').toBeLessThanOrEqual(1);
  return pixelmatch(boxed(a, width, height), boxed(b, width, height), undefined, width, height, { threshold: CLEARLY, includeAA: true }) / (width * height);
}

/** The mean colour of each box of BOX × BOX pixels. */
function boxed({ data, width: across }: Picture, width: number, height: number): Uint8Array {
  const made = new Uint8Array(width * height * 4);
  for (let y = 0; y < height; y++) {
    for (let x = 0; x < width; x++) {
      for (let part = 0; part < 4; part++) {
        let sum = 0;
        for (let j = 0; j < BOX; j++) for (let i = 0; i < BOX; i++) sum += data[((y * BOX + j) * across + x * BOX + i) * 4 + part]!;
        made[(y * width + x) * 4 + part] = Math.round(sum / BOX ** 2);
      }
    }
  }
  return made;
}

describe('every kind of sheet', () => {
  it('has something on it', () => {
    reference.forEach(({ data }, index) => {
      const dark = data.filter((value, at) => at % 4 === 0 && value < 128).length;
      expect(dark, Object.keys(KINDS)[index]).toBeGreaterThan(1000);
    });
  });

  it.each(Object.entries(RENDERERS).filter(([name]) => name !== 'resvg'))('is the same picture in %s', async (name, draw) => {
    const pictures = await draw(sheets, folder);
    if (pictures === null) {
      console.warn(`The same picture everywhere: ${name} is not on this machine and was not looked at.`);
      return;
    }
    const found = Object.keys(KINDS).map((kind, index) => ({ kind, part: difference(reference[index]!, pictures[index]!) }));
    found.forEach(({ kind, part }) => expect(part, kind).toBeLessThan(MOST_DIFFERENT));
  }, 60_000);

  it('is not the same picture when symbols are left out', async () => {
    const without = sheets.map((sheet) => ({ ...sheet, svg: sheet.svg.replace(/<use [^>]*\/>/g, '') }));
    const pictures = (await RENDERERS.resvg(without))!;
    const parts = pictures.map((picture, index) => difference(reference[index]!, picture));
    for (const kind of ['symbols', 'heel wedge', 'disc']) expect(parts[Object.keys(KINDS).indexOf(kind)]).toBeGreaterThan(2 * MOST_DIFFERENT);
  });
});
