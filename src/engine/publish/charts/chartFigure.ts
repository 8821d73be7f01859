import { gaugeAtScale } from '../../5-layout/gaugeAtScale.ts';
import { layOut } from '../../5-layout/layOutSection.ts';
import type { LayoutKind } from '../../5-layout/layout.ts';
import { draw } from '../../6-drawing/draw.ts';
import type { Drawing } from '../../6-drawing/drawing.ts';
import { legend, type LegendEntry } from '../../6-drawing/legend.ts';
import { printLook, type Look } from '../../6-drawing/look.ts';
import { svgChart } from '../../6-drawing/svgChart.ts';
import { svgGlyph, svgHalo } from '../../6-drawing/svgGlyph.ts';
import { legendDefs, svgLegend } from '../../6-drawing/svgLegend.ts';
import { glyphsOnHalo } from '../../6-drawing/svgSymbols.ts';
import { num } from '../../6-drawing/svgText.ts';
import { shownLegend, type SvgOptions } from '../../6-drawing/writeSvg.ts';
import { bracketsBelow } from './bracketsBelow.ts';
import { repeatBrackets, sizeBrackets } from './chartBrackets.ts';
import type { ChartKind, PublishChoices } from '../publishChoices.ts';
import type { WorkedPattern } from '../workedSizes.ts';
import type { SharedChart } from './sizesTogether.ts';

/** What a chart is of. */
export interface ChartAsked {
  readonly worked: WorkedPattern;
  readonly section: number;
  readonly shared: SharedChart;
  readonly kind: ChartKind;
  readonly choices: PublishChoices;
}

/** A chart at a scale, with its look and its legend, not yet placed anywhere. */
export interface ChartFigure {
  readonly layout: LayoutKind;
  readonly drawing: Drawing;
  readonly look: Look;
  readonly entries: readonly LegendEntry[];
  /** Stitches of the widest repeat that is bracketed; 1 without. */
  readonly repeatStitches: number;
  readonly mmPerStitch: number;
}

/** Draws a chart with `mmPerStitch` mm a stitch: repeats bracketed under it, and edges of sizes where several share it. Linear in stitches. */
export function chartFigure({ worked, section, shared, kind, choices }: ChartAsked, mmPerStitch: number): ChartFigure {
  const { drawn: pattern } = worked;
  const { drawn } = shared;
  const { mono, largePrint, hand, view, symbols, terms } = choices;
  const look = printLook(pattern.yarns, { mono, large: largePrint, mmPerStitch, fills: kind === 'symbol' ? 'none' : 'yarn' });
  const layout = layOut(drawn.fabric, section, gaugeAtScale(pattern.gauge, mmPerStitch), { hand, view });
  const plain = draw(drawn.dressed, layout, { symbols: kind === 'colour' ? 'none' : symbols, numbers: true, grid: true, textMm: look.textMm });
  const id = pattern.sections[section]!.id;
  const straight = layout.kind === 'flat' || layout.kind === 'tube';
  const repeats = straight ? repeatBrackets(worked, drawn, id, layout) : [];
  const edges = straight ? sizeBrackets(shared, id, layout) : { brackets: [], lines: [] };
  const drawing = bracketsBelow({ ...plain, marks: [...plain.marks, ...edges.lines] }, [...repeats, ...edges.brackets], look.textMm);
  return {
    layout: layout.kind, drawing, look, mmPerStitch,
    entries: legend(drawn.dressed, drawing, { terms, yarns: pattern.yarns, yarnOf: drawn.colours.yarn }),
    repeatStitches: Math.max(1, ...repeats.map(({ stitches }) => stitches)),
  };
}

/** The inside of a chart for a page: its symbols and its groups, moved so that its upper left corner is (0, 0). */
export function figureSvg({ drawing, look }: ChartFigure, { rows, yarnOf }: Pick<SvgOptions, 'rows' | 'yarnOf'>): string {
  const defs = [...drawing.glyphs.map(svgGlyph), ...glyphsOnHalo(drawing, look).map(svgHalo)].join('');
  return `${defs === '' ? '' : `<defs>${defs}</defs>`}<g transform="translate(${num(-drawing.bounds.x0)} ${num(-drawing.bounds.y0)})">${svgChart(drawing, rows, look, yarnOf)}</g>`;
}

/** The inside of a legend for a page, and the room it takes; without the yarns where cells have no fill. */
export function legendSvg({ drawing, look, entries }: Pick<ChartFigure, 'drawing' | 'look' | 'entries'>, { rows, yarnOf }: Pick<SvgOptions, 'rows' | 'yarnOf'>, widthMm: number): { readonly svg: string; readonly widthMm: number; readonly heightMm: number } {
  const shown = shownLegend({ title: '', desc: '', look, rows, yarnOf, legend: entries }, 1);
  const set = svgLegend(shown, drawing, look, 0, 0, widthMm);
  const defs = legendDefs(shown, []);
  return { svg: defs === '' ? set.svg : `<defs>${defs}</defs>${set.svg}`, widthMm: set.widthMm, heightMm: set.heightMm };
}

/** Widths of a stitch that are tried where a chart is to fit, mm, the largest first. */
const FITS_MM = [6, 5.5, 5, 4.5, 4, 3.5, 3, 2.5, 2];
/** Symbols smaller than this can't be told apart, mm a stitch. */
const LEAST_SYMBOL_MM = 2.5;
const LEAST_LARGE_MM = 3.5;
/** Width of a stitch on charts that no page holds at any of these, and on files. */
const CUT_MM = 4;

/** A chart at any scale, each drawn once. */
export type FigureAt = (mmPerStitch: number) => ChartFigure;

/** Draws a chart at the scales that are asked for, and remembers them: a page tries several. */
export function figuresOf(asked: ChartAsked): FigureAt {
  const drawn = new Map<number, ChartFigure>();
  return (mm) => {
    const figure = drawn.get(mm) ?? chartFigure(asked, mm);
    drawn.set(mm, figure);
    return figure;
  };
}

/** The chart as large as it fits into a room, or null where it doesn't fit at any scale that can still be read. */
export function fittedFigure({ choices: { largePrint, mmPerStitch: wanted }, kind }: ChartAsked, at: FigureAt, widthMm: number, heightMm: number): ChartFigure | null {
  const least = largePrint ? LEAST_LARGE_MM : kind === 'colour' ? 0 : LEAST_SYMBOL_MM;
  const tries = wanted === 'fit' ? FITS_MM.filter((one) => one >= least) : [wanted];
  // Sizes grow evenly with the scale, but for the numbers beside: two drawings tell where to begin trying.
  const [small, large] = tries.length > 2 ? [at(tries.at(-1)!), at(PROBE_MM)] : [null, null];
  const likely = (mm: number): boolean => {
    if (!small || !large || small === large) return true;
    const share = (mm - small.mmPerStitch) / (large.mmPerStitch - small.mmPerStitch);
    return width(small) + share * (width(large) - width(small)) <= widthMm * 1.03 && height(small) + share * (height(large) - height(small)) <= heightMm * 1.03;
  };
  for (const mm of tries) {
    if (!likely(mm)) continue;
    const figure = at(mm);
    if (width(figure) <= widthMm && height(figure) <= heightMm) return figure;
  }
  return null;
}

const PROBE_MM = 4;

/** A chart at the scale that is asked for, where no page says how large it may be: to be cut, or as a file of its own. */
export function cutFigure({ choices: { mmPerStitch }, at }: Pick<ChartAsked, 'choices'> & { readonly at: FigureAt }): ChartFigure {
  return at(mmPerStitch === 'fit' ? CUT_MM : mmPerStitch);
}

function width({ drawing }: ChartFigure): number {
  return drawing.bounds.x1 - drawing.bounds.x0;
}

function height({ drawing }: ChartFigure): number {
  return drawing.bounds.y1 - drawing.bounds.y0;
}
