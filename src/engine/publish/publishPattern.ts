import type { Pattern } from '../1-pattern/pattern.ts';
import { writeWords } from '../readings/words/writeWords.ts';
import { bookletBlocks } from './booklet/bookletBlocks.ts';
import { schematicFiles } from './booklet/schematicBlocks.ts';
import { chartFiles, chartSheets } from './charts/chartFiles.ts';
import { legendFile } from './charts/legendFile.ts';
import { plannedCharts } from './charts/plannedCharts.ts';
import { drained } from './drained.ts';
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
import { workSizes } from './workedSizes.ts';

/** How publishing may be asked for beyond the choices. */
export interface PublishAsked {
  readonly measure?: Measure;
  /** Without: only the sheets, and no files beside them. */
  readonly files?: boolean;
}

/**
 * Everything that goes out of a pattern under one set of choices: the booklet's pages (or the chosen parts on pages of their
 * own), charts too large for a page on sheets to be joined, and every chart, schematic, step and text as a file. The same pattern
 * and choices give the same bytes. Refuses choices that `choiceProblems` finds fault with. Linear in stitches, pages and sizes;
 * about two seconds for a sock in three sizes, half of it where the same pattern object was published before.
 */
export function publishPattern(pattern: Pattern, choices: PublishChoices, asked: PublishAsked = {}): Publication {
  return drained(publishSteps(pattern, choices, asked));
}

/** The same step by step, for a caller that wants to show how far it is or to stop: yields the share that is done before each part. */
export function* publishSteps(pattern: Pattern, choices: PublishChoices, { measure = measureText, files: wantsFiles = true }: PublishAsked = {}): Generator<number, Publication> {
  const problems = choiceProblems(pattern, choices);
  if (problems.length > 0) throw new RangeError(problems.join(' '));
  const parts = partCount(pattern, choices, wantsFiles);
  let done = 0;
  const share = (): number => Math.min(1, done++ / parts);
  const worked = yield* counted(workSizes(pattern, choices), share);
  const format = pageFormat(choices.paper, choices.largePrint, measure);
  const has = (part: PublishPart): boolean => choices.parts.includes(part);
  yield share();
  const charts = has('charts') ? plannedCharts(worked, choices) : [];
  const style = Object.keys(choices.style).length > 0 ? { style: choices.style } : {};
  const document = writeWords({ pattern: worked.pattern, sizes: worked.sizes.map(({ size, dressed, colours }) => ({ size, fabric: dressed, colours })), terms: choices.terms, ...style });
  const { blocks, cut } = yield* counted(bookletBlocks(worked, document, charts, choices, format), share);
  yield share();
  const title = printable(worked.pattern.title) || 'Untitled';
  const about = { title, creator: printable(worked.pattern.designer), rights: printable(worked.pattern.imprint?.licence ?? ''), date: printable(worked.pattern.imprint?.date ?? '') };
  const name = fileWord(title, 'pattern');
  const sheets: PrintedSheet[] = blocks.length === 0 ? [] : [...pagesToSheets(blocks, format, { ...about, name, firstPlain: has('booklet') })];
  for (const chart of cut) {
    yield share();
    sheets.push(...chartSheets(chart, name));
  }
  const files: PublishedFile[] = [];
  if (wantsFiles) {
    for (const chart of charts) {
      yield share();
      files.push(...chartFiles(chart, name));
    }
    yield share();
    files.push(
      ...(has('legend') ? legendFile(charts, name) : []),
      ...(has('schematic') ? schematicFiles(worked, choices, name) : []),
      ...(has('steps') ? stepFiles(worked, choices, format, name) : []),
      ...(has('words') ? wordFiles(document, name) : []),
      ...(has('errata') ? editionsFile(worked.pattern, name) : []),
    );
  }
  return { name, title, creator: about.creator, rights: about.rights, sheets, files, outline: sheets.flatMap((sheet, index) => sheet.outline.map((entry) => ({ ...entry, sheet: index }))) };
}

/** About how many parts there will be: sizes, words, the parts of the booklet, and charts as files. */
function partCount(pattern: Pattern, { sizes, charts }: PublishChoices, files: boolean): number {
  const sections = pattern.sections.length;
  return (sizes === 'all' ? pattern.sizes.length : 1) + 6 + sections + (files ? sections * charts.length + 1 : 0);
}

function* counted<T>(steps: Generator<void, T>, share: () => number): Generator<number, T> {
  for (;;) {
    const step = steps.next();
    if (step.done) return step.value;
    yield share();
  }
}
