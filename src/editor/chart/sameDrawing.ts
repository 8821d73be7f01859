import type { Drawing, DrawnStitches, Glyph, Mark } from '../../engine/6-drawing/drawing.ts';

/**
 * Whether two drawings show the same. A change of colours alone works the whole pipeline anew; seeing that the drawing came
 * out the same costs a millisecond or two for 60,000 stitches and saves drawing it. Glyphs are told apart by their ids, which are
 * stable for the same geometry.
 */
export function sameDrawing(a: Drawing, b: Drawing): boolean {
  if (a === b) return true;
  return (
    a.cellWidthMm === b.cellWidthMm && a.cellHeightMm === b.cellHeightMm &&
    a.bounds.x0 === b.bounds.x0 && a.bounds.x1 === b.bounds.x1 && a.bounds.y0 === b.bounds.y0 && a.bounds.y1 === b.bounds.y1 &&
    sameStitches(a.stitches, b.stitches) &&
    a.glyphs.length === b.glyphs.length && a.glyphs.every((glyph: Glyph, i) => glyph.id === b.glyphs[i]!.id) &&
    a.marks.length === b.marks.length && a.marks.every((mark, i) => sameMark(mark, b.marks[i]!))
  );
}

/** Short ones, and those in which another stitch shows, before the corners. */
const ARRAYS = ['glyph', 'ink', 'filled', 'ghost', 'stitch', 'row', 'glyphX', 'glyphY', 'glyphTurnRad', 'corners'] as const satisfies readonly (keyof DrawnStitches)[];

function sameStitches(a: DrawnStitches, b: DrawnStitches): boolean {
  return a.count === b.count && ARRAYS.every((name) => sameNumbers(a[name], b[name]));
}

function sameNumbers(a: ArrayLike<number>, b: ArrayLike<number>): boolean {
  if (a.length !== b.length) return false;
  for (let i = 0; i < a.length; i++) if (a[i] !== b[i]) return false;
  return true;
}

function sameMark(a: Mark, b: Mark): boolean {
  if (a.role !== b.role || a.row !== b.row) return false;
  if (a.kind === 'text') return b.kind === 'text' && a.text === b.text && a.x === b.x && a.y === b.y && a.sizeMm === b.sizeMm && a.anchor === b.anchor && a.turnRad === b.turnRad;
  return b.kind === a.kind && sameNumbers(a.points, b.points);
}
