/** One typographic point in mm. */
export const POINT_MM = 25.4 / 72;
/** Least size of text on paper: 6 pt. */
export const LEAST_TEXT_MM = 6 * POINT_MM;

/** Width that a text is taken to need before it is set, mm: 0.56 of its size a character, generous for the text faces in use. */
export function textWidth(text: string, sizeMm: number): number {
  return [...text].length * sizeMm * 0.56;
}
