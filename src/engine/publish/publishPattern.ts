import type { Pattern } from '../1-pattern/pattern.ts';
import { writeWords } from '../readings/words/writeWords.ts';
import { chartBlocks } from './booklet/chartBlocks.ts';
import { editionsPart, imprintPart } from './booklet/closing.ts';
import { cautionsPart, gaugePart, materialsPart, sizesPart, wordsParts } from './booklet/needs.ts';
import { schematicBlocks, schematicFiles } from './booklet/schematicBlocks.ts';
import { sectionWords } from './booklet/sectionWords.ts';
import { heading } from './booklet/setBlocks.ts';
import { titlePart } from './booklet/titlePart.ts';
import { chartFiles, chartSheets } from './charts/chartFiles.ts';
import { legendFile } from './charts/legendFile.ts';
import { plannedCharts, type PlannedChart } from './charts/plannedCharts.ts';
import { fileWord } from './fileWord.ts';
import type { Block } from './page/block.ts';
import { pageFormat, type Format } from './page/format.ts';
import { pagesToSheets } from './page/pagesToSheets.ts';
import type { Publication, PublishedFile } from './publication.ts';
import { choiceProblems, type PublishChoices } from './publishChoices.ts';
import type { PrintedSheet } from './printedSheet.ts';
import { stepBlocks, stepFiles } from './steps/stepBlocks.ts';
import type { Measure } from './type/face.ts';
import { measureText } from './type/measureText.ts';
import { printable } from './type/printable.ts';
import { titled } from './titled.ts';
import { wordFiles } from './wordFiles.ts';
import { workedSizes, type WorkedPattern } from './workedSizes.ts';

/**
 * Everything that goes out of a pattern under one set of choices: the booklet's pages (or the chosen parts on pages of their
 * own), charts too large for a page on sheets to be joined, and every chart, schematic and text as a file. The same pattern and
 * choices give the same bytes. Refuses choices that `choiceProblems` finds fault with. Linear in stitches, pages and sizes;
 * about a second for a sock in three sizes.
 */
export function publishPattern(pattern: Pattern, choices: PublishChoices, measure: Measure = measureText): Publication {
  const problems = choiceProblems(pattern, choices);
  if (problems.length > 0) throw new RangeError(problems.join(' '));
  const worked = workedSizes(pattern, choices);
  const format = pageFormat(choices.paper, choices.largePrint, measure);
  const has = (part: PublishChoices['parts'][number]): boolean => choices.parts.includes(part);
  const charts = has('charts') ? plannedCharts(worked, choices) : [];
  const style = Object.keys(choices.style).length > 0 ? { style: choices.style } : {};
  const document = writeWords({ pattern: worked.pattern, sizes: worked.sizes.map(({ size, dressed, colours }) => ({ size, fabric: dressed, colours })), terms: choices.terms, ...style });
  const large: PlannedChart[] = [];
  const shown = has('booklet') ? charts.filter((chart) => !chart.plain || !has('words')) : charts;
  const sections = document.sections.flatMap((section): readonly Block[] => {
    const own = shown.filter(({ id }) => id === section.id);
    const rows = has('words') ? sectionWords(section, format) : own.length > 0 ? [heading(titled(printable(section.name) || 'Chart'), 2, format)] : [];
    const { blocks: drawn, cut } = chartBlocks(own, has('legend'), format);
    large.push(...cut);
    return [...rows, ...drawn];
  });
  const front = has('booklet') ? frontMatter(worked, choices, document, format) : [];
  const closing = [...(has('booklet') ? imprintPart(worked, format) : []), ...(has('errata') ? editionsPart(worked, format) : [])];
  const blocks = [
    ...front, ...sections,
    ...(has('steps') ? stepBlocks(worked, choices, format) : []),
    ...(has('schematic') ? schematicBlocks(worked, choices, format) : []),
    ...(closing.length > 0 ? [heading('About this pattern', 2, format), ...closing] : []),
  ];
  const title = printable(worked.pattern.title) || 'Untitled';
  const about = { title, creator: printable(worked.pattern.designer), rights: printable(worked.pattern.imprint?.licence ?? ''), date: worked.pattern.imprint?.date ?? null };
  const name = fileWord(title, 'pattern');
  const pages = blocks.length === 0 ? [] : pagesToSheets(blocks, format, { ...about, name, firstPlain: has('booklet') });
  const sheets: readonly PrintedSheet[] = [...pages, ...large.flatMap((chart) => chartSheets(chart, name))];
  const files: readonly PublishedFile[] = [
    ...charts.flatMap((chart) => chartFiles(chart, name)),
    ...(has('legend') ? legendFile(charts, name) : []),
    ...(has('schematic') ? schematicFiles(worked, choices, name) : []),
    ...(has('steps') ? stepFiles(worked, choices, format, name) : []),
    ...(has('words') ? wordFiles(document, name) : []),
  ];
  return { name, title, creator: about.creator, rights: about.rights, sheets, files, outline: sheets.flatMap((sheet, index) => sheet.outline.map((entry) => ({ ...entry, sheet: index }))) };
}

function frontMatter(worked: WorkedPattern, choices: PublishChoices, document: ReturnType<typeof writeWords>, format: Format): readonly Block[] {
  const [first, ...rest] = [
    ...sizesPart(worked, choices, format), ...materialsPart(worked, document, choices, format), ...gaugePart(worked, choices, format),
    ...wordsParts(document, format), ...cautionsPart(worked, format),
  ];
  const before = heading('Before you begin', 2, format);
  return [...titlePart(worked, choices, format), { ...before, newPage: true }, first!, ...rest];
}
