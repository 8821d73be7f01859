/** What the first bytes of a picture file say. */
export interface PictureHead {
  readonly kind: 'png' | 'jpeg';
  readonly width: number;
  readonly height: number;
}

const PNG = [0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a];

/** Kind and size of a PNG or JPEG before it is decoded, so that one that would fill the memory is refused first; null for anything else. */
export function pictureHead(bytes: Uint8Array): PictureHead | null {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  if (bytes.length >= 24 && PNG.every((byte, i) => bytes[i] === byte)) return sized('png', view.getUint32(16), view.getUint32(20));
  if (bytes.length < 4 || view.getUint16(0) !== 0xffd8) return null;
  // JPEG: segments one after another up to the frame header, which has the size.
  let at = 2;
  while (at + 9 <= bytes.length) {
    if (bytes[at] !== 0xff) return null;
    const marker = bytes[at + 1]!;
    if (marker === 0xff) {
      at++;
      continue;
    }
    const isFrame = marker >= 0xc0 && marker <= 0xcf && marker !== 0xc4 && marker !== 0xc8 && marker !== 0xcc;
    if (isFrame) return sized('jpeg', view.getUint16(at + 7), view.getUint16(at + 5));
    const isBare = marker === 0x01 || (marker >= 0xd0 && marker <= 0xd8);
    at += isBare ? 2 : 2 + view.getUint16(at + 2);
  }
  return null;
}

function sized(kind: PictureHead['kind'], width: number, height: number): PictureHead | null {
  return width > 0 && height > 0 ? { kind, width, height } : null;
}
