import type { OutlineEntry, PrintedSheet } from '../../src/engine/publish/printedSheet.ts';

/** An SVG document in mm as a sheet. */
export function sheetOf(name: string, svg: string, outline: readonly OutlineEntry[] = []): PrintedSheet {
  const size = /width="([\d.]+)mm" height="([\d.]+)mm"/.exec(svg);
  if (!size) throw new RangeError(`${name}: no width and height in mm`);
  return { name, title: name, widthMm: Number(size[1]), heightMm: Number(size[2]), svg, outline };
}

/** A small sheet of 100 × 60 mm around a body. */
export function smallSheet(body: string, outline: readonly OutlineEntry[] = []): PrintedSheet {
  return sheetOf('small', `<?xml version="1.0" encoding="UTF-8"?>\n<svg xmlns="http://www.w3.org/2000/svg" width="100mm" height="60mm" viewBox="0 0 100 60"><title>Small</title>${body}</svg>\n`, outline);
}
