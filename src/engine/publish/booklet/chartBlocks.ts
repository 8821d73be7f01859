import { num } from '../../6-drawing/svgText.ts';
import { block, strip, type Block, type Strip } from '../page/block.ts';
import type { Format } from '../page/format.ts';
import { setText } from '../page/setText.ts';
import { figureSvg, fittedFigure, legendSvg, type ChartFigure } from '../charts/chartFigure.ts';
import type { PlannedChart } from '../charts/plannedCharts.ts';
import { heading } from './setBlocks.ts';

/** What the charts of a section give the page: their blocks, and those that are too large and must go on sheets of their own. */
export interface ChartsOnPage {
  readonly blocks: readonly Block[];
  readonly cut: readonly PlannedChart[];
}

/** A chart as it stands on a page: upright, or lying where it would be too small otherwise. */
interface Laid {
  readonly figure: ChartFigure;
  readonly lying: boolean;
}

const LEGEND_GAP_MM = 4;
/** Upright charts with smaller stitches than this are laid on their side, mm. */
const LEAST_UPRIGHT_MM = 2.5;
/** Room that a chart's heading and the line under it take. */
const WORDS_MM = { plain: 22, large: 34 } as const;

/**
 * The charts of one section with their headings, as large as pages allow; one legend where several charts have the same one. Charts
 * that fit on no page are only named.
 */
export function chartBlocks(charts: readonly PlannedChart[], withLegend: boolean, format: Format): ChartsOnPage {
  const cut: PlannedChart[] = [];
  const laidOut = charts.map((chart) => lay(chart, withLegend, charts.filter(({ kind }) => kind === chart.kind).length, format));
  const blocks = charts.flatMap((chart, i): readonly Block[] => {
    const title = chartTitle(chart);
    const head = heading(title, 3, format);
    const laid = laidOut[i] ?? null;
    if (!laid) {
      cut.push(chart);
      return [head, say('This chart is too large for a page of the booklet: it stands on sheets of its own at the end, to be joined.', format)];
    }
    const next = charts[i + 1];
    // The legend stands under the last of charts that share it.
    const shared = next !== undefined && next.kind === chart.kind && sameLegend(laid.figure, laidOut[i + 1]?.figure ?? null);
    return [head, ...placed(chart, laid, withLegend && !shared, format)];
  });
  return { blocks, cut };
}

function lay(chart: PlannedChart, withLegend: boolean, alike: number, format: Format): Laid | null {
  const words = format.large ? WORDS_MM.large : WORDS_MM.plain;
  const { at } = chart;
  // Charts of several sizes stand two on a page, so that they can be compared.
  const room = (alike > 1 ? format.heightMm / 2 : format.heightMm) - words;
  const fit = (wide: number, high: number, lying: boolean): ChartFigure | null => {
    const figure = fittedFigure(chart, at, wide, high);
    if (!figure || !withLegend) return figure;
    const legendMm = legendOf(chart, figure, format.widthMm).heightMm + LEGEND_GAP_MM;
    const over = lying ? widthOf(figure) + legendMm - wide : heightOf(figure) + legendMm - high;
    if (over <= 0) return figure;
    return (lying ? fittedFigure(chart, at, wide - legendMm, high) : fittedFigure(chart, at, wide, high - legendMm)) ?? figure;
  };
  const half = fit(format.widthMm, room, false);
  if (half && half.mmPerStitch >= LEAST_UPRIGHT_MM) return { figure: half, lying: false };
  const upright = alike > 1 ? fit(format.widthMm, format.heightMm - words, false) : half;
  if (upright && upright.mmPerStitch >= LEAST_UPRIGHT_MM) return { figure: upright, lying: false };
  const lying = fit(format.heightMm - words, format.widthMm, true);
  return lying ? { figure: lying, lying: true } : upright && { figure: upright, lying: false };
}

function placed(chart: PlannedChart, { figure, lying }: Laid, withLegend: boolean, format: Format): readonly Block[] {
  const facts = { rows: chart.shared.drawn.fabric.rows, yarnOf: chart.shared.drawn.colours.yarn };
  const [width, height] = [widthOf(figure), heightOf(figure)];
  const svg = figureSvg(figure, facts);
  const says = `Chart: ${chart.title}. The same in words stands beside it.`;
  const legend = withLegend ? legendOf(chart, figure, format.widthMm) : { svg: '', widthMm: 0, heightMm: 0 };
  const chartStrip: Strip = lying
    ? strip(width, { pictures: [{ xMm: (format.widthMm - height) / 2, yMm: 0, widthMm: height, heightMm: width, svg: `<g transform="translate(0 ${num(width)}) rotate(-90)">${svg}</g>`, says }] })
    : strip(height, { pictures: [{ xMm: Math.max(0, (format.widthMm - width) / 2), yMm: 0, widthMm: width, heightMm: height, svg, says }] });
  const legendStrip = strip(legend.heightMm + LEGEND_GAP_MM, { pictures: [{ xMm: 0, yMm: LEGEND_GAP_MM, widthMm: legend.widthMm, heightMm: legend.heightMm, svg: legend.svg, says: 'Legend' }] });
  return [
    // A legend that doesn't fit under its chart goes to the next page.
    block([chartStrip], 1.5, { withNext: legend.heightMm === 0 || (lying ? width : height) + legend.heightMm + LEGEND_GAP_MM <= format.heightMm - (format.large ? WORDS_MM.large : WORDS_MM.plain) }),
    ...(legend.heightMm === 0 ? [] : [block([legendStrip], 0, { withNext: true })]),
    say(`${lying ? 'Turn the page. ' : ''}${reading(figure, chart)} ${num(figure.mmPerStitch)} mm a stitch on paper.`, format),
  ];
}

function say(text: string, format: Format): Block {
  return block(setText({ runs: [{ text, face: 'italic', soft: true }], sizePt: format.smallPt, xMm: 0, widthMm: format.widthMm }, format.measure), 1.5);
}

function legendOf(chart: PlannedChart, figure: ChartFigure, widthMm: number): ReturnType<typeof legendSvg> {
  return legendSvg(figure, { rows: chart.shared.drawn.fabric.rows, yarnOf: chart.shared.drawn.colours.yarn }, widthMm);
}

function sameLegend(a: ChartFigure, b: ChartFigure | null): boolean {
  return b !== null && a.entries.map(({ text }) => text).join('\n') === b.entries.map(({ text }) => text).join('\n');
}

function widthOf({ drawing: { bounds } }: ChartFigure): number {
  return bounds.x1 - bounds.x0;
}

function heightOf({ drawing: { bounds } }: ChartFigure): number {
  return bounds.y1 - bounds.y0;
}

/** How a chart is read, in one line. */
function reading({ layout }: ChartFigure, { choices, shared }: PlannedChart): string {
  const wide = new Set(shared.spans.map(({ from, to }) => to - from)).size > 1;
  const way = layout === 'disc' || layout === 'oval' ? 'Read from round to round in the order of their numbers.'
    : `Read each row from the side its number stands on${choices.hand === 'left' ? ', drawn for the left hand' : ''}.`;
  return wide ? `${way} Each size works the stitches over its bracket.` : way;
}

/** What stands above a chart. */
export function chartTitle({ title, kind }: Pick<PlannedChart, 'title' | 'kind'>): string {
  const word = kind === 'colour' ? 'colour chart' : kind === 'symbol' ? 'stitch chart' : 'chart';
  // A section without a name: its chart is called by its kind alone.
  return title === 'Chart' ? `${word.charAt(0).toUpperCase()}${word.slice(1)}` : `${title} – ${word}`;
}
