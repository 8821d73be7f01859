import svgpath from 'svgpath';
import { formatHex, parse } from 'culori';
import type { Matrix } from '../svg/matrix.ts';
import type { Pen } from '../svg/pen.ts';
import { SheetProblem } from '../svg/readSvg.ts';
import type { Clip } from '../svg/sheetItems.ts';
import type { PdfFile } from './pdfFile.ts';

/** Draws one path with its pen in the units of `matrix` (mm at last). Leaves the document's graphics state as it was. */
export function drawPath(pdf: PdfFile, d: string, matrix: Matrix, pen: Pen, clips: readonly Clip[]): void {
  const fill = colourOf(pen.fill);
  const stroke = pen.strokeWidth > 0 ? colourOf(pen.stroke) : null;
  if (!fill && !stroke) return;
  pdf.save();
  cut(pdf, clips);
  pdf.transform(...matrix);
  if (stroke) {
    pdf.lineWidth(pen.strokeWidth).lineCap(pen.cap).lineJoin(pen.join).miterLimit(pen.miterLimit);
    const dash = pen.dash.length % 2 === 1 ? [...pen.dash, ...pen.dash] : [...pen.dash];
    if (dash.some((part) => part > 0)) pdf.addContent(`[${dash.join(' ')}] ${pen.dashOffset} d`);
    pdf.strokeColor(stroke.hex, stroke.alpha * pen.strokeOpacity * pen.opacity);
  }
  if (fill) pdf.fillColor(fill.hex, fill.alpha * pen.fillOpacity * pen.opacity);
  const rule = pen.evenOdd ? 'even-odd' : 'non-zero';
  const trace = (): void => tracePath(pdf, d);
  if (fill && stroke && pen.strokeFirst) {
    trace();
    pdf.stroke();
    trace();
    pdf.fill(rule);
  } else {
    trace();
    if (fill && stroke) pdf.addContent(pen.evenOdd ? 'B*' : 'B');
    else if (fill) pdf.fill(rule);
    else pdf.stroke();
  }
  pdf.restore();
}

/** Cuts what is drawn next to the inside of all clips, each in its own units. */
export function cut(pdf: PdfFile, clips: readonly Clip[]): void {
  for (const { d, matrix, evenOdd } of clips) {
    const turnedBack = inverse(matrix);
    pdf.transform(...matrix);
    if (d === '') pdf.rect(0, 0, 0, 0);
    else tracePath(pdf, d);
    pdf.clip(evenOdd ? 'even-odd' : 'non-zero');
    pdf.transform(...turnedBack);
  }
}

/** Path data as the document's own moves, lines and curves; what can't be read is a SheetProblem. */
function tracePath(pdf: PdfFile, d: string): void {
  const path = svgpath(d);
  const { err } = path as unknown as { readonly err: string };
  if (err) throw new SheetProblem(`path data “${d.length > 60 ? `${d.slice(0, 59)}…` : d}”: ${err}`);
  path.abs().unshort().unarc().iterate((segment, _, x, y) => {
    switch (segment[0]) {
      case 'M': pdf.moveTo(segment[1], segment[2]); break;
      case 'L': pdf.lineTo(segment[1], segment[2]); break;
      case 'H': pdf.lineTo(segment[1], y); break;
      case 'V': pdf.lineTo(x, segment[1]); break;
      case 'C': pdf.bezierCurveTo(segment[1], segment[2], segment[3], segment[4], segment[5], segment[6]); break;
      case 'Q': {
        // A quadratic curve raised to a cubic: PDF has no other.
        const [, cx, cy, ex, ey] = segment;
        pdf.bezierCurveTo(x + (2 / 3) * (cx - x), y + (2 / 3) * (cy - y), ex + (2 / 3) * (cx - ex), ey + (2 / 3) * (cy - ey), ex, ey);
        break;
      }
      case 'Z': case 'z': pdf.closePath(); break;
      default: throw new SheetProblem(`a part “${segment[0]}” of path data was not expected`);
    }
  });
}

function inverse([a, b, c, d, e, f]: Matrix): Matrix {
  const area = a * d - b * c;
  if (Math.abs(area) < 1e-12) throw new SheetProblem('a clip with a transform that flattens everything was found');
  return [d / area, -b / area, -c / area, a / area, (c * f - d * e) / area, (b * e - a * f) / area];
}

/** A paint as `#rrggbb` and how much of it covers, null for none. References to paints elsewhere are a SheetProblem. */
export function colourOf(paint: string): { readonly hex: string; readonly alpha: number } | null {
  if (paint === 'none' || paint === 'transparent') return null;
  const read = parse(paint);
  if (!read) throw new SheetProblem(`the paint “${paint}” is not known to the writer of PDF: a colour or none was expected`);
  return { hex: formatHex(read), alpha: read.alpha ?? 1 };
}
