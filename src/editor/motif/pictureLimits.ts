import { pictureHead } from './pictureHead.ts';

/** The most bytes of a picture file, and the most pixels that are decoded. */
export const PICTURE_BYTES = 40_000_000;
export const PICTURE_PIXELS = 120_000_000;
/** Longer side of what is worked with: more than the cells of the largest motif need. */
export const WORKED_SIDE = 1600;

/** Why a picture file is not taken, in words; null where it is. `head` are its first bytes (64 kB are enough but for odd files). */
export function pictureFault(name: string, bytes: number, head: Uint8Array): string | null {
  const of = name === '' ? 'The picture' : name;
  if (bytes === 0) return `${of} is empty.`;
  if (bytes > PICTURE_BYTES) return `${of} has ${millions(bytes)} MB; ${millions(PICTURE_BYTES)} MB is the most.`;
  const found = pictureHead(head);
  if (!found) return `${of} is no PNG or JPEG picture.`;
  if (found.width * found.height > PICTURE_PIXELS) {
    return `${of} has ${found.width} × ${found.height} pixels, ${millions(found.width * found.height)} million; ${millions(PICTURE_PIXELS)} million is the most.`;
  }
  return null;
}

/** The size that a picture is worked with: its own, or scaled down to the longest side. */
export function workedSize(width: number, height: number): { readonly width: number; readonly height: number } {
  const scale = Math.min(1, WORKED_SIDE / Math.max(width, height));
  return { width: Math.max(1, Math.round(width * scale)), height: Math.max(1, Math.round(height * scale)) };
}

function millions(n: number): string {
  return (n / 1_000_000).toFixed(n < 10_000_000 ? 1 : 0);
}
