import type { WorkedRow } from '../3-fabric/fabric.ts';
import type { Drawing } from './drawing.ts';
import type { LegendEntry } from './legend.ts';
import type { Look } from './look.ts';
import { scaleDrawing, scaleGlyph } from './scaleDrawing.ts';
import { svgChart } from './svgChart.ts';
import { svgGlyph, svgHalo } from './svgGlyph.ts';
import { glyphsOnHalo } from './svgSymbols.ts';
import { legendDefs, svgLegend } from './svgLegend.ts';
import { svgHead } from './svgHead.ts';
import type { SvgWords } from './svgHead.ts';
import { num } from './svgText.ts';

/** What a chart file says and how it looks. */
export interface SvgOptions extends SvgWords {
  readonly look: Look;
  /** Yarn index per stitch number. */
  readonly yarnOf: Uint8Array;
  /** The fabric's rows, for the names of the row groups. */
  readonly rows: readonly WorkedRow[];
  /** Width of a stitch on paper, mm; default: the drawing's own scale. */
  readonly mmPerStitch?: number;
  readonly legend?: readonly LegendEntry[];
  /** White space round chart and legend, mm. Default 4. */
  readonly marginMm?: number;
}

/**
 * A chart as one SVG file: millimetres as user units at a true scale, self-contained, named groups in drawing order, symbols
 * once in `<defs>`. The same input gives the same bytes; numbers are rounded to 0.001. Linear in the drawing.
 */
export function writeSvg(drawing: Drawing, options: SvgOptions): string {
  const scaled = options.mmPerStitch === undefined ? drawing : scaleDrawing(drawing, options.mmPerStitch);
  const { look, yarnOf, rows, marginMm = 4 } = options;
  const { x0, y0, x1, y1 } = scaled.bounds;
  const entries = shownLegend(options, scaled.cellWidthMm / drawing.cellWidthMm);
  const width = Math.max(x1 - x0, entries.length > 0 ? 60 : 0);
  const legend = svgLegend(entries, scaled, look, x0, y1 + 5, width);
  const height = y1 - y0 + (legend.heightMm > 0 ? 5 + legend.heightMm : 0);
  const box = { x: x0 - marginMm, y: y0 - marginMm, width: Math.max(x1 - x0, legend.widthMm) + 2 * marginMm, height: height + 2 * marginMm };
  const symbols = [...scaled.glyphs.map(svgGlyph), ...glyphsOnHalo(scaled, look).map(svgHalo), legendDefs(entries, scaled.glyphs)].filter((def) => def !== '');
  const defs = symbols.length === 0 ? '' : `<defs>${symbols.join('\n')}</defs>\n`;
  return `${svgHead(box, options)}
${defs}<rect id="paper" x="${num(box.x)}" y="${num(box.y)}" width="${num(box.width)}" height="${num(box.height)}" fill="${look.paper}"/>
${svgChart(scaled, rows, look, yarnOf)}
${legend.svg}${legend.svg ? '\n' : ''}</svg>
`;
}

/**
 * The legend's entries that the look shows, their symbols `scale` times as large: without fills
 * there are no yarns to tell apart, with one ink no sides. */
export function shownLegend({ legend = [], look }: SvgOptions, scale: number): readonly LegendEntry[] {
  const plain = new Set(legend.flatMap((entry) => (entry.kind === 'stitch' && entry.ink === 0 ? [entry.glyph.id] : [])));
  return legend
    .filter(({ kind }) => kind !== 'yarn' || look.fills === 'yarn')
    // With one ink, wrong-side rows have no symbols of their own.
    .filter((entry) => !look.mono || entry.kind !== 'stitch' || entry.ink !== 1 || !plain.has(entry.glyph.id))
    .map((entry) => (entry.kind === 'stitch' && scale !== 1 ? { ...entry, glyph: scaleGlyph(entry.glyph, scale) } : entry));
}
