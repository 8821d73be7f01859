/**
 * One printed sheet: a whole SVG document in millimetres (one user unit is one millimetre) that needs nothing from outside.
 * The page that is seen, the page that is printed, the PDF and the picture are all made from this one text.
 */
export interface PrintedSheet {
  /** File name without its extension: letters, digits and hyphens, the same for the same pattern and choices. */
  readonly name: string;
  /** What a person calls this sheet, for a list or a heading. */
  readonly title: string;
  readonly widthMm: number;
  readonly heightMm: number;
  readonly svg: string;
  /** The headings that begin on this sheet, in reading order: a PDF's bookmarks. */
  readonly outline: readonly OutlineEntry[];
}

export interface OutlineEntry {
  readonly title: string;
  /** 1: a part of the booklet; 2: a section; 3: what is inside a section. */
  readonly level: 1 | 2 | 3;
  /** From the sheet's upper edge down. */
  readonly yMm: number;
}
