import { INK_CODES, type YarnInks } from '../../src/editor/chart/inks.ts';
import type { ViewTransform } from '../../src/editor/chart/viewTransform.ts';
import type { Stroke } from '../../src/engine/6-drawing/drawing.ts';
import { LINE_MM } from './cells.ts';
import type { BenchData } from './variant.ts';

/** Symbols under this size are left out, as in the chart. */
const LEAST_PX = 6.5;
/** Cells or symbols in one path: fewer cost more calls, many more make one path dear to fill. */
const BATCH = 24;

/** Paints stitches on a canvas, batched by yarn and by ink. `items` in any order; null: all in sight. */
export function cellPainter(data: BenchData, inks: YarnInks): (context: CanvasRenderingContext2D, yarnOf: Uint8Array, view: ViewTransform, width: number, height: number, items: readonly number[] | null) => void {
  const { stitches, glyphs, cellWidthMm, cellHeightMm } = data.drawing;
  const lines = glyphs.map((glyph) => polylines(glyph.strokes));
  const { corners } = stitches;
  return (context, yarnOf, view, width, height, items) => {
    const { x, y, k } = view;
    const margin = 2 * cellHeightMm;
    const [x0, y0, x1, y1] = [-x / k - margin, -y / k - margin, (width - x) / k + margin, (height - y) / k + margin];
    const byYarn: number[][] = inks.cells.map(() => []);
    const byInk: number[][] = inks.colours.map(() => []);
    const symbols = Math.min(cellWidthMm, cellHeightMm) * k >= LEAST_PX;
    const count = items ? items.length : stitches.count;
    for (let n = 0; n < count; n++) {
      const i = items ? items[n]! : n;
      if (!(stitches.x[i]! >= x0 && stitches.x[i]! <= x1 && stitches.y[i]! >= y0 && stitches.y[i]! <= y1)) continue;
      const yarn = yarnOf[stitches.stitch[i]!]!;
      byYarn[yarn]!.push(i);
      if (symbols && stitches.glyph[i]! >= 0) byInk[inks.table[yarn * INK_CODES + stitches.ink[i]!]!]!.push(i);
    }
    const ratio = window.devicePixelRatio || 1;
    context.setTransform(k * ratio, 0, 0, k * ratio, x * ratio, y * ratio);
    byYarn.forEach((cells, yarn) => {
      context.fillStyle = inks.cells[yarn]!;
      for (let from = 0; from < cells.length; from += BATCH) {
        context.beginPath();
        for (let n = from; n < Math.min(from + BATCH, cells.length); n++) {
          const c = cells[n]! * 8;
          context.moveTo(corners[c]!, corners[c + 1]!);
          context.lineTo(corners[c + 2]!, corners[c + 3]!);
          context.lineTo(corners[c + 4]!, corners[c + 5]!);
          context.lineTo(corners[c + 6]!, corners[c + 7]!);
        }
        context.fill();
      }
    });
    context.lineWidth = LINE_MM;
    byInk.forEach((cells, ink) => {
      context.strokeStyle = inks.colours[ink]!;
      for (let from = 0; from < cells.length; from += BATCH) {
        context.beginPath();
        for (let n = from; n < Math.min(from + BATCH, cells.length); n++) {
          const i = cells[n]!;
          const [cos, sin] = [Math.cos(stitches.glyphTurnRad[i]!), Math.sin(stitches.glyphTurnRad[i]!)];
          const [gx, gy] = [stitches.glyphX[i]!, stitches.glyphY[i]!];
          for (const line of lines[stitches.glyph[i]!]!) {
            for (let p = 0; p < line.length; p += 2) {
              const px = gx + line[p]! * cos - line[p + 1]! * sin;
              const py = gy + line[p]! * sin + line[p + 1]! * cos;
              if (p === 0) context.moveTo(px, py);
              else context.lineTo(px, py);
            }
          }
        }
        context.stroke();
      }
    });
  };
}

/** A glyph's strokes as polylines. */
function polylines(strokes: readonly Stroke[]): number[][] {
  return strokes.map((stroke) => {
    if (stroke.kind === 'line') return [...stroke.points];
    const points: number[] = [];
    for (let s = 0; s <= 12; s++) {
      const t = s / 12;
      if (stroke.kind === 'oval') points.push(stroke.x + stroke.rx * Math.cos(2 * Math.PI * t), stroke.y + stroke.ry * Math.sin(2 * Math.PI * t));
      else {
        const [ax, ay, bx, by, cx, cy] = stroke.points;
        points.push((1 - t) ** 2 * ax + 2 * t * (1 - t) * bx + t * t * cx, (1 - t) ** 2 * ay + 2 * t * (1 - t) * by + t * t * cy);
      }
    }
    return points;
  });
}
