import type { Pattern } from '../1-pattern/pattern.ts';
import { writeWords } from '../readings/words/writeWords.ts';
import { bookletBlocks } from './booklet/bookletBlocks.ts';
import { schematicFiles } from './booklet/schematicBlocks.ts';
import { chartFiles, chartSheets } from './charts/chartFiles.ts';
import { legendFile } from './charts/legendFile.ts';
import { plannedCharts } from './charts/plannedCharts.ts';
import { editionsFile } from './editionsFile.ts';
import { fileWord } from '../notation/fileWord.ts';
import { pageFormat } from './page/format.ts';
import { pagesToSheets } from './page/pagesToSheets.ts';
import type { Publication, PublishedFile } from './publication.ts';
import { choiceProblems, type PublishChoices, type PublishPart } from './publishChoices.ts';
import type { PrintedSheet } from './printedSheet.ts';
import { stepFiles } from './steps/stepBlocks.ts';
import type { Measure } from './type/face.ts';
import { measureText } from './type/measureText.ts';
import { printable } from './type/printable.ts';
import { wordFiles } from './wordFiles.ts';
import { workedSizes } from './workedSizes.ts';

/**
 * Everything that goes out of a pattern under one set of choices: the booklet's pages (or the chosen parts on pages of their
 * own), charts too large for a page on sheets to be joined, and every chart, schematic, step and text as a file. The same pattern
 * and choices give the same bytes. Refuses choices that `choiceProblems` finds fault with. Linear in stitches, pages and sizes;
 * about two seconds for a sock in three sizes.
 */
export function publishPattern(pattern: Pattern, choices: PublishChoices, measure: Measure = measureText): Publication {
  const problems = choiceProblems(pattern, choices);
  if (problems.length > 0) throw new RangeError(problems.join(' '));
  const worked = workedSizes(pattern, choices);
  const format = pageFormat(choices.paper, choices.largePrint, measure);
  const has = (part: PublishPart): boolean => choices.parts.includes(part);
  const charts = has('charts') ? plannedCharts(worked, choices) : [];
  const style = Object.keys(choices.style).length > 0 ? { style: choices.style } : {};
  const document = writeWords({ pattern: worked.pattern, sizes: worked.sizes.map(({ size, dressed, colours }) => ({ size, fabric: dressed, colours })), terms: choices.terms, ...style });
  const { blocks, cut } = bookletBlocks(worked, document, charts, choices, format);
  const title = printable(worked.pattern.title) || 'Untitled';
  const about = { title, creator: printable(worked.pattern.designer), rights: printable(worked.pattern.imprint?.licence ?? ''), date: printable(worked.pattern.imprint?.date ?? '') };
  const name = fileWord(title, 'pattern');
  const pages = blocks.length === 0 ? [] : pagesToSheets(blocks, format, { ...about, name, firstPlain: has('booklet') });
  const sheets: readonly PrintedSheet[] = [...pages, ...cut.flatMap((chart) => chartSheets(chart, name))];
  const files: readonly PublishedFile[] = [
    ...charts.flatMap((chart) => chartFiles(chart, name)),
    ...(has('legend') ? legendFile(charts, name) : []),
    ...(has('schematic') ? schematicFiles(worked, choices, name) : []),
    ...(has('steps') ? stepFiles(worked, choices, format, name) : []),
    ...(has('words') ? wordFiles(document, name) : []),
    ...(has('errata') ? editionsFile(worked.pattern, name) : []),
  ];
  return { name, title, creator: about.creator, rights: about.rights, sheets, files, outline: sheets.flatMap((sheet, index) => sheet.outline.map((entry) => ({ ...entry, sheet: index }))) };
}
