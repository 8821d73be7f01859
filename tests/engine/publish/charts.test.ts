import { describe, expect, it } from 'vitest';
import { gaugeAtScale } from '../../../src/engine/5-layout/gaugeAtScale.ts';
import { layOut } from '../../../src/engine/5-layout/layOutSection.ts';
import { cutSheets } from '../../../src/engine/6-drawing/cutSheets.ts';
import { draw } from '../../../src/engine/6-drawing/draw.ts';
import { PAPERS, SHEET_MARGIN_MM } from '../../../src/engine/6-drawing/paper.ts';
import { sheetDrawing } from '../../../src/engine/6-drawing/sheetDrawing.ts';
import type { Pattern } from '../../../src/engine/index.ts';
import { cutFigure } from '../../../src/engine/publish/charts/chartFigure.ts';
import { plannedCharts } from '../../../src/engine/publish/charts/plannedCharts.ts';
import { sizesTogether } from '../../../src/engine/publish/charts/sizesTogether.ts';
import { defaultChoices, type PublishChoices } from '../../../src/engine/publish/publishChoices.ts';
import { publishPattern } from '../../../src/engine/publish/publishPattern.ts';
import { workedSizes } from '../../../src/engine/publish/workedSizes.ts';
import { BAND, DEMO, patternOf } from './demoPattern.ts';

const choices = (pattern: Pattern, more: Partial<PublishChoices> = {}): PublishChoices => ({ ...defaultChoices(pattern), ...more });
const planned = (pattern: Pattern, more: Partial<PublishChoices> = {}) => plannedCharts(workedSizes(pattern, choices(pattern, more)), choices(pattern, more));
const named = (pattern: Pattern, more: Partial<PublishChoices> = {}): string[] => planned(pattern, more).map(({ title, kind }) => `${title}: ${kind}`);

const PANEL = patternOf(`Panel\nTerms: US\nGauge: 20 sts and 24 rows = 10 cm in sc\nYarn A: slate #4b5a6b\nYarn B: chalk #f2efe6\n\nPANEL\nFoundation: with A, ch 201.\nRow 1: sc in 2nd ch from hook and in each ch across. (200 sc)\n${Array.from({ length: 299 }, (_, i) => `Row ${i + 2}: ${i % 7 === 0 ? `with ${i % 14 === 0 ? 'B' : 'A'}, ` : ''}ch 1, turn, sc in each st across. (200 sc)`).join('\n')}\n`);

describe('charts of several sizes', () => {
  it('are one where sizes differ only in width, with the stitches of each in a bracket and a line at the narrower one’s edge', () => {
    const [chart, ...others] = planned(BAND);
    expect(others).toEqual([]);
    expect(chart!.title).toBe('Band, all sizes');
    const spans = chart!.shared.spans.map(({ size, from, to }) => [size.name, from, to]);
    expect(spans).toEqual([['S', 3, 13], ['M', 0, 16]]);
    const { marks } = cutFigure(chart!).drawing;
    expect(marks.filter(({ role }) => role === 'repeatText').map((mark) => mark.kind === 'text' && mark.text)).toEqual(['S: 10 sts', 'M: 16 sts']);
    const lines = marks.flatMap((mark) => (mark.role === 'sizeLine' && mark.kind === 'line' ? [mark.points[0]!] : []));
    // 4 mm a stitch: 10 stitches apart.
    expect(lines).toHaveLength(2);
    expect(Math.abs(lines[1]! - lines[0]!)).toBeCloseTo(40, 3);
  });

  it('stand alone where colours or shaping part them', () => {
    expect(named(DEMO)).toEqual([
      'Cuff, all sizes: symbol', 'Leg, sizes S, L: colour', 'Leg, size M: colour', 'Heel, size S: symbol', 'Heel, size M: symbol', 'Heel, size L: symbol',
      'Foot, size S: symbol', 'Foot, size M: symbol', 'Foot, size L: symbol', 'Toe, size S: symbol', 'Toe, size M: symbol', 'Toe, size L: symbol', 'Loop, all sizes: symbol',
    ]);
    expect(named(DEMO, { sizes: 1, charts: ['both'] })).toEqual(['Cuff: both', 'Leg: both', 'Heel: both', 'Foot: both', 'Toe: both', 'Loop: both']);
  });

  it('are those of the version that is chosen, which the first page names', () => {
    const leg = DEMO.sections.find(({ name }) => name === 'LEG')!;
    const easier: Pattern = { ...DEMO, versions: [{ id: 'easy', name: 'Bare quay', sections: [{ section: leg.id, placements: [] }] }] };
    expect(named(easier, { version: 'easy' })).toContain('Leg, all sizes: colour');
    const { sheets } = publishPattern(easier, choices(easier, { version: 'easy', sizes: 0, parts: ['booklet', 'words'] }));
    expect(sheets[0]!.svg).toContain('Bare quay · size S · US terms');
  });

  it('are apart when that is wanted, but for sizes that are the same stitch for stitch', () => {
    expect(named(BAND, { sizeCharts: 'apart' })).toEqual(['Band, size S: symbol', 'Band, size M: symbol']);
    expect(named(DEMO, { sizeCharts: 'apart' }).at(-1)).toBe('Loop, all sizes: symbol');
  });

  it('hold in every shared chart the same stitches in the same yarns', () => {
    const worked = workedSizes(DEMO, choices(DEMO));
    for (const { id } of DEMO.sections) {
      for (const { drawn, spans } of sizesTogether(worked.sizes, id, false)) {
        for (const { size, from } of spans) {
          const [rows, own] = [drawn.grid.rows.of(id), size.grid.rows.of(id)];
          expect(own.length).toBe(rows.length);
          own.forEach((row, i) => {
            const [a, b] = [drawn.grid.columns, size.grid.columns];
            for (let column = 0; column < b.start[row + 1]! - b.start[row]!; column++) {
              const [one, two] = [a.stitches[a.start[rows[i]!]! + from + column]!, b.stitches[b.start[row]! + column]!];
              expect(drawn.colours.yarn[one]).toBe(size.colours.yarn[two]);
              expect(drawn.fabric.kind[one]).toBe(size.fabric.kind[two]);
            }
          });
        }
      }
    }
  });
});

describe('repeats', () => {
  it('are bracketed once for each width, with their stitches', () => {
    const leg = planned(DEMO, { sizes: 0 }).find(({ kind }) => kind === 'colour')!;
    const { drawing, repeatStitches } = cutFigure(leg);
    const texts = drawing.marks.flatMap((mark) => (mark.role === 'repeatText' && mark.kind === 'text' ? [mark.text] : []));
    expect(texts).toEqual(['Surf: repeat of 8 sts', 'Puffins: repeat of 16 sts']);
    expect(repeatStitches).toBe(16);
    const widths = drawing.marks.flatMap((mark) => (mark.role === 'repeat' && mark.kind === 'line' ? [mark.points[4]! - mark.points[0]!] : []));
    expect(widths[0]).toBeCloseTo(32, 3);
    expect(widths[1]).toBeCloseTo(64, 3);
  });
});

describe('a panel of 200 by 300 stitches over many sheets', () => {
  const { fabric, colours } = workedSizes(PANEL, choices(PANEL)).sizes[0]!;
  const drawing = draw(fabric, layOut(fabric, 0, gaugeAtScale(PANEL.gauge, 4), {}), { symbols: 'none', numbers: true, grid: true });

  it.each(['a4', 'letter'] as const)('has every stitch whole on a sheet, and neighbours share two stitches or rows: %s', (paper) => {
    const sheets = cutSheets(drawing, PAPERS[paper]);
    expect(sheets.length).toBeGreaterThan(12);
    const { stitches, cellWidthMm: w, cellHeightMm: h } = drawing;
    const times = new Uint8Array(stitches.count);
    const c = stitches.corners;
    for (let i = 0; i < stitches.count; i++) {
      const at = i * 8;
      const [left, right] = [Math.min(c[at]!, c[at + 2]!, c[at + 4]!, c[at + 6]!), Math.max(c[at]!, c[at + 2]!, c[at + 4]!, c[at + 6]!)];
      const [top, bottom] = [Math.min(c[at + 1]!, c[at + 3]!, c[at + 5]!, c[at + 7]!), Math.max(c[at + 1]!, c[at + 3]!, c[at + 5]!, c[at + 7]!)];
      for (const { window } of sheets) if (left >= window.x0 - 1e-3 && right <= window.x1 + 1e-3 && top >= window.y0 - 1e-3 && bottom <= window.y1 + 1e-3) times[i]!++;
    }
    let filled = 0;
    for (let i = 0; i < stitches.count; i++) {
      if (!stitches.filled[i] || stitches.ghost[i]) continue;
      filled++;
      if (times[i] === 0) expect.fail(`stitch ${stitches.stitch[i]} is whole on no sheet`);
    }
    expect(filled).toBeGreaterThanOrEqual(60_000);
    for (const sheet of sheets) {
      const right = sheets.find((other) => other.row === sheet.row && other.column === sheet.column + 1);
      const below = sheets.find((other) => other.column === sheet.column && other.row === sheet.row + 1);
      if (right) expect(sheet.window.x1 - right.window.x0).toBeCloseTo(2 * w, 3);
      if (below) expect(sheet.window.y1 - below.window.y0).toBeCloseTo(2 * h, 3);
    }
  });

  it('shows the same in the overlap of two sheets', () => {
    const sheets = cutSheets(drawing, PAPERS.a4);
    const [left, right] = [sheets.find(({ column, row }) => column === 0 && row === 1)!, sheets.find(({ column, row }) => column === 1 && row === 1)!];
    const strip = (sheet: typeof left): string[] => {
      const { stitches } = sheetDrawing(drawing, sheet).inside;
      return Array.from({ length: stitches.count }, (_, i) => i)
        .filter((i) => !stitches.ghost[i] && stitches.x[i]! > right.window.x0 && stitches.x[i]! < left.window.x1 && stitches.y[i]! > left.window.y0 && stitches.y[i]! < left.window.y1)
        .map((i) => `${stitches.stitch[i]} ${colours.yarn[stitches.stitch[i]!]} ${stitches.x[i]!.toFixed(3)} ${stitches.y[i]!.toFixed(3)}`);
    };
    expect(strip(left).length).toBeGreaterThan(50);
    expect(strip(right)).toEqual(strip(left));
  });

  it('is published as sheets to join after the booklet’s pages, each within the printer’s margin', () => {
    const { sheets } = publishPattern(PANEL, choices(PANEL, { parts: ['charts', 'legend'], charts: ['colour'], paper: 'a4' }));
    const [page, ...cut] = sheets;
    expect(page!.svg).toContain('on sheets of its own');
    expect(cut.length).toBeGreaterThan(12);
    expect(cut[0]!.outline).toEqual([{ title: 'Panel – colour chart', level: 2, yMm: 10 }]);
    for (const { svg, title } of cut) {
      // A bar of 100 mm to measure, and the sheet's place among all of them.
      expect(svg).toMatch(/d="M10 ([\d.]+)L110 \1M/);
      expect(svg).toContain(`>${title.slice('Panel, '.length)}<`);
      const box = /<g id="sheet-legend-box">(.*?)<\/g>/.exec(svg)?.[1] ?? '';
      expect((box.match(/M/g) ?? []).length, 'boxes of the map').toBeGreaterThanOrEqual(cut.length - 2);
    }
    for (const { svg, widthMm, title } of cut) {
      expect(title).toMatch(/^Panel, sheet \d+ of \d+$/);
      const window = /<clipPath id="window"><rect x="([-\d.]+)" y="([-\d.]+)" width="([\d.]+)"/.exec(svg);
      if (!window) continue;
      const shift = /<g transform="translate\(([-\d.]+) ([-\d.]+)\)"><g clip-path/.exec(svg)!;
      expect(Number(window[1]) + Number(shift[1])).toBeGreaterThanOrEqual(SHEET_MARGIN_MM - 1.01);
      expect(Number(window[1]) + Number(window[3]) + Number(shift[1])).toBeLessThanOrEqual(widthMm - SHEET_MARGIN_MM + 1.01);
    }
  });
});

describe('scale', () => {
  it('is true: a chart with 5 mm a stitch has cells of 5 mm, their height by the gauge', () => {
    const { files } = publishPattern(BAND, choices(BAND, { parts: ['charts'], charts: ['colour'], mmPerStitch: 5 }));
    const svg = files.find(({ name }) => name === 'band-chart-band.svg')!.text;
    const [, width, height] = /viewBox="[-\d.]+ [-\d.]+ ([\d.]+) ([\d.]+)"/.exec(svg)!;
    expect(Number(width)).toBeGreaterThan(80);
    expect(svg).toContain(`width="${width}mm" height="${height}mm"`);
    // 20 stitches and 24 rows in 10 cm: a row is 20/24 of a stitch's width high.
    const cell = /<g id="row-1"><path[^>]* d="M([-\d.]+) ([-\d.]+)L([-\d.]+) ([-\d.]+)L([-\d.]+) ([-\d.]+)/.exec(svg)!.slice(1).map(Number);
    expect(Math.abs(cell[3]! - cell[5]!)).toBeCloseTo((5 * 20) / 24, 2);
  });
});
