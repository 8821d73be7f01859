import type { PictureTold } from './pictureWorker.ts';

/** A picture as pixels, RGBA row by row from the top. */
export type ReadPicture = Extract<PictureTold, { kind: 'done' }>;

/** Reads a picture file beside the page. Tells how far it is; the function given back calls it off. */
export function readPicture(file: File | Blob, tell: (told: PictureTold) => void): () => void {
  const worker = new Worker(new URL('./pictureWorker.ts', import.meta.url), { type: 'module' });
  const stop = () => worker.terminate();
  worker.addEventListener('message', (event: MessageEvent<PictureTold>) => {
    if (event.data.kind !== 'progress') stop();
    tell(event.data);
  });
  worker.addEventListener('error', () => {
    stop();
    tell({ kind: 'refused', reason: 'The picture could not be read here.' });
  });
  worker.postMessage(file);
  return stop;
}
