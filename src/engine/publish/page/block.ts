import type { Face } from '../type/face.ts';

/** Where a text stands in a table: row and column from 0, and what it is the head of. */
export interface TableCell {
  readonly row: number;
  readonly column: number;
  readonly headOf: 'column' | 'row' | null;
}

/** A text of one line in one face, placed in its strip: `yMm` is the baseline. */
export interface PlacedText {
  readonly xMm: number;
  readonly yMm: number;
  readonly text: string;
  readonly face: Face;
  readonly sizePt: number;
  /** As measured. */
  readonly widthMm: number;
  readonly anchor: 'start' | 'middle' | 'end';
  readonly soft: boolean;
  /** Goes on with the text before it on the same line, after a space or without one. */
  readonly follows?: 'space' | 'close';
  /** Left out of what stands in no table. */
  readonly cell?: TableCell;
}

/** A thin line across a strip. */
export interface PlacedRule {
  readonly x0Mm: number;
  readonly x1Mm: number;
  readonly yMm: number;
  readonly weightMm: number;
}

/** A drawing in a strip. `svg` is its inside, in mm from its own (0, 0); every id in it is its own within one document. */
export interface PlacedPicture {
  readonly xMm: number;
  readonly yMm: number;
  readonly widthMm: number;
  readonly heightMm: number;
  readonly svg: string;
  /** What it shows, in words. */
  readonly says: string;
}

/** What is never parted by the end of a page: a line of text, a row of a table, a picture with its words. */
export interface Strip {
  readonly heightMm: number;
  readonly texts: readonly PlacedText[];
  readonly rules: readonly PlacedRule[];
  readonly pictures: readonly PlacedPicture[];
}

/** A paragraph, row, heading, table or picture, in strips from the top down. */
export interface Block {
  readonly strips: readonly Strip[];
  /** White above it; left out at the top of a page. */
  readonly beforeMm: number;
  /** Held on one page unless it is higher than a page; else parted so that two strips stand on either side. */
  readonly whole: boolean;
  /** Not the last on its page: headings, and captions above what they name. */
  readonly withNext: boolean;
  /** Begins a page. */
  readonly newPage: boolean;
  readonly heading: { readonly title: string; readonly level: 1 | 2 | 3 } | null;
}

/** A block of strips with the usual settings. */
export function block(strips: readonly Strip[], beforeMm: number, more: Partial<Omit<Block, 'strips' | 'beforeMm'>> = {}): Block {
  return { strips, beforeMm, whole: true, withNext: false, newPage: false, heading: null, ...more };
}

/** Strips whose texts stand in a cell of a table. */
export function inCell(strips: readonly Strip[], cell: TableCell): Strip[] {
  return strips.map((one) => ({ ...one, texts: one.texts.map((text) => ({ ...text, cell })) }));
}

/** A strip with nothing in it but what is given. */
export function strip(heightMm: number, parts: Partial<Omit<Strip, 'heightMm'>> = {}): Strip {
  return { heightMm, texts: [], rules: [], pictures: [], ...parts };
}
