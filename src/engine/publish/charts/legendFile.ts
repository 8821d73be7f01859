import { legendDefs, svgLegend } from '../../6-drawing/svgLegend.ts';
import { svgHead } from '../../6-drawing/svgHead.ts';
import { num } from '../../6-drawing/svgText.ts';
import { shownLegend } from '../../6-drawing/writeSvg.ts';
import { printable } from '../type/printable.ts';
import type { PublishedFile } from '../publication.ts';
import { cutFigure } from './chartFigure.ts';
import type { PlannedChart } from './plannedCharts.ts';

const MARGIN_MM = 4;
const WIDTH_MM = 150;

/** One legend of everything that the charts of a publication use, each sign once, as a file of its own; none without charts. */
export function legendFile(charts: readonly PlannedChart[], name: string): readonly PublishedFile[] {
  const figures = charts.map((chart) => ({ chart, figure: cutFigure(chart) }));
  const seen = new Set<string>();
  const entries = figures.flatMap(({ chart, figure }) => shownLegend({ title: '', desc: '', look: figure.look, rows: chart.shared.drawn.fabric.rows, yarnOf: chart.shared.drawn.colours.yarn, legend: figure.entries }, 1))
    .filter((entry) => {
      const key = `${entry.kind} ${entry.text}`;
      return seen.has(key) ? false : (seen.add(key), true);
    });
  const [first] = figures;
  if (!first || entries.length === 0) return [];
  const order = ['yarn', 'stitch', 'line', 'area'];
  const sorted = entries.map((entry, i) => ({ entry, i })).sort((a, b) => order.indexOf(a.entry.kind) - order.indexOf(b.entry.kind) || a.i - b.i).map(({ entry }) => entry);
  const set = svgLegend(sorted, first.figure.drawing, first.figure.look, 0, 0, WIDTH_MM);
  const { pattern } = first.chart.worked;
  const title = `${printable(pattern.title) || 'Untitled'}: legend`;
  const box = { x: -MARGIN_MM, y: -MARGIN_MM, width: set.widthMm + 2 * MARGIN_MM, height: set.heightMm + 2 * MARGIN_MM };
  const head = svgHead(box, { title, desc: `Signs of the charts: ${sorted.map(({ text }) => text).join('; ')}.`, creator: printable(pattern.designer) });
  const defs = legendDefs(sorted, []);
  return [{ name: `${name}-legend.svg`, text: `${head}\n${defs === '' ? '' : `<defs>${defs}</defs>\n`}<rect id="paper" x="${num(box.x)}" y="${num(box.y)}" width="${num(box.width)}" height="${num(box.height)}" fill="#ffffff"/>\n${set.svg}\n</svg>\n` }];
}
