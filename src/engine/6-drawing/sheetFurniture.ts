import type { Mark } from './drawing.ts';
import type { Sheet } from './cutSheets.ts';
import { SHEET_MARGIN_MM } from './paper.ts';
import { LEAST_TEXT_MM, POINT_MM, textWidth } from './textSize.ts';

/**
 * What surrounds the chart on a sheet, in mm of the paper: title, sheet number and map, a bar to measure, join lines with their
 * neighbours. No text is smaller than `leastMm`.
 */
export function sheetFurniture(sheet: Sheet, sheets: number, title: string, leastMm: number): Mark[] {
  const marks = [...head(sheet, sheets, title, leastMm), ...scaleBar(sheet), ...joins(sheet)];
  return marks.map((mark) => (mark.kind === 'text' ? { ...mark, sizeMm: Math.max(leastMm, mark.sizeMm) } : mark));
}

/** Baselines of the title's two lines below the margin. */
const TITLE_LINES_MM = [4.5, 9.6] as const;

function head({ paper, index, column, row, columns, rows }: Sheet, sheets: number, title: string, leastMm: number): Mark[] {
  const [left, top, right] = [SHEET_MARGIN_MM, SHEET_MARGIN_MM, paper.widthMm - SHEET_MARGIN_MM];
  const sizeMm = Math.max(leastMm, 11 * POINT_MM);
  const titled = (roomMm: number): Mark[] => twoLines(title, roomMm, sizeMm).map((line, i) => text('title', left, top + TITLE_LINES_MM[i]!, line, sizeMm, 'start'));
  if (sheets < 2) return titled(right - left);
  const [w, h] = [Math.min(4, 30 / columns), Math.min(3, 9 / rows)];
  const mapLeft = right - columns * w;
  const place = `sheet ${index + 1} of ${sheets}`;
  const marks: Mark[] = [...titled(mapLeft - 2.5 - textWidth(place, Math.max(leastMm, 8 * POINT_MM)) - 4 - left), text('caption', mapLeft - 2.5, top + 4.5, place, 8 * POINT_MM, 'end')];
  for (let r = 0; r < rows; r++) {
    for (let c = 0; c < columns; c++) {
      const [x, y] = [mapLeft + c * w, top + r * h];
      marks.push({ kind: 'area', role: c === column && r === row ? 'scale' : 'legendBox', points: [x, y, x + w, y, x + w, y + h, x, y + h], row: null });
    }
  }
  return marks;
}

/** A title on one line or two, parted between words; what two lines don't hold is cut off with …. */
function twoLines(title: string, roomMm: number, sizeMm: number): readonly string[] {
  if (textWidth(title, sizeMm) <= roomMm) return [title];
  const words = title.split(' ');
  let first = '';
  while (words.length > 1 && textWidth(`${first} ${words[0]!}`.trim(), sizeMm) <= roomMm) first = `${first} ${words.shift()!}`.trim();
  const second = cutTo(words.join(' '), roomMm, sizeMm);
  return first === '' ? [second] : [first, second];
}

function cutTo(text: string, roomMm: number, sizeMm: number): string {
  if (textWidth(text, sizeMm) <= roomMm) return text;
  const letters = [...text];
  while (letters.length > 0 && textWidth(`${letters.join('')}…`, sizeMm) > roomMm) letters.pop();
  return `${letters.join('').trimEnd()}…`;
}

/** 100 mm with a tick every 10 mm. */
function scaleBar({ paper }: Sheet): Mark[] {
  const [x, y] = [SHEET_MARGIN_MM, paper.heightMm - SHEET_MARGIN_MM - 2];
  const marks: Mark[] = [{ kind: 'line', role: 'scale', points: [x, y, x + 100, y], row: null }];
  for (let k = 0; k <= 10; k++) marks.push({ kind: 'line', role: 'scale', points: [x + k * 10, y, x + k * 10, y - (k % 5 === 0 ? 2.2 : 1.3)], row: null });
  marks.push(text('caption', x + 103, y, '100 mm, to measure after printing at actual size', 7 * POINT_MM, 'start'));
  return marks;
}

/** A dotted line where each neighbour's part begins, with the neighbour's number. */
function joins({ index, columns, window, cut, seam, shiftX, shiftY }: Sheet): Mark[] {
  const [x0, x1, y0, y1] = [window.x0 + shiftX, window.x1 + shiftX, window.y0 + shiftY, window.y1 + shiftY];
  const marks: Mark[] = [];
  const size = LEAST_TEXT_MM;
  const upright = (at: number | null, neighbour: number): void => {
    if (at === null) return;
    const x = at + shiftX;
    marks.push({ kind: 'line', role: 'join', points: [x, y0 - 2, x, y1 + 2], row: null }, text('caption', x, y0 - 2.8, `sheet ${neighbour + 1}`, size, 'middle'));
  };
  const level = (at: number | null, neighbour: number): void => {
    if (at === null) return;
    const y = at + shiftY;
    marks.push({ kind: 'line', role: 'join', points: [x0 - 2, y, x1 + 2, y], row: null }, { ...text('caption', x0 - (cut.left ? 6.2 : 3), y, `sheet ${neighbour + 1}`, size, 'middle'), turnRad: -Math.PI / 2 });
  };
  upright(seam.left, index - 1);
  upright(seam.right, index + 1);
  level(seam.top, index - columns);
  level(seam.bottom, index + columns);
  return marks;
}

function text(role: 'title' | 'caption', x: number, y: number, words: string, sizeMm: number, anchor: 'start' | 'middle' | 'end'): Extract<Mark, { kind: 'text' }> {
  return { kind: 'text', role, x, y, text: words, sizeMm, anchor, turnRad: 0, row: null };
}
