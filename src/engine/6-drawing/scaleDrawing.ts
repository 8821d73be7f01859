import type { Box } from '../5-layout/layout.ts';
import type { Drawing, Glyph, Mark, Stroke } from './drawing.ts';
import { LEAST_TEXT_MM } from './textSize.ts';

/** The drawing at another scale, `mmPerStitch` wide a stitch. Text grows with it but never falls under 6 pt. */
export function scaleDrawing(drawing: Drawing, mmPerStitch: number): Drawing {
  if (!(mmPerStitch > 0 && Number.isFinite(mmPerStitch))) throw new RangeError(`${mmPerStitch} mm a stitch, expected more than 0`);
  const k = mmPerStitch / drawing.cellWidthMm;
  if (Math.abs(k - 1) < 1e-9) return drawing;
  const { stitches } = drawing;
  const all = (values: Float32Array): Float32Array => values.map((value) => value * k);
  return {
    ...drawing,
    bounds: scaleBox(drawing.bounds, k), cellWidthMm: mmPerStitch, cellHeightMm: drawing.cellHeightMm * k,
    stitches: { ...stitches, x: all(stitches.x), y: all(stitches.y), corners: all(stitches.corners), glyphX: all(stitches.glyphX), glyphY: all(stitches.glyphY) },
    glyphs: drawing.glyphs.map((glyph) => scaleGlyph(glyph, k)),
    marks: drawing.marks.map((mark) => scaleMark(mark, k)),
  };
}

function scaleBox({ x0, y0, x1, y1 }: Box, k: number): Box {
  return { x0: x0 * k, y0: y0 * k, x1: x1 * k, y1: y1 * k };
}

/** A glyph `k` times as large, under the same id. */
export function scaleGlyph(glyph: Glyph, k: number): Glyph {
  return { ...glyph, strokes: glyph.strokes.map((stroke) => scaleStroke(stroke, k)) };
}

function scaleStroke(stroke: Stroke, k: number): Stroke {
  if (stroke.kind === 'oval') return { ...stroke, x: stroke.x * k, y: stroke.y * k, rx: stroke.rx * k, ry: stroke.ry * k };
  if (stroke.kind === 'line') return { ...stroke, points: stroke.points.map((value) => value * k) };
  const [a, b, c, d, e, f] = stroke.points;
  return { ...stroke, points: [a * k, b * k, c * k, d * k, e * k, f * k] };
}

function scaleMark(mark: Mark, k: number): Mark {
  if (mark.kind === 'text') return { ...mark, x: mark.x * k, y: mark.y * k, sizeMm: Math.max(LEAST_TEXT_MM, mark.sizeMm * k) };
  return { ...mark, points: mark.points.map((value) => value * k) };
}
