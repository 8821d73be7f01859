import { PAPERS } from '../../6-drawing/paper.ts';
import { writeSheets } from '../../6-drawing/writeSheets.ts';
import { writeSvg, type SvgOptions } from '../../6-drawing/writeSvg.ts';
import { printable } from '../type/printable.ts';
import { chartTitle } from '../booklet/chartBlocks.ts';
import type { PrintedSheet } from '../printedSheet.ts';
import type { PublishedFile } from '../publication.ts';
import { shortName } from '../workedSizes.ts';
import { cutFigure, type ChartFigure } from './chartFigure.ts';
import { chartWords } from './chartWords.ts';
import type { PlannedChart } from './plannedCharts.ts';

/** A chart as one SVG at its true scale, with its rows in words inside, and those words as a text. */
export function chartFiles(chart: PlannedChart, name: string): readonly PublishedFile[] {
  const figure = cutFigure(chart);
  const words = wordsOf(chart);
  const title = fullTitle(chart);
  return [
    { name: `${name}-chart-${chart.word}.svg`, text: writeSvg(figure.drawing, svgOptions(chart, figure, words)) },
    { name: `${name}-chart-${chart.word}.txt`, text: `${title}\n\n${words.join('\n')}\n` },
  ];
}

/** A chart that is too large for a page on sheets of its own, to be joined. */
export function chartSheets(chart: PlannedChart, name: string): readonly PrintedSheet[] {
  const figure = cutFigure(chart);
  const words = wordsOf(chart);
  const texts = writeSheets(figure.drawing, PAPERS[chart.choices.paper], { ...svgOptions(chart, figure, words), repeatStitches: figure.repeatStitches });
  return texts.map((svg, i) => {
    const [, width, height] = /width="([\d.]+)mm" height="([\d.]+)mm"/.exec(svg) ?? [];
    return {
      name: `${name}-chart-${chart.word}-${String(i + 1).padStart(String(texts.length).length, '0')}`, title: `${chart.title}, sheet ${i + 1} of ${texts.length}`, widthMm: Number(width), heightMm: Number(height), svg,
      outline: i === 0 ? [{ title: chartTitle(chart), level: 2, yMm: 10 }] : [],
    };
  });
}

/** A title longer than this is no title: a sheet has two lines for it and cuts off what is over. */
const LONGEST_TITLE = 300;

function wordsOf({ worked, shared, section, choices }: PlannedChart): readonly string[] {
  return chartWords(worked, shared.drawn, section, choices.terms, choices.style);
}

function fullTitle(chart: PlannedChart): string {
  return shortName(`${printable(chart.worked.pattern.title) || 'Untitled'}: ${chartTitle(chart)}`, LONGEST_TITLE);
}

function svgOptions(chart: PlannedChart, figure: ChartFigure, words: readonly string[]): SvgOptions {
  const { pattern } = chart.worked;
  return {
    look: figure.look, yarnOf: chart.shared.drawn.colours.yarn, rows: chart.shared.drawn.fabric.rows,
    title: fullTitle(chart), desc: `${words.join(' ')} ${figure.mmPerStitch} mm a stitch.`,
    creator: printable(pattern.designer), rights: printable(pattern.imprint?.licence ?? ''), date: printable(pattern.imprint?.date ?? ''),
    legend: chart.choices.parts.includes('legend') ? figure.entries : [],
  };
}
