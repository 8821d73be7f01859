/** A picture as bytes: red, green, blue, alpha of each pixel, row by row from the top left (sRGB, alpha not multiplied in). */
export interface Picture {
  readonly width: number;
  readonly height: number;
  readonly rgba: Uint8Array | Uint8ClampedArray;
}

/** A part of a picture in pixels; may begin and end within one. */
export interface PictureBox {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

/** Told now and then how much is done, 0 to 1; `false` stops the work. */
export type OnProgress = (done: number) => unknown;

/** The whole of a picture, or the part asked for. Refuses bytes that are not four a pixel, and a part that is empty or not within the picture. */
export function boxOf(picture: Picture, part: PictureBox | null): PictureBox {
  const { width, height, rgba } = picture;
  if (!(width >= 1 && height >= 1) || rgba.length !== width * height * 4) throw new RangeError(`${rgba.length} bytes given for a picture of ${width} × ${height}, ${width * height * 4} expected`);
  if (!part) return { x: 0, y: 0, width, height };
  const isWithin = part.x >= 0 && part.y >= 0 && part.width > 0 && part.height > 0 && part.x + part.width <= width + 1e-9 && part.y + part.height <= height + 1e-9;
  if (!isWithin) throw new RangeError(`a part of ${part.width} × ${part.height} at ${part.x}, ${part.y} asked of a picture of ${width} × ${height}`);
  return part;
}

/** Linear light (0 to 1) of an sRGB byte: IEC 61966-2-1, with the threshold that WCAG 2.2 gives. */
export const LINEAR: Float64Array = Float64Array.from({ length: 256 }, (_, byte) => {
  const c = byte / 255;
  return c <= 0.04045 ? c / 12.92 : ((c + 0.055) / 1.055) ** 2.4;
});

/** Rows of pixels between two reports of progress. */
export const CHUNK_ROWS = 64;
