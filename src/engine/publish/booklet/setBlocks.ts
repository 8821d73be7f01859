import { POINT_MM } from '../../6-drawing/textSize.ts';
import { leadingMm, type Run } from '../type/breakLines.ts';
import { printable } from '../type/printable.ts';
import { block, inCell, strip, type Block } from '../page/block.ts';
import type { Format } from '../page/format.ts';
import { setText, sideBySide } from '../page/setText.ts';

/** White between paragraphs that belong together, mm. */
export function gapMm({ bodyPt }: Format): number {
  return 0.42 * bodyPt * POINT_MM;
}

/** A heading of a part (1, with a rule above it), a section (2) or what is inside one (3); never the last on its page. */
export function heading(title: string, level: 1 | 2 | 3, format: Format, remark = ''): Block {
  const { headPt, subheadPt, bodyPt, widthMm, measure } = format;
  const shown = printable(title);
  const sizePt = level === 3 ? subheadPt : headPt;
  const lines = setText({ runs: [{ text: shown, face: 'strong' }], sizePt, xMm: 0, widthMm, leading: 1.15 }, measure);
  const under = remark === '' ? [] : setText({ runs: [{ text: printable(remark), face: 'italic' }], sizePt: bodyPt, xMm: 0, widthMm, leading: 1.3 }, measure);
  const rule = level === 3 ? [] : [strip(2.4, { rules: [{ x0Mm: 0, x1Mm: widthMm, yMm: 0.3, weightMm: 0.3 }] })];
  return block([...rule, ...lines, ...under, strip(level === 3 ? 0.6 : 2.2)], level === 3 ? 5 : 9, { withNext: true, heading: { title: shown, level } });
}

/** Blocks under a heading that hangs in the column left of the first of them, where that column is free; else under it. */
export function besideHeading(title: string, blocks: readonly Block[], format: Format): readonly Block[] {
  const [first, ...rest] = blocks;
  if (!first) return [];
  const { labelMm, subheadPt, measure } = format;
  if (labelMm === 0 || first.strips.some(({ texts }) => texts.some(({ xMm }) => xMm < labelMm))) return [heading(title, 3, format), ...blocks];
  const shown = printable(title);
  const head = setText({ runs: [{ text: shown, face: 'strong' }], sizePt: subheadPt, xMm: 0, widthMm: labelMm - 12, leading: 1.25 }, measure);
  return [{ ...first, strips: sideBySide(head, first.strips), beforeMm: 6.5, whole: true, heading: { title: shown, level: 3 } }, ...rest];
}

/** Text beside its label: the label hangs in the column left of the text, or stands above it in large print. */
export function labelled(label: string, runs: readonly Run[], format: Format, more: { readonly beforeMm?: number; readonly whole?: boolean; readonly sizePt?: number } = {}): Block {
  const { labelMm, widthMm, measure, bodyPt } = format;
  const sizePt = more.sizePt ?? bodyPt;
  const own = { beforeMm: gapMm(format), whole: true, ...more };
  const shown = printable(label);
  if (labelMm === 0) {
    const above = shown === '' ? [] : setText({ runs: [{ text: shown, face: 'bold' }], sizePt, xMm: 0, widthMm, leading: 1.25 }, measure);
    return block([...above, ...setText({ runs, sizePt, xMm: 0, widthMm }, measure)], own.beforeMm * 1.4, { whole: own.whole });
  }
  const left = shown === '' ? [] : setText({ runs: [{ text: shown, face: 'bold' }], sizePt, xMm: 0, widthMm: labelMm - 4 }, measure);
  const right = setText({ runs, sizePt, xMm: labelMm, widthMm: widthMm - labelMm }, measure);
  return block(sideBySide(left, right), own.beforeMm, { whole: own.whole });
}

/** A paragraph in the text column, parted between pages with two lines on either side. */
export function paragraph(text: string, format: Format, face: Run['face'] = 'text', more: { readonly beforeMm?: number; readonly sizePt?: number; readonly soft?: boolean } = {}): Block {
  const sizePt = more.sizePt ?? format.bodyPt;
  const runs = [{ text: printable(text), face, soft: more.soft ?? false }];
  return block(setText({ runs, sizePt, xMm: format.labelMm, widthMm: format.widthMm - format.labelMm }, format.measure), more.beforeMm ?? gapMm(format), { whole: false });
}

/** Paragraphs of a text that parts them by line ends; at most 400, so that a hostile text costs pages and not the machine. */
export function paragraphs(text: string, format: Format): readonly Block[] {
  return text.split(/[\r\n]+/).slice(0, 400).filter((one) => printable(one) !== '').map((one) => paragraph(one, format));
}

/** One cell of a table. */
export interface Cell {
  readonly runs: readonly Run[];
  readonly end?: boolean;
}

/** A table with columns of the given widths; a row a block, the first, which heads the columns, with a rule under it; the first column heads the rows; rows are never parted. */
export function table(rows: readonly (readonly Cell[])[], widthsMm: readonly number[], xMm: number, format: Format): readonly Block[] {
  const { measure, bodyPt } = format;
  const wide = widthsMm.reduce((sum, one) => sum + one, 0);
  return rows.map((cells, nth) => {
    let x = xMm;
    const columns = cells.map((cell, column) => {
      const room = widthsMm[column]! - 3;
      const lines = setText({ runs: cell.runs, sizePt: bodyPt, xMm: x, widthMm: room, leading: 1.3 }, measure);
      const moved = cell.end ? lines.map((line) => ({ ...line, texts: endAligned(line.texts, x + room) })) : lines;
      x += widthsMm[column]!;
      return inCell(moved, { row: nth, column, headOf: nth === 0 ? 'column' : column === 0 ? 'row' : null });
    });
    const strips = columns.reduce((all, column) => sideBySide(all, column), [] as ReturnType<typeof setText>);
    const rule = strip(nth === 0 ? 1.4 : 1, { rules: [{ x0Mm: xMm, x1Mm: xMm + wide - 3, yMm: 0.6, weightMm: nth === 0 ? 0.35 : 0.2 }] });
    return block([...strips, rule], nth === 0 ? gapMm(format) : 0.4, { withNext: nth < rows.length - 1 && (nth === 0 || nth === rows.length - 2) });
  });
}

function endAligned<T extends { readonly xMm: number; readonly widthMm: number }>(texts: readonly T[], endMm: number): T[] {
  const last = texts.at(-1);
  const shift = last ? endMm - (last.xMm + last.widthMm) : 0;
  return texts.map((text) => ({ ...text, xMm: text.xMm + shift }));
}

/** One line of print in a size, mm. */
export function lineMm(format: Format): number {
  return leadingMm(format.bodyPt);
}
