import type { PictureBox } from '../../engine/4-colour/picture.ts';

/** What is cut off a picture on each side, in parts of its width and height. */
export interface PictureCrop {
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
}

export const NO_CROP: PictureCrop = { left: 0, right: 0, top: 0, bottom: 0 };

/** The least part that is left. */
const LEAST = 0.02;

/** The crop with one side changed; what is left is never less than a fiftieth. */
export function croppedSide(crop: PictureCrop, side: keyof PictureCrop, part: number): PictureCrop {
  const other = { left: crop.right, right: crop.left, top: crop.bottom, bottom: crop.top }[side];
  return { ...crop, [side]: Math.max(0, Math.min(part, 1 - LEAST - other)) };
}

/** The crop that leaves what lies between two points, given in parts of width and height; null where it would be next to nothing. */
export function cropBetween(one: readonly [number, number], other: readonly [number, number]): PictureCrop | null {
  const within = (n: number) => Math.max(0, Math.min(1, n));
  const [x0, x1] = [within(Math.min(one[0], other[0])), within(Math.max(one[0], other[0]))];
  const [y0, y1] = [within(Math.min(one[1], other[1])), within(Math.max(one[1], other[1]))];
  return x1 - x0 < LEAST || y1 - y0 < LEAST ? null : { left: x0, right: 1 - x1, top: y0, bottom: 1 - y1 };
}

/** The part of a picture that a crop leaves, in pixels. */
export function boxOfCrop({ left, right, top, bottom }: PictureCrop, width: number, height: number): PictureBox {
  return { x: left * width, y: top * height, width: (1 - left - right) * width, height: (1 - top - bottom) * height };
}
