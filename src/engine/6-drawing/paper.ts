/** A sheet of paper, mm. */
export interface Paper {
  readonly name: 'a4' | 'letter';
  readonly widthMm: number;
  readonly heightMm: number;
}

/** A4 (ISO 216) and US Letter (8.5 × 11 in), upright. */
export const PAPERS = {
  a4: { name: 'a4', widthMm: 210, heightMm: 297 },
  letter: { name: 'letter', widthMm: 215.9, heightMm: 279.4 },
} as const satisfies Record<Paper['name'], Paper>;

/** The same paper lying down. */
export function landscape(paper: Paper): Paper {
  return { ...paper, widthMm: paper.heightMm, heightMm: paper.widthMm };
}

/** Margin that printers leave white, mm. */
export const SHEET_MARGIN_MM = 10;
/** Room for the title and the sheet map above the chart, and for the scale bar below it, mm. */
export const SHEET_HEAD_MM = 12;
export const SHEET_FOOT_MM = 10;
/** Room beside a cut for row and stitch numbers, mm. */
export const SHEET_NUMBERS_MM = 7;
