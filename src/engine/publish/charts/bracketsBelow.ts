import type { Drawing, Mark } from '../../6-drawing/drawing.ts';
import { textWidth } from '../../6-drawing/textSize.ts';

/** A stretch of a chart's columns to bracket, in the drawing's mm, and what stands under it. */
export interface Bracket {
  readonly x0: number;
  readonly x1: number;
  readonly text: string;
}

/** The drawing with brackets under everything that it has, each on the highest level on which it is clear of the others. */
export function bracketsBelow(drawing: Drawing, brackets: readonly Bracket[], sizeMm: number): Drawing {
  if (brackets.length === 0) return drawing;
  const levels: { readonly x0: number; readonly x1: number }[][] = [];
  const top = drawing.bounds.y1 + 0.5 * sizeMm;
  const bounds = { ...drawing.bounds };
  const marks: Mark[] = brackets.flatMap(({ x0, x1, text }): Mark[] => {
    const wide = textWidth(text, sizeMm);
    const [from, to] = [Math.min(x0, (x0 + x1 - wide) / 2), Math.max(x1, (x0 + x1 + wide) / 2)];
    const free = levels.findIndex((level) => level.every((one) => one.x1 + sizeMm < from || one.x0 - sizeMm > to));
    const at = free < 0 ? levels.length : free;
    (levels[at] ??= []).push({ x0: from, x1: to });
    const y = top + at * 2.1 * sizeMm;
    bounds.x0 = Math.min(bounds.x0, from);
    bounds.x1 = Math.max(bounds.x1, to);
    bounds.y1 = Math.max(bounds.y1, y + 1.8 * sizeMm);
    return [
      { kind: 'line', role: 'repeat', points: [x0, y, x0, y + 0.5 * sizeMm, x1, y + 0.5 * sizeMm, x1, y], row: null },
      { kind: 'text', role: 'repeatText', x: (x0 + x1) / 2, y: y + 1.45 * sizeMm, text, sizeMm, anchor: 'middle', turnRad: 0, row: null },
    ];
  });
  return { ...drawing, bounds, marks: [...drawing.marks, ...marks] };
}
