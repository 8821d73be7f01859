import { PAPERS, type Paper } from '../../6-drawing/paper.ts';
import type { Measure } from '../type/face.ts';

/** The page and its type: margins and columns in mm, sizes in points. */
export interface Format {
  readonly paper: Paper;
  readonly measure: Measure;
  /** Binding side and the other; mirrored on even pages. */
  readonly innerMm: number;
  readonly outerMm: number;
  readonly topMm: number;
  readonly bottomMm: number;
  /** Width and height of what is set. */
  readonly widthMm: number;
  readonly heightMm: number;
  /** Column of labels (row numbers, names of parts) left of the text; 0: labels stand above their text. */
  readonly labelMm: number;
  readonly large: boolean;
  readonly bodyPt: number;
  readonly smallPt: number;
  readonly titlePt: number;
  readonly headPt: number;
  readonly subheadPt: number;
}

/** Binding margin of 20 mm, 15 mm outside, and white at head and foot for running head and page number. */
const [INNER_MM, OUTER_MM, TOP_MM, BOTTOM_MM] = [20, 15, 22, 20];

/**
 * The page of a paper. The text column is about 65 characters wide, with the labels hung beside it; in large print (18 pt, nothing
 * under 12 pt) labels stand above the text, which takes the whole width.
 */
export function pageFormat(paper: Paper['name'], large: boolean, measure: Measure): Format {
  const sheet = PAPERS[paper];
  const widthMm = sheet.widthMm - INNER_MM - OUTER_MM;
  const heightMm = sheet.heightMm - TOP_MM - BOTTOM_MM;
  const type = large
    ? { bodyPt: 18, smallPt: 14, titlePt: 38, headPt: 26, subheadPt: 20, labelMm: 0 }
    : { bodyPt: 10.5, smallPt: 8.5, titlePt: 34, headPt: 18, subheadPt: 11.5, labelMm: 38 };
  return { paper: sheet, measure, innerMm: INNER_MM, outerMm: OUTER_MM, topMm: TOP_MM, bottomMm: BOTTOM_MM, widthMm, heightMm, large, ...type };
}
