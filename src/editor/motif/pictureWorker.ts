import { pictureFault, workedSize } from './pictureLimits.ts';

/** What the worker says while it reads a picture, and at the end. */
export type PictureTold =
  | { readonly kind: 'progress'; readonly says: string; readonly part: number }
  | { readonly kind: 'refused'; readonly reason: string }
  | { readonly kind: 'done'; readonly width: number; readonly height: number; readonly rgba: Uint8ClampedArray<ArrayBuffer> };

const HEAD_BYTES = 262_144;

const tell = (told: PictureTold, transfer: Transferable[] = []) => self.postMessage(told, { transfer });

async function read(file: File | Blob): Promise<void> {
  const name = file instanceof File ? file.name : '';
  tell({ kind: 'progress', says: 'Looking at the file', part: 0.05 });
  const head = new Uint8Array(await file.slice(0, HEAD_BYTES).arrayBuffer());
  const fault = pictureFault(name, file.size, head);
  if (fault) return tell({ kind: 'refused', reason: fault });
  tell({ kind: 'progress', says: 'Decoding the picture', part: 0.2 });
  let bitmap: ImageBitmap;
  try {
    bitmap = await createImageBitmap(file);
  } catch {
    return tell({ kind: 'refused', reason: `${name || 'The picture'} is damaged: it could not be decoded.` });
  }
  tell({ kind: 'progress', says: 'Making it smaller', part: 0.8 });
  const { width, height } = workedSize(bitmap.width, bitmap.height);
  const canvas = new OffscreenCanvas(width, height);
  const context = canvas.getContext('2d', { willReadFrequently: true });
  if (!context) return tell({ kind: 'refused', reason: 'This browser can’t look into pictures here.' });
  context.imageSmoothingQuality = 'high';
  context.drawImage(bitmap, 0, 0, width, height);
  bitmap.close();
  const rgba = context.getImageData(0, 0, width, height).data as Uint8ClampedArray<ArrayBuffer>;
  tell({ kind: 'done', width, height, rgba }, [rgba.buffer]);
}

self.addEventListener('message', (event: MessageEvent<File | Blob>) => {
  read(event.data).catch((error: unknown) => tell({ kind: 'refused', reason: `The picture could not be read (${error instanceof Error ? error.message : String(error)}).` }));
});
