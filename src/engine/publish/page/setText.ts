import { POINT_MM } from '../../6-drawing/textSize.ts';
import { breakLines, leadingMm, type Run } from '../type/breakLines.ts';
import type { Face, Measure } from '../type/face.ts';
import { strip, type PlacedText, type Strip } from './block.ts';

/** A paragraph to be set in a column. */
export interface Paragraph {
  readonly runs: readonly Run[];
  readonly sizePt: number;
  readonly xMm: number;
  readonly widthMm: number;
  /** Further lines begin so far in. */
  readonly hangMm?: number;
  /** Leading in sizes. */
  readonly leading?: number;
  readonly anchor?: 'start' | 'middle';
}

/** The lines of a paragraph, a strip each. */
export function setText({ runs, sizePt, xMm, widthMm, hangMm = 0, leading, anchor = 'start' }: Paragraph, measure: Measure): Strip[] {
  const height = leadingMm(sizePt, leading);
  const lines = breakLines(runs, sizePt, widthMm - hangMm, measure, -hangMm);
  return lines.map((line, index) => {
    const long = line.at(-1)!.xMm + line.at(-1)!.widthMm;
    const start = anchor === 'middle' ? xMm + (widthMm - long) / 2 : xMm + (index === 0 ? 0 : hangMm);
    return strip(height, { texts: line.map((run, nth): PlacedText => {
      const before = line[nth - 1];
      const follows = before === undefined ? {} : { follows: run.xMm - before.xMm - before.widthMm > 1e-6 ? 'space' as const : 'close' as const };
      return { xMm: start + run.xMm, yMm: baseline(height, sizePt), text: run.text, face: run.face, sizePt, widthMm: run.widthMm, anchor: 'start', soft: run.soft ?? false, ...follows };
    }) });
  });
}

/** The baseline of a line of the given height: the letters stand in its middle. */
export function baseline(heightMm: number, sizePt: number): number {
  return heightMm / 2 + 0.33 * sizePt * POINT_MM;
}

/** One line that is not broken: what is measured must fit. */
export function oneLine(text: string, face: Face, sizePt: number, xMm: number, yMm: number, measure: Measure, anchor: PlacedText['anchor'] = 'start', soft = false): PlacedText {
  return { xMm, yMm, text, face, sizePt, widthMm: measure(text, face, sizePt), anchor, soft };
}

/** Two columns of strips side by side, line by line: the label's lines beside the text's. */
export function sideBySide(left: readonly Strip[], right: readonly Strip[]): Strip[] {
  return Array.from({ length: Math.max(left.length, right.length) }, (_, i) => {
    const both = [left[i], right[i]].filter((one) => one !== undefined);
    return { heightMm: Math.max(...both.map((one) => one.heightMm)), texts: both.flatMap((one) => one.texts), rules: both.flatMap((one) => one.rules), pictures: both.flatMap((one) => one.pictures) };
  });
}
