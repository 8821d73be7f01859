import { initWasm, Resvg } from '@resvg/resvg-wasm';
import type { PrintedSheet } from '../engine/publish/printedSheet.ts';
import type { FontBook } from './fonts/fontBook.ts';
import { FONT_FILES, SANS_FAMILY, SERIF_FAMILY, type PublishResources } from './fonts/fontFiles.ts';
import { pixels, pngProblem } from './pngSize.ts';
import { SheetProblem } from './svg/readSvg.ts';

/** Draws a sheet as a PNG of so many dots an inch. The same bytes everywhere. */
export type PngWriter = (sheet: PrintedSheet, dpi: number) => Uint8Array;

let started: Promise<void> | null = null;

/** Makes the drawer ready: loads its WebAssembly once, hands it the shipped fonts and no others. */
export async function openPngWriter({ resvg }: Pick<PublishResources, 'resvg'>, book: FontBook): Promise<PngWriter> {
  started ??= resvg().then((wasm) => initWasm(wasm as Uint8Array<ArrayBuffer>));
  try {
    await started;
  } catch (error) {
    started = null;
    throw error;
  }
  const fontBuffers = FONT_FILES.map((file) => book.bytes(file));
  return (sheet, dpi) => {
    const problem = pngProblem(sheet, dpi);
    if (problem !== null) throw new SheetProblem(problem);
    const width = pixels(sheet.widthMm, dpi);
    const drawer = new Resvg(sheet.svg, {
      fitTo: { mode: 'width', value: width }, background: '#ffffff',
      font: { fontBuffers, defaultFontFamily: SANS_FAMILY, sansSerifFamily: SANS_FAMILY, serifFamily: SERIF_FAMILY },
    });
    const picture = drawer.render();
    try {
      return picture.asPng();
    } finally {
      picture.free();
      drawer.free();
    }
  };
}
