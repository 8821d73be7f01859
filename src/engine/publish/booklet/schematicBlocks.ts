import { printSchematic } from '../../6-drawing/schematic/printSchematic.ts';
import { block, strip, type Block } from '../page/block.ts';
import type { Format } from '../page/format.ts';
import { insideOf, shrunk } from '../page/insideOf.ts';
import type { PublishChoices } from '../publishChoices.ts';
import type { PublishedFile } from '../publication.ts';
import { fileWord } from '../fileWord.ts';
import { POINT_MM } from '../../6-drawing/textSize.ts';
import { printable } from '../type/printable.ts';
import type { WorkedPattern } from '../workedSizes.ts';
import { heading } from './setBlocks.ts';

/** The schematics of every size: the finished piece and its sections laid flat, at a round scale that fits the page. */
export function schematicBlocks({ pattern, sizes }: WorkedPattern, { largePrint }: PublishChoices, format: Format): readonly Block[] {
  const textMm = (largePrint ? 12 : 8.5) * POINT_MM;
  const room = format.large ? format.heightMm * 0.8 : format.heightMm * 0.42;
  const blocks = sizes.flatMap(({ fabric, colours, size, name }) => {
    const drawings = printSchematic(pattern, fabric, colours.yarn, size, { textMm, widthMm: format.widthMm, heightMm: room });
    return [...drawings].reverse().flatMap(({ text }, i, all) => {
      const title = `${i === 0 ? 'Finished' : 'Sections laid flat'}${printable(name) === '' || sizes.length < 2 ? '' : `, size ${printable(name)}`}`;
      const { svg, widthMm, heightMm } = shrunk(insideOf(text), { widthMm: format.widthMm, heightMm: format.heightMm - 30 });
      return [heading(i === 0 && all.length === 1 ? title.replace('Finished', 'Schematic') : title, 3, format), block([strip(heightMm, { pictures: [{ xMm: (format.widthMm - widthMm) / 2, yMm: 0, widthMm, heightMm, svg, says: `Schematic, ${title}` }] })], 1)];
    });
  });
  return blocks.length === 0 ? [] : [heading('Schematic', 2, format), ...blocks];
}

/** The schematics as files of their own. */
export function schematicFiles({ pattern, sizes }: WorkedPattern, { largePrint }: PublishChoices, name: string): readonly PublishedFile[] {
  return sizes.flatMap(({ fabric, colours, size, name: sizeName }) => printSchematic(pattern, fabric, colours.yarn, size, { textMm: (largePrint ? 12 : 8) * POINT_MM })
    .map(({ text }, i, all) => ({ name: `${[name, 'schematic', i === 0 && all.length > 1 ? 'flat' : '', sizes.length > 1 ? fileWord(sizeName, `size-${size + 1}`) : ''].filter((part) => part !== '').join('-')}.svg`, text })));
}
