import type { Drawing, Mark } from './drawing.ts';
import type { Sheet } from './cutSheets.ts';

/**
 * What one sheet shows of a drawing, in the drawing's coordinates: `inside` (stitches and marks that touch its window, to be
 * clipped to it) and `beside` (row and stitch numbers repeated at its cut edges).
 */
export function sheetDrawing(drawing: Drawing, { window, cut }: Sheet): { readonly inside: Drawing; readonly beside: readonly Mark[] } {
  const { stitches } = drawing;
  const kept: number[] = [];
  // Symbols may reach a cell beyond their own.
  const [reachX, reachY] = [2 * drawing.cellWidthMm, 4 * drawing.cellHeightMm];
  for (let i = 0; i < stitches.count; i++) {
    const [x, y] = [stitches.x[i]!, stitches.y[i]!];
    if (x > window.x0 - reachX && x < window.x1 + reachX && y > window.y0 - reachY && y < window.y1 + reachY) kept.push(i);
  }
  const inside = drawing.marks.filter((mark) => mark.kind !== 'text' || (mark.x >= window.x0 && mark.x <= window.x1 && mark.y >= window.y0 && mark.y <= window.y1 + 0.01));
  const beside = drawing.marks.flatMap((mark): Mark[] => {
    if (mark.kind !== 'text') return [];
    if (mark.role === 'rowNumber' && mark.y - 0.35 * mark.sizeMm > window.y0 && mark.y - 0.35 * mark.sizeMm < window.y1) {
      if (cut.right && mark.x > window.x1) return [{ ...mark, x: window.x1 + 1.2, anchor: 'start' }];
      if (cut.left && mark.x < window.x0) return [{ ...mark, x: window.x0 - 1.2, anchor: 'end' }];
    }
    if (mark.role === 'stitchNumber' && cut.bottom && mark.y > window.y1 && mark.x > window.x0 && mark.x < window.x1) return [{ ...mark, y: window.y1 + 1.1 * mark.sizeMm }];
    return [];
  });
  return { inside: { ...drawing, stitches: pick(drawing, kept), marks: inside }, beside };
}

function pick({ stitches }: Drawing, kept: readonly number[]): Drawing['stitches'] {
  const one = <T extends Int32Array | Uint8Array | Float32Array>(values: T, empty: T): T => {
    kept.forEach((from, to) => (empty[to] = values[from]!));
    return empty;
  };
  const count = kept.length;
  const corners = new Float32Array(count * 8);
  kept.forEach((from, to) => corners.set(stitches.corners.subarray(from * 8, from * 8 + 8), to * 8));
  const [int, byte, real] = [() => new Int32Array(count), () => new Uint8Array(count), () => new Float32Array(count)];
  return {
    count, corners, stitch: one(stitches.stitch, int()), row: one(stitches.row, int()), ghost: one(stitches.ghost, byte()), x: one(stitches.x, real()), y: one(stitches.y, real()),
    filled: one(stitches.filled, byte()), glyph: one(stitches.glyph, int()), glyphX: one(stitches.glyphX, real()), glyphY: one(stitches.glyphY, real()),
    glyphTurnRad: one(stitches.glyphTurnRad, real()), ink: one(stitches.ink, byte()),
  };
}
