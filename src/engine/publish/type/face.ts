/** The faces of print: a text face with its italic, a face for labels and its bold for headings. */
export const FACES = {
  text: { family: 'Literata, Georgia, serif', weight: 400, style: 'normal' },
  italic: { family: 'Literata, Georgia, serif', weight: 400, style: 'italic' },
  label: { family: '\'Alegreya Sans\', sans-serif', weight: 400, style: 'normal' },
  strong: { family: '\'Alegreya Sans\', sans-serif', weight: 700, style: 'normal' },
} as const;

export type Face = keyof typeof FACES;

/** Width of a text on paper, mm. The same text, face and size must always give the same number. */
export type Measure = (text: string, face: Face, sizePt: number) => number;
