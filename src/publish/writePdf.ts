import type { OutlineEntry, PrintedSheet } from '../engine/publish/printedSheet.ts';
import type { FontBook } from './fonts/fontBook.ts';
import { FONT_FILES } from './fonts/fontFiles.ts';
import { drawPath } from './pdf/drawPath.ts';
import { drawText } from './pdf/drawText.ts';
import { PdfFile, type PdfWords } from './pdf/pdfFile.ts';
import { PdfTables } from './pdf/pdfTables.ts';
import { passages, type Passage } from './pdf/readingOrder.ts';
import { SheetProblem } from './svg/readSvg.ts';
import { sheetItems, type SheetItem, type SheetItems } from './svg/sheetItems.ts';

const POINTS_PER_MM = 72 / 25.4;

/** Where a bookmark leads; the library's types leave the place out. */
interface PlacedBookmark {
  readonly expanded?: boolean;
  readonly top: number;
  readonly left: number;
}

/**
 * Sheets as one PDF, a page each: vectors and embedded fonts, text that can be selected, bookmarks from the outlines, tagged with
 * headings, paragraphs, tables and figures with their words. A generator that yields the number of sheets done after each and returns the file's
 * bytes, so that a caller can show how far it is or stop. The same sheets give the same bytes everywhere. A sheet with anything that the
 * writer doesn't know is a SheetProblem that names the sheet.
 */
export async function* writePdf(sheets: readonly PrintedSheet[], words: PdfWords, book: FontBook): AsyncGenerator<number, Uint8Array> {
  if (sheets.length === 0) throw new RangeError('0 sheets were given to write as PDF, 1 or more were expected');
  const pdf = new PdfFile(words, sheets.map((sheet) => sheet.svg).join('\n'));
  const bytes = collected(pdf);
  for (const file of FONT_FILES) pdf.registerFont(file, book.bytes(file) as unknown as PDFKit.Mixins.PDFFontSource);
  const root = pdf.struct('Document');
  pdf.addStructure(root);
  const bookmarks: { level: number; item: PDFKit.PDFOutline }[] = [];
  for (const [index, sheet] of sheets.entries()) {
    addSheet(pdf, book, root, sheet);
    addBookmarks(pdf, bookmarks, sheet.outline, sheet.widthMm);
    yield index + 1;
  }
  root.end();
  pdf.end();
  return bytes;
}

function addSheet(pdf: PdfFile, book: FontBook, root: PDFKit.PDFStructureElement, sheet: PrintedSheet): void {
  try {
    const flat = sheetItems(sheet.svg);
    pdf.addPage({ size: [sheet.widthMm * POINTS_PER_MM, sheet.heightMm * POINTS_PER_MM], margin: 0 });
    pdf.scale(POINTS_PER_MM);
    const part = pdf.struct('Sect', { title: sheet.title });
    root.add(part);
    addPassages(pdf, book, part, flat, passages(flat, sheet.outline));
    part.end();
  } catch (error) {
    if (error instanceof SheetProblem) throw new SheetProblem(`sheet “${sheet.name}”: ${error.message}`, { cause: error });
    throw error;
  }
}

function addPassages(pdf: PdfFile, book: FontBook, part: PDFKit.PDFStructureElement, flat: SheetItems, list: readonly Passage[]): void {
  const figures = new Map<number, PDFKit.PDFStructureElement>();
  const tables = new PdfTables(pdf, part);
  for (const { kind, nth, cell, items } of list) {
    if (kind === 'aside') {
      pdf.markContent('Artifact');
      draw(pdf, book, items);
      pdf.endMarkedContent();
      continue;
    }
    if (kind === 'cell' && cell) {
      const content = pdf.markStructureContent(cell.headOf === 'none' ? 'TD' : 'TH');
      draw(pdf, book, items);
      pdf.endMarkedContent();
      tables.add(nth, cell, content);
      continue;
    }
    const tag = kind === 'heading' ? `H${nth}` : kind === 'figure' ? 'Figure' : 'P';
    const content = pdf.markStructureContent(tag);
    draw(pdf, book, items);
    pdf.endMarkedContent();
    let element = kind === 'figure' ? figures.get(nth) : undefined;
    if (!element) {
      const says = flat.figures[nth] ?? (flat.desc || flat.title);
      element = pdf.struct(tag, kind === 'figure' && says ? { alt: says } : {});
      part.add(element);
      if (kind === 'figure') figures.set(nth, element);
    }
    element.add(content);
  }
  tables.end();
}

function draw(pdf: PdfFile, book: FontBook, items: readonly SheetItem[]): void {
  items.forEach((item, nth) => {
    if (item.kind === 'path') drawPath(pdf, item.d, item.matrix, item.pen, item.clips);
    else drawText(pdf, book, item.chunks, item.matrix, item.clips, nth < items.length - 1);
  });
}

/** Each heading under the last one above it that is of a higher level. */
function addBookmarks(pdf: PdfFile, open: { level: number; item: PDFKit.PDFOutline }[], outline: readonly OutlineEntry[], widthMm: number): void {
  for (const { title, level, yMm } of outline) {
    while (open.length > 0 && open.at(-1)!.level >= level) open.pop();
    const parent = open.at(-1)?.item ?? pdf.outline;
    // The library counts `left` from the right edge.
    const options: PlacedBookmark = { top: yMm * POINTS_PER_MM, left: widthMm * POINTS_PER_MM };
    const item = parent.addItem(title, options);
    open.push({ level, item });
  }
}

function collected(pdf: PdfFile): Promise<Uint8Array> {
  return new Promise((resolve, reject) => {
    const parts: Uint8Array[] = [];
    pdf.on('data', (part: Uint8Array) => parts.push(part));
    pdf.on('error', reject);
    pdf.on('end', () => {
      const whole = new Uint8Array(parts.reduce((sum, part) => sum + part.length, 0));
      let at = 0;
      for (const part of parts) {
        whole.set(part, at);
        at += part.length;
      }
      resolve(whole);
    });
  });
}
