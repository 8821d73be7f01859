import { textWidth } from './textSize.ts';

/** A text in lines that need no more than `widthMm` each (by `textWidth`), parted at spaces, a word that is longer anywhere. At least one line. */
export function wrapText(text: string, sizeMm: number, widthMm: number): string[] {
  const most = Math.max(1, Math.floor(widthMm / textWidth('x', sizeMm) + 1e-9));
  const lines: string[] = [];
  let line = '';
  for (const word of text.split(' ')) {
    const letters = [...word];
    const parts = Array.from({ length: Math.max(1, Math.ceil(letters.length / most)) }, (_, i) => letters.slice(i * most, (i + 1) * most).join(''));
    for (const [i, part] of parts.entries()) {
      const joined = line === '' ? part : `${line} ${part}`;
      if (i === 0 && [...joined].length <= most) line = joined;
      else {
        lines.push(line);
        line = part;
      }
    }
  }
  return [...lines, line].filter((each, _, all) => each !== '' || all.length === 1);
}
