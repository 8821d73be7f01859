import { printSchematic, type SchematicFile } from '../../6-drawing/schematic/printSchematic.ts';
import { block, strip, type Block } from '../page/block.ts';
import type { Format } from '../page/format.ts';
import { insideOf, shrunk } from '../page/insideOf.ts';
import type { PublishChoices } from '../publishChoices.ts';
import type { PublishedFile } from '../publication.ts';
import { fileWord, uniqueWords } from '../../notation/fileWord.ts';
import { POINT_MM } from '../../6-drawing/textSize.ts';
import { printable } from '../type/printable.ts';
import type { WorkedPattern } from '../workedSizes.ts';
import { heading } from './setBlocks.ts';

/** Sizes of text in points: on pages, in files, in large print. */
const TEXT_PT = { page: 8.5, file: 8, large: 12 } as const;

/**
 * The schematics of every size, the finished piece and its sections laid flat, at a round scale that fits the page; in large print each
 * section by itself.
 */
export function schematicBlocks({ pattern, sizes }: WorkedPattern, { largePrint: large, lengths }: PublishChoices, format: Format): readonly Block[] {
  const textMm = (large ? TEXT_PT.large : TEXT_PT.page) * POINT_MM;
  const room = large ? format.heightMm * 0.8 : format.heightMm * 0.42;
  const blocks = sizes.flatMap(({ fabric, colours, size, name }) => {
    const drawings = printSchematic(pattern, fabric, colours.yarn, size, { textMm, widthMm: format.widthMm, heightMm: room, lengths, large });
    const finished = drawings.filter(({ shows }) => shows === 'finished');
    const ordered = [...finished, ...drawings.filter(({ shows }) => shows === 'flat')];
    return ordered.flatMap((drawing): readonly Block[] => {
      const title = titleOf(drawing, drawings.length === 1, sizes.length > 1 ? printable(name) : '');
      const { svg, widthMm, heightMm } = shrunk(insideOf(drawing.text), { widthMm: format.widthMm, heightMm: format.heightMm - 30 });
      return [
        ...(title === '' ? [] : [heading(title, 3, format)]),
        block([strip(heightMm, { pictures: [{ xMm: (format.widthMm - widthMm) / 2, yMm: 0, widthMm, heightMm, svg, says: `Schematic${title === '' ? '' : `, ${title}`}` }] })], 1),
      ];
    });
  });
  return blocks.length === 0 ? [] : [heading('Schematic', 2, format), ...blocks];
}

/** What stands above a drawing; nothing over the only one, which the part's own heading names. */
function titleOf({ shows, section }: SchematicFile, alone: boolean, size: string): string {
  if (alone) return size === '' ? '' : `Size ${size}`;
  const what = shows === 'finished' ? 'Finished' : section === '' ? 'Sections laid flat' : `${section}, laid flat`;
  return size === '' ? what : `${what}, size ${size}`;
}

/** The schematics as files of their own. */
export function schematicFiles({ pattern, sizes }: WorkedPattern, { largePrint: large, lengths }: PublishChoices, name: string): readonly PublishedFile[] {
  const unique = uniqueWords();
  return sizes.flatMap(({ fabric, colours, size, name: sizeName }) => printSchematic(pattern, fabric, colours.yarn, size, { textMm: (large ? TEXT_PT.large : TEXT_PT.file) * POINT_MM, lengths, large })
    .map(({ text, shows, section }) => ({ name: `${unique([name, 'schematic', shows === 'flat' ? 'flat' : '', fileWord(section), sizes.length > 1 ? fileWord(sizeName, `size-${size + 1}`) : ''].filter((part) => part !== '').join('-'))}.svg`, text })));
}
