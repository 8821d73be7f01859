import { describe, expect, it } from 'vitest';
import type { Sample } from '../../../src/editor/gallery/sample.ts';
import { sampleChart } from '../../../src/editor/gallery/sampleChart.ts';
import { SAMPLES } from '../../../src/editor/gallery/samples.ts';
import { writeSvg } from '../../../src/engine/6-drawing/writeSvg.ts';
import { FLAG } from '../../../src/engine/3-fabric/fabric.ts';
import { legend } from '../../../src/engine/6-drawing/legend.ts';
import { printLook } from '../../../src/engine/6-drawing/look.ts';
import { SEEN_FROM_RIGHT } from '../../../src/engine/6-drawing/symbols/rightSide.ts';
import { LEAST_TEXT_MM } from '../../../src/engine/6-drawing/textSize.ts';
import { YARNS } from './chartOf.ts';
import { attributeValues, xmlFault } from './wellFormed.ts';

const sample = (name: string): Sample => SAMPLES.find((one) => one.name === name)!;

describe.each(SAMPLES.map((one) => [one.name, one] as const))('the chart %s', (name, one) => {
  const { drawing, svg, findings } = sampleChart(one);
  const written = writeSvg(drawing, svg);

  it('is of a pattern that is sound', () => {
    expect(findings).toEqual([]);
  });

  it('is the file that was looked at', async () => {
    await expect(written).toMatchFileSnapshot(`../../samples/drawing/${name}.svg`);
  });

  it('gives the same bytes again', () => {
    const again = sampleChart(one);
    expect(writeSvg(again.drawing, again.svg)).toBe(written);
  });

  it('is valid XML', () => {
    expect(xmlFault(written)).toBeNull();
  });

  it('is self-contained: no scripts, events, styles, foreign content or addresses', () => {
    expect(written).not.toMatch(/<script|<foreignObject|<image|<style|\son\w+=|var\(|data:|url\((?!#)|href="(?!#)/);
    expect([...written.matchAll(/https?:\/\/[^"\s]+/g)].map(([address]) => address).filter((address) => !/^http:\/\/(www\.w3\.org\/(2000\/svg|1999\/xlink|1999\/02\/22-rdf-syntax-ns#)|purl\.org\/dc\/elements\/1\.1\/)$/.test(address))).toEqual([]);
  });

  it('refers only to what it defines, under ids that occur once', () => {
    const ids = attributeValues(written, 'id');
    expect(new Set(ids).size).toBe(ids.length);
    ids.forEach((id) => expect(id).toMatch(/^[A-Za-z][\w-]*$/));
    attributeValues(written, 'xlink:href').forEach((href) => expect(ids).toContain(href.slice(1)));
  });

  it('has one millimetre as its unit', () => {
    const [, width, height] = /width="([\d.]+)mm" height="([\d.]+)mm"/.exec(written)!;
    expect(/viewBox="[-\d.]+ [-\d.]+ ([\d.]+) ([\d.]+)"/.exec(written)!.slice(1)).toEqual([width, height]);
  });

  it('rounds to 0.001, draws no line under 0.2 mm and sets no text under 6 pt', () => {
    expect(written.replace(/[Ee]\d|st-[\w-]+/g, '')).not.toMatch(/\d\.\d{4,}/);
    attributeValues(written, 'stroke-width').forEach((width) => expect(Number(width)).toBeGreaterThanOrEqual(0.2));
    attributeValues(written, 'font-size').forEach((size) => expect(Number(size)).toBeGreaterThanOrEqual(LEAST_TEXT_MM - 1e-3));
  });
});

describe('a chart file', () => {
  const { drawing, svg } = sampleChart(sample('colour-panel'));

  it('names its groups in drawing order', () => {
    const ids = attributeValues(writeSvg(drawing, svg), 'id').filter((id) => /^(chart|row-\d+|marks-grid|marks-row-number|legend)$/.test(id));
    expect(ids).toEqual(['chart', ...[1, 2, 3, 4, 5, 6, 7].map((row) => `row-${row}`), 'marks-grid', 'marks-row-number', 'legend']);
  });

  it('uses every stitch of the drawing: what the screen shows is what is printed', () => {
    const both = sampleChart(sample('heel'));
    const placed = [...both.drawing.stitches.glyph].filter((glyph) => glyph >= 0).length;
    const legendUses = both.svg.legend!.filter(({ kind }) => kind === 'stitch').length;
    expect(writeSvg(both.drawing, both.svg).match(/<use /g)).toHaveLength(placed + legendUses);
  });

  it('is drawn at the scale asked for', () => {
    const at5 = writeSvg(drawing, { ...svg, mmPerStitch: 5, legend: [] });
    const [, width] = /width="([\d.]+)mm"/.exec(at5)!;
    expect(Number(width)).toBeCloseTo((drawing.bounds.x1 - drawing.bounds.x0) * (5 / 4) + 8, 2);
  });

  it('carries title, description and Dublin Core metadata, with the date that the pattern gives', () => {
    const written = writeSvg(drawing, { ...svg, title: 'Leg', desc: 'Seven rows', creator: 'A Designer', rights: '© A Designer', date: '2024-05-01' });
    expect(written).toContain('role="img" aria-labelledby="title desc"');
    expect(written).toContain('<title id="title">Leg</title>\n<desc id="desc">Seven rows</desc>');
    for (const line of ['<dc:title>Leg</dc:title>', '<dc:creator>A Designer</dc:creator>', '<dc:rights>© A Designer</dc:rights>', '<dc:date>2024-05-01</dc:date>']) expect(written).toContain(line);
    expect(writeSvg(drawing, svg)).not.toContain('<dc:date>');
  });

  it.each([
    ['<script>alert(1)</script>', '&lt;script&gt;alert(1)&lt;/script&gt;'],
    ['"quoted" & \'so\'', '&quot;quoted&quot; &amp; &#39;so&#39;'],
    ['שלום עולם', 'שלום עולם'],
    ['🧦 socks', '🧦 socks'],
    ['a\u0000b\u0008c\uD800d\uFFFE', 'abcd'],
    [']]> --> <!--', ']]&gt; --&gt; &lt;!--'],
    ['two\nlines', 'two lines'],
  ])('prints the name %j as text', (name, printed) => {
    const yarns = YARNS.map((yarn) => ({ ...yarn, name }));
    const legend = svg.legend!.map((entry) => (entry.kind === 'yarn' ? { ...entry, text: name } : entry));
    const written = writeSvg(drawing, { ...svg, legend, look: { ...svg.look, yarns }, title: name, desc: name, creator: name });
    expect(written).toContain(`<title id="title">${printed}</title>`);
    expect(written).toContain(`>${printed}</text>`);
    expect(xmlFault(written)).toBeNull();
  });
});

describe('black and white', () => {
  const { drawing, svg } = sampleChart(sample('colour-panel-mono'));
  const written = writeSvg(drawing, svg);

  it('has no colour', () => {
    const colours = [...written.matchAll(/"#([0-9a-f]{6})"/g)].map(([, hex]) => hex!);
    expect(colours.length).toBeGreaterThan(0);
    colours.forEach((hex) => expect([hex.slice(2, 4), hex.slice(4)]).toEqual([hex.slice(0, 2), hex.slice(0, 2)]));
  });

  it('tells yarns apart by the shape of their marks', () => {
    const shapes = ['B', 'C'].map((letter) => new RegExp(`class="mark-${letter}"[^>]* d="([^"]*)"`).exec(written)![1]!.replace(/[-\d. ]+/g, '').slice(0, 12));
    expect(new Set(shapes).size).toBe(2);
    expect(written).not.toContain('class="mark-A"');
  });
});

describe('the legend', () => {
  it('lists only the yarns and stitches that are used, in the terms asked for', () => {
    const { svg } = sampleChart(sample('disc-left-handed'));
    const words = svg.legend!.map(({ text }) => text);
    expect(words.some((text) => text.startsWith('tr = treble crochet'))).toBe(true);
    expect(words).toContain('dc = double crochet');
    expect(words.some((text) => /single|bobble|dc2tog/.test(text))).toBe(false);
  });

  it('leaves yarns out that no stitch has', () => {
    const { fabric, drawing } = sampleChart(sample('colour-panel'));
    const entries = legend(fabric, drawing, { terms: 'us', yarns: YARNS, yarnOf: new Uint8Array(fabric.count).fill(1) });
    expect(entries.filter(({ kind }) => kind === 'yarn')).toEqual([{ kind: 'yarn', yarn: 1, text: 'B chalk' }]);
  });

  it('explains attaching stitches, open bands, the seam and grey stitches of a heel', () => {
    const words = sampleChart(sample('heel')).svg.legend!.map(({ text }) => text).join('\n');
    for (const part of ['into the next open stitch', 'stitches left open', 'seam', 'grey']) expect(words).toContain(part);
  });
});

describe('on any yarn', () => {
  const { drawing, svg } = sampleChart(sample('heel-in-colour'));
  const written = writeSvg(drawing, svg);

  it('attaching stitches stand on a halo in the paper\'s colour, in the ink that the legend shows', () => {
    const attaching = [...drawing.stitches.ink].filter((ink) => ink === 2).length;
    expect(written.match(/<use xlink:href="#[\w-]+-halo"/g)).toHaveLength(attaching);
    const symbols = written.slice(written.indexOf('<g id="symbols"'), written.indexOf('<g id="marks-seam"'));
    expect(symbols).toContain(`<g stroke="${svg.look.paper}" fill="${svg.look.paper}"`);
    expect(written.slice(written.indexOf('<g id="legend"'))).toContain(`stroke="${svg.look.inks.attaching}"`);
    expect(symbols).toContain(`<g stroke="${svg.look.inks.attaching}" fill="${svg.look.inks.attaching}">`);
  });

  it('grey stitches lie on tints of their yarns, between paper and yarn', () => {
    const cells = /<g id="ghost-cells">(.*?)<\/g>/.exec(written)![1]!;
    const [tint] = [.../fill="(#[0-9a-f]{6})"/g[Symbol.matchAll](cells)].map(([, colour]) => colour!);
    const light = (hex: string): number => [1, 3, 5].reduce((sum, at) => sum + Number.parseInt(hex.slice(at, at + 2), 16), 0);
    const leg = svg.look.yarns[0]!.colour;
    expect(light(tint!)).toBeGreaterThan(light(leg));
    expect(light(tint!)).toBeLessThan(light(svg.look.paper));
  });

  it('charts without symbols show the stems on halos too', () => {
    const cells = sampleChart(sample('heel-cells'));
    const stems = writeSvg(cells.drawing, cells.svg).match(/<g id="marks-attach">(.*?)<\/g>/)![1]!;
    expect(stems.match(/<path/g)).toHaveLength(2);
    expect(stems.indexOf(cells.svg.look.paper)).toBeLessThan(stems.indexOf(cells.svg.look.inks.attaching));
  });
});

describe('front and back on wrong-side rows', () => {
  it('are shown as the right side has them, and the legend says what is worked (published guide to stitch charts)', () => {
    const { fabric, drawing, svg } = sampleChart(sample('posts'));
    const words = svg.legend!.map(({ text }) => text);
    expect(words).toContain('BPdc = back post double crochet, wrong-side row (worked as FPdc)');
    expect(words).toContain('FPdc = front post double crochet');
    const row = fabric.rows.find(({ number }) => number === 2)!;
    const first = Array.from({ length: row.end - row.first }, (_, k) => row.first + k).find((stitch) => fabric.flags[stitch]! & FLAG.frontPost)!;
    const item = drawing.stitches.stitch.indexOf(first);
    expect(drawing.glyphs[drawing.stitches.glyph[item]!]!.name).toBe('BPdc');
  });

  it.each([
    ['RS', 'front', 'front'], ['RS', 'back', 'back'], ['WS', 'front', 'back'], ['WS', 'back', 'front'],
  ] as const)('%s row, %s: seen %s (published guide to stitch charts; JIS L 0201: symbols show the right side)', (side, worked, seen) => {
    expect(SEEN_FROM_RIGHT[side][worked]).toBe(seen);
  });
});

describe('line weights', () => {
  it.each([[1, 0.2], [2, 0.2], [4, 0.26], [6, 0.39], [12, 0.6]])('of symbols at %f mm a stitch: %f mm, from 0.2 to 0.6', (mmPerStitch, weight) => {
    expect(printLook([], { mmPerStitch }).symbolMm).toBeCloseTo(weight, 9);
  });
});
