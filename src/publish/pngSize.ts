import type { PrintedSheet } from '../engine/publish/printedSheet.ts';

/** Resolutions that can be asked for, dots an inch. */
export const PNG_DPI = { least: 36, most: 1200 } as const;

/** The largest picture, in pixels: 100 megapixels take 400 MB while they are drawn. */
export const MOST_PIXELS = 100_000_000;

/** Why a sheet can't be a picture of so many dots an inch, or null. Costs nothing, so that it can be asked before anything is drawn. */
export function pngProblem({ name, widthMm, heightMm }: Pick<PrintedSheet, 'name' | 'widthMm' | 'heightMm'>, dpi: number): string | null {
  if (!(dpi >= PNG_DPI.least && dpi <= PNG_DPI.most)) return `a picture of ${dpi} dpi was asked for, ${PNG_DPI.least} to ${PNG_DPI.most} dpi were expected`;
  const [width, height] = [pixels(widthMm, dpi), pixels(heightMm, dpi)];
  if (width * height <= MOST_PIXELS) return null;
  const fits = Math.floor(dpi * Math.sqrt(MOST_PIXELS / (width * height)));
  return `“${name}” would be ${width} × ${height} pixels at ${dpi} dpi (${Math.round((width * height) / 1e6)} megapixels); at most ${MOST_PIXELS / 1e6} megapixels are drawn: choose ${fits} dpi or less`;
}

/** Length in pixels, whole. */
export function pixels(mm: number, dpi: number): number {
  return Math.max(1, Math.round((mm / 25.4) * dpi));
}
