/**
 * The faces of print: a text face with its italic and bold, a face for labels and its bold for headings. `scale` makes letters of the
 * two families look alike in size at the same number of points: the label face is small for its size.
 */
export const FACES = {
  text: { family: 'Literata, Georgia, serif', weight: 400, style: 'normal', scale: 1 },
  italic: { family: 'Literata, Georgia, serif', weight: 400, style: 'italic', scale: 1 },
  bold: { family: 'Literata, Georgia, serif', weight: 700, style: 'normal', scale: 1 },
  label: { family: '\'Alegreya Sans\', sans-serif', weight: 400, style: 'normal', scale: 1.1 },
  strong: { family: '\'Alegreya Sans\', sans-serif', weight: 700, style: 'normal', scale: 1.1 },
} as const;

export type Face = keyof typeof FACES;

/** Width of a text on paper, mm. The same text, face and size must always give the same number. */
export type Measure = (text: string, face: Face, sizePt: number) => number;

/** The size that letters of a face are set in to look like `sizePt`, points. */
export function setPt(face: Face, sizePt: number): number {
  return FACES[face].scale * sizePt;
}
