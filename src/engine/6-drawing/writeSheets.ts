import { cutSheets } from './cutSheets.ts';
import type { Sheet, SheetOptions } from './cutSheets.ts';
import type { Drawing } from './drawing.ts';
import type { LegendEntry } from './legend.ts';
import { SHEET_FOOT_MM, SHEET_MARGIN_MM } from './paper.ts';
import type { Paper } from './paper.ts';
import { scaleDrawing } from './scaleDrawing.ts';
import { sheetDrawing } from './sheetDrawing.ts';
import { sheetFurniture } from './sheetFurniture.ts';
import { svgChart } from './svgChart.ts';
import { svgGlyph, svgHalo } from './svgGlyph.ts';
import { glyphsOnHalo } from './svgSymbols.ts';
import { svgHead } from './svgHead.ts';
import { legendDefs, svgLegend } from './svgLegend.ts';
import { svgMarks } from './svgMarks.ts';
import { attributes, num } from './svgText.ts';
import { LEAST_TEXT_MM, POINT_MM } from './textSize.ts';
import { shownLegend } from './writeSvg.ts';
import type { SvgOptions } from './writeSvg.ts';

/** Text of charts in large print is 12 pt. */
const LARGE_TEXT_MM = 12 * POINT_MM;
/** Space between chart and legend, mm. */
const LEGEND_CLEAR_MM = 6;

/**
 * A chart as sheets ready to print, one SVG file each, in order: cut with overlap, join lines, sheet map and a bar to measure.
 * The legend stands under the chart on the last sheet where there is room, else on a sheet of its own. Same input, same bytes.
 */
export function writeSheets(drawing: Drawing, paper: Paper, options: SvgOptions & SheetOptions): string[] {
  const scaled = options.mmPerStitch === undefined ? drawing : scaleDrawing(drawing, options.mmPerStitch);
  const entries = shownLegend(options, scaled.cellWidthMm / drawing.cellWidthMm);
  const legendWidth = (on: Paper): number => on.widthMm - 2 * SHEET_MARGIN_MM;
  const needs = svgLegend(entries, scaled, options.look, 0, 0, legendWidth(paper)).heightMm;
  const sheets = cutSheets(scaled, paper, options);
  const last = sheets.at(-1)!;
  const free = last.paper.heightMm - SHEET_MARGIN_MM - SHEET_FOOT_MM - (last.window.y1 + last.shiftY) - LEGEND_CLEAR_MM;
  const ownSheet = needs > free;
  const total = sheets.length + (ownSheet ? 1 : 0);
  const files = sheets.map((sheet) => {
    const under = sheet === last && !ownSheet;
    return sheetFile(scaled, sheet, total, options, under ? entries : [], under ? legendAt(sheet, sheet.window.y1 + sheet.shiftY + LEGEND_CLEAR_MM) : '');
  });
  if (ownSheet) files.push(legendFile());
  return files;

  function legendAt(sheet: Sheet, y: number): string {
    return svgLegend(entries, scaled, options.look, SHEET_MARGIN_MM, y, legendWidth(sheet.paper)).svg;
  }

  function legendFile(): string {
    const sheet: Sheet = { ...sheets[0]!, index: sheets.length, column: -1, row: -1, window: { x0: 0, y0: 0, x1: 0, y1: 0 }, cut: { left: false, right: false, top: false, bottom: false }, seam: { left: null, right: null, top: null, bottom: null } };
    return file(sheet, total, options, legendDefs(entries, []), '', legendAt(sheet, SHEET_MARGIN_MM + SHEET_FOOT_MM + 6));
  }
}

function sheetFile(drawing: Drawing, sheet: Sheet, total: number, options: SvgOptions, entries: readonly LegendEntry[], legend: string): string {
  const { look, yarnOf, rows } = options;
  const { inside, beside } = sheetDrawing(drawing, sheet);
  const { x0, y0, x1, y1 } = sheet.window;
  // Unclipped where nothing is cut off, so that the edge of the outermost line shows in full.
  const pad = 1;
  const clip = [x0 - (sheet.cut.left ? 0 : pad), y0 - (sheet.cut.top ? 0 : pad), x1 + (sheet.cut.right ? 0 : pad), y1 + (sheet.cut.bottom ? 0 : pad)] as const;
  const placed = new Set(inside.stitches.glyph);
  const glyphs = drawing.glyphs.filter((_, index) => placed.has(index));
  const defs = `${[...glyphs.map(svgGlyph), ...glyphsOnHalo(inside, look).map(svgHalo)].join('\n')}${legendDefs(entries, glyphs)}<clipPath id="window"><rect${attributes({ x: clip[0], y: clip[1], width: clip[2] - clip[0], height: clip[3] - clip[1] })}/></clipPath>`;
  const shift = `translate(${num(sheet.shiftX)} ${num(sheet.shiftY)})`;
  const chart = `<g${attributes({ transform: shift })}><g clip-path="url(#window)">${svgChart(inside, rows, look, yarnOf)}</g>`
    + `<g id="numbers-at-cuts">${svgMarks(beside, ['rowNumber', 'stitchNumber'], look).replaceAll('<g id="', '<g id="cut-')}</g></g>`;
  return file(sheet, total, options, defs, chart, legend);
}

/** The furniture is smaller than the chart's own text, but in large print. */
function leastText({ look }: SvgOptions): number {
  return look.textMm >= LARGE_TEXT_MM ? look.textMm : LEAST_TEXT_MM;
}

function file(sheet: Sheet, total: number, options: SvgOptions, defs: string, chart: string, legend: string): string {
  const { widthMm: width, heightMm: height } = sheet.paper;
  const title = total > 1 ? `${options.title}, sheet ${sheet.index + 1} of ${total}` : options.title;
  const furniture = svgMarks(sheetFurniture(sheet, total, options.title, leastText(options)), ['title', 'caption', 'legendBox', 'scale', 'join'], { ...options.look });
  return `${svgHead({ x: 0, y: 0, width, height }, { ...options, title })}
<defs>${defs}</defs>
<rect id="paper" x="0" y="0" width="${num(width)}" height="${num(height)}" fill="${options.look.paper}"/>
${chart}
<g id="sheet">${furniture.replaceAll('<g id="marks-', '<g id="sheet-')}</g>
${legend}${legend ? '\n' : ''}</svg>
`;
}
