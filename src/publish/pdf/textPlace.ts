import type { SheetItem } from '../svg/sheetItems.ts';

/** Where a text stands on its sheet (mm), the size of its first letters (mm) and its words. */
export function readTextPlace({ chunks, matrix: [a, b, c, d, e, f] }: Extract<SheetItem, { kind: 'text' }>): { readonly x: number; readonly y: number; readonly size: number; readonly words: string } {
  const { x, y, runs } = chunks[0]!;
  const words = chunks.map((chunk) => chunk.runs.map((run) => run.text).join('')).join(' ').trim();
  return { x: a * x + c * y + e, y: b * x + d * y + f, size: runs[0]!.pen.sizeOfText * Math.hypot(c, d), words };
}
