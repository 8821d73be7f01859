import { paletteOfPicture } from '../../engine/4-colour/paletteOfPicture.ts';
import { pictureMotif } from '../../engine/4-colour/pictureMotif.ts';
import type { Picture } from '../../engine/4-colour/picture.ts';
import { pictureFault, workedSize } from './pictureLimits.ts';
import type { PictureAsk, PictureTold } from './pictureTalk.ts';

const HEAD_BYTES = 262_144;

let picture: Picture | null = null;
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
  picture = { width, height, rgba: context.getImageData(0, 0, width, height).data };
  const shown = canvas.transferToImageBitmap();
  tell({ kind: 'open', width, height, shown }, [shown]);
}

function answer(ask: PictureAsk): void {
  if (ask.kind === 'read') {
    read(ask.file).catch((error: unknown) => tell({ kind: 'refused', reason: `The picture could not be read (${error instanceof Error ? error.message : String(error)}).` }));
  } else if (picture && ask.kind === 'draw') {
    const cells = pictureMotif(picture, ask.settings, (part) => tell({ kind: 'progress', says: 'Drawing it in yarns', part }));
    tell({ kind: 'cells', cells: cells ?? [] });
  } else if (picture && ask.kind === 'palette') {
    tell({ kind: 'palette', colours: (paletteOfPicture(picture, ask.count) ?? []).map((each) => each.colour) });
  }
}

self.addEventListener('message', (event: MessageEvent<PictureAsk>) => answer(event.data));
