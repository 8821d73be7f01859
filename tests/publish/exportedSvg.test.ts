import { execFileSync, spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { Publication } from '../../src/engine/publish/publication.ts';
import type { PublishChoices } from '../../src/engine/publish/publishChoices.ts';
import { elementsIn, readSvg, textIn, type SvgElement } from '../../src/publish/svg/readSvg.ts';
import { sheetItems, type SheetItems } from '../../src/publish/svg/sheetItems.ts';
import { HOSTILE, hostileDemo, published } from './demo.ts';

/** Choices that between them reach every writer. */
const CHOICES: readonly (readonly [string, Partial<PublishChoices>])[] = [
  ['everything, one size', { sizes: 0, charts: ['colour', 'symbol', 'both'] }],
  ['black and white, large print, left-handed, letter', { sizes: 0, parts: ['booklet', 'words', 'charts', 'legend', 'schematic', 'steps', 'errata'], mono: true, largePrint: true, hand: 'left', paper: 'letter', charts: ['colour'] }],
  ['charts alone, large, of all sizes', { parts: ['charts', 'legend'], charts: ['both'], mmPerStitch: 6, sizeCharts: 'together', symbols: 'jis', view: 'fan' }],
];

function all(element: SvgElement): SvgElement[] {
  return [element, ...elementsIn(element).flatMap(all)];
}

describe.each(CHOICES)('every SVG of %s, under hostile names', (_, choices) => {
  let publication: Publication;
  let documents: { name: string; text: string; root: SvgElement; items: SheetItems['items'] }[];

  beforeAll(() => {
    publication = published(hostileDemo(), choices);
    documents = [...publication.sheets.map(({ name, svg }) => ({ name: `${name}.svg`, text: svg })), ...publication.files.filter(({ name }) => name.endsWith('.svg'))].map((file) => ({ ...file, root: readSvg(file.text), items: sheetItems(file.text).items }));
    expect(documents.length).toBeGreaterThan(2);
  }, 30_000);

  it('has only elements and attributes that draw: no scripts, events, styles, foreign content', () => {
    const names = new Set(documents.flatMap(({ root }) => all(root).map(({ name }) => name)));
    const drawing = ['svg', 'title', 'desc', 'metadata', 'defs', 'g', 'use', 'path', 'rect', 'circle', 'ellipse', 'line', 'polyline', 'polygon', 'text', 'tspan', 'clipPath', 'symbol'];
    expect([...names].filter((name) => !drawing.includes(name) && !/^(rdf|dc):/.test(name))).toEqual([]);
    const attributes = documents.flatMap(({ root }) => all(root).flatMap((element) => Object.entries(element.attributes)));
    expect(attributes.filter(([name]) => /^(on|style$|src$|xml:base$|formaction$|begin$)/i.test(name))).toEqual([]);
    expect(attributes.filter(([name, value]) => /href$/.test(name) && !/^#[\w-]+$/.test(value))).toEqual([]);
    expect(attributes.filter(([name, value]) => !['aria-label'].includes(name) && /var\(|javascript:|data:|url\((?!#[\w-]+\))|expression\(/i.test(value))).toEqual([]);
  });

  it('refers to what it has, under ids that occur once', () => {
    for (const { root, name } of documents) {
      const elements = all(root);
      const ids = elements.flatMap(({ attributes: { id } }) => (id === undefined ? [] : [id]));
      expect(new Set(ids).size, name).toBe(ids.length);
      const used = elements.flatMap(({ attributes }) => [attributes.href, attributes['xlink:href'], /^url\((.*)\)$/.exec(attributes['clip-path'] ?? '')?.[1]].flatMap((value) => (value === undefined ? [] : [value.slice(1)])));
      expect(used.filter((id) => !ids.includes(id)), name).toEqual([]);
    }
  });

  it('says who it is and shows hostile names as text', () => {
    const first = documents[0]!;
    const title = elementsIn(first.root).find(({ name }) => name === 'title')!;
    expect(textIn(title)).toContain(HOSTILE.title);
    const texts = documents.flatMap(({ root }) => all(root).filter(({ name }) => name === 'text').map(textIn)).join('\n');
    expect(texts).toContain('<script>alert(1)</script>');
  });

  it('has no part that is seen through: a PDF has no groups to lay over others as one', () => {
    for (const { root, name } of documents) expect(all(root).filter(({ attributes: { opacity = '1' } }) => opacity !== '1').map((element) => element.name), name).toEqual([]);
  });

  it('can be put into a PDF', () => {
    for (const { items } of documents) expect(items.length).toBeGreaterThan(0);
  });

  it('has no text under 6 pt nor lines under 0.2 mm', () => {
    for (const { items, name } of documents) {
      const texts = items.flatMap((item) => (item.kind === 'text' ? item.chunks.flatMap(({ runs }) => runs.map(({ pen }) => pen.sizeOfText * Math.hypot(item.matrix[2], item.matrix[3]))) : []));
      // A line of its fill's own colour closes the seams between areas and is none.
      const lines = items.flatMap((item) => (item.kind === 'path' && item.pen.stroke !== 'none' && item.pen.stroke !== item.pen.fill ? [item.pen.strokeWidth * Math.sqrt(Math.abs(item.matrix[0] * item.matrix[3] - item.matrix[1] * item.matrix[2]))] : []));
      expect(Math.min(...texts) * 72 / 25.4, name).toBeGreaterThan((choices.largePrint ? 12 : 6) - 0.01);
      if (lines.length > 0) expect(Math.min(...lines), name).toBeGreaterThan(0.2 - 0.001);
    }
  });
});

describe('xmllint', () => {
  const folder = mkdtempSync(join(tmpdir(), 'turnwork-xml-'));
  const here = spawnSync('xmllint', ['--version']).status === 0;
  if (!here) console.warn('Well-formed by xmllint: it is not on this machine; only our own parser was asked.');
  afterAll(() => rmSync(folder, { recursive: true, force: true }));

  it.runIf(here)('takes every sheet', () => {
    const files = published(hostileDemo(), { sizes: 0 }).sheets.map(({ name, svg }) => {
      writeFileSync(join(folder, `${name}.svg`), svg);
      return join(folder, `${name}.svg`);
    });
    expect(execFileSync('xmllint', ['--noout', '--nonet', ...files], { encoding: 'utf8' })).toBe('');
  });
});
