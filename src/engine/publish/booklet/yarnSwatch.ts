import type { Yarn } from '../../1-pattern/pattern.ts';
import { printLook } from '../../6-drawing/look.ts';
import { printMark } from '../../6-drawing/printMark.ts';
import { attributes, pathData } from '../../6-drawing/svgText.ts';
import type { Block } from '../page/block.ts';
import type { Format } from '../page/format.ts';

/** A block with a cell of a yarn beside its first line: in its colour, or with its print mark where print is black and white. */
export function yarnSwatch(yarn: Yarn, block: Block, mono: boolean, format: Format): Block {
  const [first, ...others] = block.strips;
  if (!first) return block;
  const [width, height] = format.large ? [9, 6] : [6.5, 4.2];
  const picture = { xMm: Math.max(0, format.labelMm - width - 4), yMm: (first.heightMm - height) / 2, widthMm: width, heightMm: height, svg: cellSvg(yarn, width, height, mono), says: `Yarn ${yarn.letter}` };
  // In large print there is no column beside the text: the cell stands on a line of its own.
  if (format.labelMm === 0) return { ...block, strips: [{ heightMm: height + 1, texts: [], rules: [], pictures: [{ ...picture, xMm: 0, yMm: 0.5 }] }, ...block.strips] };
  return { ...block, strips: [{ ...first, pictures: [picture] }, ...others] };
}

function cellSvg(yarn: Yarn, width: number, height: number, mono: boolean): string {
  const look = printLook([yarn], { mono });
  const corners = [0, height, width, height, width, 0, 0, 0];
  const solid = mono && yarn.mark === 'solid';
  const cell = `<path${attributes({ d: pathData(corners, true), fill: solid ? look.markInk : mono ? look.paper : yarn.colour, stroke: look.gridStrongInk, 'stroke-width': 0.2 })}/>`;
  const mark = mono && !solid ? printMark(yarn.mark, corners, 'whole') : null;
  return cell + (mark?.filled ? `<path${attributes({ fill: look.markInk, d: mark.filled })}/>` : '') + (mark?.stroked ? `<path${attributes({ fill: 'none', stroke: look.markInk, 'stroke-width': look.lineMm, d: mark.stroked })}/>` : '');
}
