import type { WordsDocument } from '../../readings/words/wordsDocument.ts';
import type { PlannedChart } from '../charts/plannedCharts.ts';
import type { Block } from '../page/block.ts';
import type { Format } from '../page/format.ts';
import type { PublishChoices, PublishPart } from '../publishChoices.ts';
import { stepBlocks } from '../steps/stepBlocks.ts';
import { titled } from '../../notation/titled.ts';
import { printable } from '../type/printable.ts';
import type { WorkedPattern } from '../workedSizes.ts';
import { chartBlocks } from './chartBlocks.ts';
import { cautionsPart } from './cautionsPart.ts';
import { withContents } from './contents.ts';
import { editionsPart, imprintPart } from './closing.ts';
import { gaugePart, materialsPart, sizesPart, wordsParts } from './needs.ts';
import { schematicBlocks } from './schematicBlocks.ts';
import { sectionWords } from './sectionWords.ts';
import { heading } from './setBlocks.ts';
import { titlePart } from './titlePart.ts';

/** What is set on pages, in reading order, and the charts that no page can hold. */
export interface BookletBlocks {
  readonly blocks: readonly Block[];
  readonly cut: readonly PlannedChart[];
}

/**
 * The chosen parts as blocks: a title page and what is needed to begin (in a booklet), each section's rows with its charts after
 * them, steps, schematic, and what is said about the pattern. In a booklet that has the rows in words, charts that say no more are left
 * out. A step before each part.
 */
export function* bookletBlocks(worked: WorkedPattern, document: WordsDocument, charts: readonly PlannedChart[], choices: PublishChoices, format: Format): Generator<void, BookletBlocks> {
  const has = (part: PublishPart): boolean => choices.parts.includes(part);
  const cut: PlannedChart[] = [];
  const blocks: Block[] = [];
  if (has('booklet')) {
    yield;
    blocks.push(...titlePart(worked, choices, format));
    yield;
    blocks.push(...beforeBeginning(worked, document, choices, format));
  }
  const shown = has('booklet') && has('words') ? charts.filter(({ plain }) => !plain) : charts;
  for (const section of document.sections) {
    yield;
    const own = shown.filter(({ id }) => id === section.id);
    const rows = has('words') ? sectionWords(section, format) : own.length > 0 ? [heading(titled(printable(section.name)) || 'Chart', 2, format)] : [];
    const drawn = chartBlocks(own, has('legend'), format);
    cut.push(...drawn.cut);
    blocks.push(...rows, ...drawn.blocks);
  }
  if (has('steps')) {
    yield;
    blocks.push(...stepBlocks(worked, choices, format));
  }
  if (has('schematic')) {
    yield;
    blocks.push(...schematicBlocks(worked, choices, format));
  }
  const closing = [...(has('booklet') ? imprintPart(worked, format) : []), ...(has('errata') ? editionsPart(worked, format) : [])];
  if (closing.length > 0) blocks.push(heading('About this pattern', 2, format), ...closing);
  return { blocks: has('booklet') ? withContents(blocks, format) : blocks, cut };
}

function beforeBeginning(worked: WorkedPattern, document: WordsDocument, choices: PublishChoices, format: Format): readonly Block[] {
  return [
    { ...heading('Before you begin', 2, format), newPage: true },
    ...sizesPart(worked, choices, format), ...materialsPart(worked, document, choices, format), ...gaugePart(worked, choices, format), ...wordsParts(document, format), ...cautionsPart(worked, format),
  ];
}
