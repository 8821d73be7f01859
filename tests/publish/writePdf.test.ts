import { beforeAll, describe, expect, it } from 'vitest';
import { PAPERS } from '../../src/engine/6-drawing/paper.ts';
import type { Publication } from '../../src/engine/publish/publication.ts';
import { elementsIn, readSvg, textIn, type SvgElement } from '../../src/publish/svg/readSvg.ts';
import { demo, HOSTILE, hostileDemo, published } from './demo.ts';
import { pdfOf } from './pdfOf.ts';
import { pathBoxesMm, readPdf, type ReadPdf } from './readPdf.ts';
import { smallSheet } from './sheetOf.ts';

const latin = (bytes: Uint8Array): string => Buffer.from(bytes).toString('latin1');
/** The words of all text elements, in their order. */
function textsOf(element: SvgElement): string[] {
  return element.name === 'text' ? [textIn(element)] : elementsIn(element).flatMap(textsOf);
}

const bare = (text: string): string => text.replace(/\s+/g, '');

describe('the booklet of the demo as PDF', () => {
  let publication: Publication;
  let bytes: Uint8Array;
  let read: ReadPdf;

  beforeAll(async () => {
    publication = published(demo(), { paper: 'a4', sizes: 0 });
    bytes = await pdfOf(publication.sheets, { title: publication.title, creator: publication.creator });
    read = await readPdf(bytes);
  }, 30_000);

  it('has a page for each sheet, of its paper’s size', () => {
    expect(read.pages).toHaveLength(publication.sheets.length);
    read.pages.forEach(({ widthPt, heightPt }, index) => {
      expect(widthPt * 25.4 / 72).toBeCloseTo(publication.sheets[index]!.widthMm, 3);
      expect(heightPt * 25.4 / 72).toBeCloseTo(publication.sheets[index]!.heightMm, 3);
    });
  });

  it('says every word of its sheets, in the order in which they are read', () => {
    read.pages.forEach(({ text }, index) => {
      expect(bare(text)).toBe(bare(textsOf(readSvg(publication.sheets[index]!.svg)).join('')));
    });
  });

  it('has the outline of its sheets as bookmarks, each below the heading that it belongs to', () => {
    const flat = (list: ReadPdf['outline'], level: number): string[] => list.flatMap(({ title, page, inside }) => [`${level} ${title} @${page}`, ...flat(inside, level + 1)]);
    expect(flat(read.outline, 1)).toEqual(publication.outline.map(({ level, title, sheet }) => `${level} ${title} @${sheet}`));
  });

  it('says what it is called, who made it and its language', () => {
    expect(read.info).toMatchObject({ Title: 'Puffin Quay', Author: publication.creator, Language: 'en' });
    expect(read.displaysTitle).toBe(true);
  });

  it('is tagged: headings as the outline has them, paragraphs, and figures that say what they show', () => {
    const tags = read.pages.flatMap((page) => page.tags);
    const count = (role: string): number => tags.filter((tag) => tag.role === role).length;
    // Sheets of one large chart name it in the chart's own head: they are figures as a whole.
    const set = publication.outline.filter(({ title, sheet }) => publication.sheets[sheet]!.svg.includes(`>${title}</text>`));
    expect(set.length).toBeGreaterThan(10);
    for (const level of [1, 2, 3]) expect(count(`H${level}`)).toBe(set.filter((entry) => entry.level === level).length);
    expect(count('P')).toBeGreaterThan(50);
    expect([count('Table'), count('TR') > 15, count('TH') > 15, count('TD') > 15]).toEqual([3, true, true, true]);
    const figures = tags.filter((tag) => tag.role === 'Figure');
    expect(figures.length).toBeGreaterThan(3);
    figures.forEach(({ alt }) => expect(alt).toMatch(/\w{3}/));
  });

  it('gives the written rows as paragraphs, also on a page without a picture', () => {
    const rows = read.pages.filter(({ text, tags }) => /Rows? \d+/.test(text) && !tags.some(({ role }) => role === 'Figure'));
    expect(rows.length).toBeGreaterThan(0);
    rows.forEach(({ tags }) => expect(tags.filter(({ role }) => role === 'P').length).toBeGreaterThan(5));
  });

  it('embeds every font that it uses, as a part of it, with its letters’ meaning', () => {
    const text = latin(bytes);
    const names = new Set([...text.matchAll(/\/FontName \/(\S+)/g)].map(([, name]) => name!));
    expect([...names].map((name) => name.split('+')[1]).sort()).toContain('Literata-Regular');
    names.forEach((name) => expect(name).toMatch(/^[A-Z]{6}\+/));
    expect(text.match(/\/Type \/FontDescriptor/g)).toHaveLength(names.size);
    expect(text.match(/\/FontFile2 \d+ 0 R/g)).toHaveLength(names.size);
    expect(text.match(/\/ToUnicode \d+ 0 R/g)).toHaveLength(names.size);
    expect(text).not.toMatch(/\/BaseFont \/(Helvetica|Times|Courier)/);
  });

  it('is drawn, not photographed, and runs nothing', () => {
    expect(latin(bytes)).not.toMatch(/\/Subtype \/Image|\/JavaScript|\/JS |\/Launch|\/URI/);
  });

  it('is the same twice, and knows no clock', async () => {
    // Pages of each kind: title, words, charts, steps, schematic. That sheets are the same twice is checked where they are made.
    const kinds = [0, 1, ...['– colour chart', '– stitch chart', 'Step by step', 'Schematic'].map((title) => publication.outline.find((entry) => entry.title.includes(title))!.sheet)].map((index) => publication.sheets[index]!);
    const [once, again] = [await pdfOf(kinds), await pdfOf(kinds)];
    expect(Buffer.from(again).equals(Buffer.from(once))).toBe(true);
    expect(latin(once)).not.toMatch(/CreationDate|ModDate|xmp:CreateDate|D:\d{4}/);
    expect(latin(bytes)).not.toMatch(/CreationDate|ModDate|xmp:CreateDate|D:\d{4}/);
  });
});

describe('measures', () => {
  it.each(['a4', 'letter'] as const)('the bar of 100 mm is 100 mm on %s', async (paper) => {
    const { sheets } = published(demo(), { paper, sizes: 0, parts: ['charts'], charts: ['colour'], mmPerStitch: 6 });
    const sheet = sheets.find(({ svg }) => svg.includes('100 mm'))!;
    expect([sheet.widthMm, sheet.heightMm].sort((a, b) => a - b)).toEqual([PAPERS[paper].widthMm, PAPERS[paper].heightMm]);
    const boxes = await pathBoxesMm(await pdfOf([sheet]), 0);
    // Bar and ticks are one path.
    expect(boxes.some(({ width, height }) => Math.abs(width - 100) < 0.01 && height < 3)).toBe(true);
  });
});

describe('hostile names', () => {
  it('are printed as they are, and what no font has keeps its meaning', async () => {
    const { sheets, title } = published(hostileDemo(), { sizes: 0, parts: ['booklet', 'words', 'charts', 'legend'], charts: ['colour'] });
    const bytes = await pdfOf(sheets.slice(0, 6), { title, creator: HOSTILE.designer, rights: HOSTILE.yarn });
    const read = await readPdf(bytes);
    const text = bare(read.pages.map((page) => page.text).join(''));
    expect(text).toContain(bare(HOSTILE.title));
    expect(text).toContain(bare('"><svgonload="x">'));
    expect(read.info['Title']).toBe(HOSTILE.title);
    expect(read.info['Author']).toBe(HOSTILE.designer);
    expect(latin(bytes)).toContain('<rdf:li xml:lang="x-default">&lt;script&gt;');
  });

  it.each([
    ['Japanese', '木綿'], ['a picture', '🧶'], ['Hebrew', 'שלום'], ['Arabic', 'مرحبا'], ['marks on letters', 'e\u0301 x\u0308\u0323'], ['steering characters', 'a\u202eb\u200dc\ufe0f'], ['arrows', '→ ← ↺ ✓'], ['only marks', '\u0301\u0308'], ['a soft hyphen', 'co\u00adop'], ['nothing', ''], ['half a pair', '\ud83e'],
  ])('%s can be set', async (_, words) => {
    const bytes = await pdfOf([smallSheet(`<text x="10" y="20" font-size="5" font-family="Literata, serif">[${words.replace(/[\ud800-\udfff](?![\udc00-\udfff])(?<![\ud800-\udbff][\udc00-\udfff])/g, '')}]</text>`)]);
    const { pages } = await readPdf(bytes);
    expect(pages[0]!.text).toMatch(/^\[.*\]$/);
  });

  it('a character that no font has is a box that stands for it', async () => {
    const bytes = await pdfOf([smallSheet('<text x="10" y="20" font-size="5">木</text>')]);
    expect((await readPdf(bytes)).pages[0]!.text).toMatch(/\ufffd|木/);
  });
});

describe('tags', () => {
  it('take a heading of two lines, figures, paragraphs of several lines, labels beside them and what stands aside for what they are', async () => {
    const line = (x: number, y: number, words: string): string => `<text x="${x}" y="${y}" font-size="4">${words}</text>`;
    const body = `<g id="running-head">${line(5, 4, 'Head')}</g>${line(5, 10, 'A long')}${line(5, 15, 'heading')}${line(5, 22, 'Row 1')}${line(30, 22, 'first line')}${line(30, 27, 'second line')}${line(5, 32, 'Row 2')}${line(30, 32, 'other')}
<g role="img" aria-label="A square">${line(6, 50, 'inside')}<rect x="5" y="45" width="5" height="5"/></g><g role="img"><rect x="50" y="45" width="5" height="5"/></g>${line(60, 50, 'Last')}`;
    const { pages } = await readPdf(await pdfOf([smallSheet(body, [{ title: 'A long heading', level: 2, yMm: 8 }])]));
    expect(pages[0]!.tags.map(({ role, alt }) => (alt === null ? role : `${role}: ${alt}`))).toEqual(['Root', 'Document', 'Sect', 'H2', 'P', 'P', 'Figure: A square', 'P']);
    expect(pages[0]!.text.replace(/\s+/g, ' ')).toContain('A long heading Row 1 first line second line Row 2 other inside');
  });
});

describe('tables', () => {
  const at = (x: number, y: number, words: string, cell: string): string => `<text x="${x}" y="${y}" font-size="4" data-cell="${cell}">${words}</text>`;
  const roles = async (body: string): Promise<string[]> => (await readPdf(await pdfOf([smallSheet(`<g id="page">${body}</g>`)]))).pages[0]!.tags.slice(3).map(({ role }) => role);

  it('are rows of heads and cells, each cell one whatever its lines are drawn between', async () => {
    const body = `${at(5, 10, 'Finished', '0 0 column')}${at(40, 10, 'S', '0 1 column')}<path d="M5 12H60" stroke="#000000"/>${at(5, 16, 'Foot,', '1 0 row')}${at(40, 16, '26 cm', '1 1 none')}${at(5, 21, 'around', '1 0 row')}${at(40, 21, '(10 in)', '1 1 none')}<text x="5" y="40" font-size="4">After it</text>`;
    // Row, row 0's two heads, row 1's head and cell, then the paragraph; the page's own text keeps the order in which it is drawn.
    expect(await roles(body)).toEqual(['Table', 'TR', 'TH', 'TH', 'TR', 'TH', 'TD', 'P']);
    const bytes = await pdfOf([smallSheet(`<g id="page">${body}</g>`)]);
    expect(latin(bytes).match(/\/Scope \/(Column|Row)/g)).toEqual(['/Scope /Column', '/Scope /Column', '/Scope /Row']);
  });

  it('begin anew where columns are headed again, or rows begin again after other words', async () => {
    const sizes = (y: number): string => `${at(5, y, 'Finished', '0 0 column')}${at(5, y + 6, 'Foot', '1 0 row')}`;
    expect(await roles(sizes(10) + sizes(30))).toEqual(['Table', 'TR', 'TH', 'TR', 'TH', 'Table', 'TR', 'TH', 'TR', 'TH']);
    // Two columns read downwards are one table.
    const list = `${at(5, 50, 'ch', '0 0 row')}${at(15, 50, 'chain', '0 1 none')}${at(40, 50, 'sc', '1 0 row')}${at(50, 50, 'single crochet', '1 1 none')}`;
    expect(await roles(`${sizes(10)}<text x="5" y="40" font-size="4">In US terms.</text>${list}`)).toEqual(['Table', 'TR', 'TH', 'TR', 'TH', 'P', 'Table', 'TR', 'TH', 'TD', 'TR', 'TH', 'TD']);
  });

  it('are refused where a cell says no place', async () => {
    await expect(pdfOf([smallSheet(at(5, 10, 'S', 'first'))])).rejects.toThrow('data-cell="first": a row, a column and “column”, “row” or “none” were expected');
  });
});

describe('a date', () => {
  it('is the pattern’s', async () => {
    const bytes = await pdfOf([smallSheet('<rect width="10" height="10"/>')], { date: new Date('2026-03-01T00:00:00Z') });
    expect((await readPdf(bytes)).info['CreationDate']).toMatch(/^D:20260301/);
  });
});

describe('sheets that are none of ours', () => {
  it.each([
    ['<image href="x.png"/>', /sheet “small”: the element “image” is not known/],
    ['<foreignObject/>', /the element “foreignObject”/],
    ['<rect width="5" height="5" filter="url(#x)"/>', /the attribute filter="url\(#x\)" of a rect/],
    ['<rect width="5mm" height="5"/>', /“5mm” is not a number of user units/],
    ['<rect width="5" height="5" fill="url(#hatch)"/>', /the paint “url\(#hatch\)”/],
    ['<rect width="5" height="5" fill="var(--ink)"/>', /the paint “var\(--ink\)”/],
    ['<use href="#nowhere"/>', /use of “#nowhere”: there is no such element/],
    ['<g transform="skewX(5)"/>', /transform “skewX” is not known/],
    ['<g transform="rotate(a)"/>', /transform “rotate\(a\)” has something that is no number/],
    ['<path d="M0 0L5 x"/>', /path data “M0 0L5 x”/],
    ['<text x="1 2 3">abc</text>', /“1 2 3” is not a number/],
    ['<text><textPath>a</textPath></text>', /“textPath” inside a text/],
    ['<g clip-path="url(#none)"/>', /there is no such clipPath/],
    ['<g id="a"><use href="#a"/></g>', /more than 60 deep/],
    ['<g><rect></g>', /not well-formed XML/],
    ['<style>rect{}</style>', /the element “style”/],
  ])('%s is refused by name', async (body, says) => {
    await expect(pdfOf([smallSheet(`<g id="page">${body}</g>`)])).rejects.toThrow(says);
  });

  it('no sheets at all are a mistake of the program', async () => {
    await expect(pdfOf([])).rejects.toThrow(RangeError);
  });
});
