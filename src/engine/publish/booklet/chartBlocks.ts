import { block, strip, type Block } from '../page/block.ts';
import type { Format } from '../page/format.ts';
import { setText } from '../page/setText.ts';
import { figureSvg, fittedFigure, legendSvg, type ChartFigure } from '../charts/chartFigure.ts';
import type { PlannedChart } from '../charts/plannedCharts.ts';
import { heading } from './setBlocks.ts';

/** What a chart gives the page: its blocks, and the chart itself where it is too large and must go on sheets of its own. */
export interface ChartOnPage {
  readonly blocks: readonly Block[];
  readonly cut: boolean;
}

/** A chart with its heading and its legend, as large as the page allows; one that is too large for any page is only named. */
export function chartBlocks(chart: PlannedChart, withLegend: boolean, format: Format): ChartOnPage {
  const head = heading(chartTitle(chart), 3, format);
  const headMm = head.strips.reduce((sum, one) => sum + one.heightMm, 0);
  const say = (text: string): Block => block(setText({ runs: [{ text, face: 'italic', soft: true }], sizePt: format.smallPt, xMm: 0, widthMm: format.widthMm }, format.measure), 1.5);
  const facts = { rows: chart.shared.drawn.fabric.rows, yarnOf: chart.shared.drawn.colours.yarn };
  const room = format.heightMm - headMm - 12;
  const figure = fittedFigure(chart, format.widthMm, room);
  if (!figure) return { blocks: [head, say('This chart is too large for a page of the booklet: it stands on sheets of its own at the end, to be joined.')], cut: true };
  const fitted = withLegend && chart.choices.mmPerStitch === 'fit' ? besideLegend(chart, figure, room, format) : figure;
  const height = fitted.drawing.bounds.y1 - fitted.drawing.bounds.y0;
  const width = fitted.drawing.bounds.x1 - fitted.drawing.bounds.x0;
  const legend = withLegend ? legendSvg(fitted, facts, format.widthMm) : { svg: '', widthMm: 0, heightMm: 0 };
  const scale = `${Math.round(fitted.mmPerStitch * 100) / 100} mm a stitch on paper.`;
  const strips = [
    strip(height, { pictures: [{ xMm: Math.max(0, (format.widthMm - width) / 2), yMm: 0, widthMm: width, heightMm: height, svg: figureSvg(fitted, facts), says: `Chart: ${chart.title}. The same in words stands beside it.` }] }),
    ...(legend.heightMm === 0 ? [] : [strip(legend.heightMm + 4, { pictures: [{ xMm: 0, yMm: 4, widthMm: legend.widthMm, heightMm: legend.heightMm, svg: legend.svg, says: 'Legend' }] })]),
  ];
  return { blocks: [head, block(strips, 1.5, { withNext: true }), say(`${reading(fitted, chart)} ${scale}`)], cut: false };
}

/** How a chart is read, in one line. */
function reading({ layout }: ChartFigure, { choices, shared }: PlannedChart): string {
  const wide = new Set(shared.spans.map(({ from, to }) => to - from)).size > 1;
  const way = layout === 'disc' || layout === 'oval' ? 'Read from the middle outwards, or inwards where the numbers say so.'
    : `Read each row from the side its number stands on${choices.hand === 'left' ? ', drawn for the left hand' : ''}.`;
  return wide ? `${way} Each size works the stitches over its bracket.` : way;
}

/** A smaller chart where that brings its legend on to the same page. */
function besideLegend(chart: PlannedChart, figure: ChartFigure, room: number, format: Format): ChartFigure {
  const facts = { rows: chart.shared.drawn.fabric.rows, yarnOf: chart.shared.drawn.colours.yarn };
  const { heightMm } = legendSvg(figure, facts, format.widthMm);
  const height = figure.drawing.bounds.y1 - figure.drawing.bounds.y0;
  if (height + heightMm + 4 <= room) return figure;
  return fittedFigure(chart, format.widthMm, room - heightMm - 4) ?? figure;
}

/** What stands above a chart. */
export function chartTitle({ title, kind }: Pick<PlannedChart, 'title' | 'kind'>): string {
  return `${title} – ${kind === 'colour' ? 'colour chart' : kind === 'symbol' ? 'stitch chart' : 'chart'}`;
}
