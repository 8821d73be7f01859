import { NODE_RESOURCES } from '../../src/cli/nodeResources.ts';
import { openFontBook, type FontBook } from '../../src/publish/fonts/fontBook.ts';
import type { PdfWords } from '../../src/publish/pdf/pdfFile.ts';
import { writePdf } from '../../src/publish/writePdf.ts';
import type { PrintedSheet } from '../../src/engine/publish/printedSheet.ts';

let book: Promise<FontBook> | null = null;

/** The fonts, read once. */
export function fontBook(): Promise<FontBook> {
  return (book ??= openFontBook(NODE_RESOURCES));
}

/** The bytes of sheets as one PDF. */
export async function pdfOf(sheets: readonly PrintedSheet[], words: Partial<PdfWords> = {}): Promise<Uint8Array> {
  const pages = writePdf(sheets, { title: 'Puffin Quay', creator: '', rights: '', language: 'en', date: null, ...words }, await fontBook());
  for (;;) {
    const { done, value } = await pages.next();
    if (done) return value;
  }
}
