import type { FacedRun, FontBook } from '../fonts/fontBook.ts';
import { moved, within, type Matrix } from '../svg/matrix.ts';
import type { Pen } from '../svg/pen.ts';
import type { Clip } from '../svg/sheetItems.ts';
import type { Chunk, TextRun } from '../svg/textChunks.ts';
import { colourOf, cut, drawPath } from './drawPath.ts';
import type { PdfFile } from './pdfFile.ts';

interface Piece extends FacedRun {
  readonly pen: Pen;
  readonly x: number;
  readonly y: number;
}

/**
 * Sets the words of a text in their fonts, as text that can be selected; halos beside the letters are drawn as shapes. `spaced`: a space
 * follows, so that words that are read on don't run into one another.
 */
export function drawText(pdf: PdfFile, book: FontBook, chunks: readonly Chunk[], matrix: Matrix, clips: readonly Clip[], spaced: boolean): void {
  chunks.forEach((chunk, nth) => {
    const pieces = setChunk(pdf, book, chunk);
    const last = pieces.at(-1);
    if (last && last.stands === null && (spaced || nth < chunks.length - 1)) pieces.splice(-1, 1, { ...last, text: `${last.text} ` });
    for (const piece of pieces) drawPiece(pdf, book, piece, matrix, clips);
  });
}

/** The pieces of a chunk with their places: split by font, moved for the anchor. */
function setChunk(pdf: PdfFile, book: FontBook, chunk: Chunk): Piece[] {
  let [x, y] = [chunk.x, chunk.y];
  const pieces = chunk.runs.flatMap((run: TextRun) => {
    x += run.dx;
    y += run.dy;
    return book.split(run.text, run.pen.family, run.pen.bold, run.pen.italic).map((faced): Piece => {
      const piece = { ...faced, pen: run.pen, x, y: y + drop(book, faced, run.pen) };
      x += widthOf(pdf, piece);
      return piece;
    });
  });
  const anchor = chunk.runs[0]!.pen.anchor;
  const back = anchor === 'start' ? 0 : anchor === 'end' ? x - chunk.x : (x - chunk.x) / 2;
  return back === 0 ? pieces : pieces.map((piece) => ({ ...piece, x: piece.x - back }));
}

function widthOf(pdf: PdfFile, { file, text, pen }: Piece): number {
  return pdf.font(file).fontSize(pen.sizeOfText).widthOfString(text) + pen.letterSpacing * [...text].length;
}

/** How far below its y the letters' base line lies. */
function drop(book: FontBook, { file }: FacedRun, { baseline, sizeOfText }: Pen): number {
  if (baseline === 'alphabetic') return 0;
  const font = book.font(file);
  const height = baseline === 'middle' ? font.xHeight / 2 : baseline === 'central' ? (font.ascent + font.descent) / 2 : font.ascent * 0.8;
  return (height / font.unitsPerEm) * sizeOfText;
}

function drawPiece(pdf: PdfFile, book: FontBook, piece: Piece, matrix: Matrix, clips: readonly Clip[]): void {
  const { pen } = piece;
  const stroked = pen.stroke !== 'none' && pen.strokeWidth > 0;
  if (stroked && pen.strokeFirst) outline(pdf, book, piece, matrix, clips);
  const fill = colourOf(pen.fill);
  if (fill) {
    pdf.save();
    cut(pdf, clips);
    pdf.transform(...matrix);
    pdf.fillColor(fill.hex, fill.alpha * pen.fillOpacity * pen.opacity);
    if (piece.stands !== null) pdf.markContent('Span', { actual: piece.stands });
    pdf.font(piece.file).fontSize(pen.sizeOfText).text(piece.text, piece.x, piece.y, { lineBreak: false, baseline: 'alphabetic', characterSpacing: pen.letterSpacing });
    if (piece.stands !== null) pdf.endMarkedContent();
    pdf.restore();
  }
  if (stroked && !pen.strokeFirst) outline(pdf, book, piece, matrix, clips);
}

/** The letters' outlines, stroked: drawn as shapes so that the words stand in the file once only. */
function outline(pdf: PdfFile, book: FontBook, { file, text, pen, x, y }: Piece, matrix: Matrix, clips: readonly Clip[]): void {
  const font = book.font(file);
  const scale = pen.sizeOfText / font.unitsPerEm;
  const { glyphs, positions } = font.layout(text);
  let at = x;
  glyphs.forEach((glyph, index) => {
    const { xAdvance, xOffset, yOffset } = positions[index]!;
    const place = within(within(matrix, moved(at + xOffset * scale, y - yOffset * scale)), [scale, 0, 0, -scale, 0, 0]);
    const d = glyph.path.toSVG();
    if (d !== '') drawPath(pdf, d, place, { ...pen, fill: 'none', strokeWidth: pen.strokeWidth / scale, dash: [] }, clips);
    at += xAdvance * scale + pen.letterSpacing;
  });
}
