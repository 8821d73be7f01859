import type { PictureSettings } from '../../engine/4-colour/pictureMotif.ts';
import type { PictureAsk, PictureTold } from './pictureTalk.ts';

/** A picture that is read; it stays with its worker until it is closed. */
export interface OpenPicture {
  readonly name: string;
  readonly width: number;
  readonly height: number;
  readonly shown: ImageBitmap;
  /** The cells that the settings give. Asked again before it is told, only the last asked for is worked out; the others get null. */
  draw(settings: PictureSettings): Promise<readonly string[] | null>;
  /** The colours that it is best shown in, the most frequent first. */
  palette(count: number): Promise<readonly string[]>;
  close(): void;
}

/** How reading goes on. */
export type Reading = Exclude<PictureTold, { kind: 'open' | 'cells' | 'palette' }> | { readonly kind: 'open'; readonly picture: OpenPicture };

/** Reads a picture file beside the page. Tells how far it is; the function given back calls it off, also when it is open. */
export function readPicture(file: File | Blob, tell: (reading: Reading) => void): () => void {
  const worker = new Worker(new URL('./pictureWorker.ts', import.meta.url), { type: 'module' });
  const ask = (what: PictureAsk) => worker.postMessage(what);
  const close = () => worker.terminate();
  let drawing: ((cells: readonly string[] | null) => void) | null = null;
  let waiting: { readonly settings: PictureSettings; readonly done: (cells: readonly string[] | null) => void } | null = null;
  let colours: ((colours: readonly string[]) => void) | null = null;

  function draw(settings: PictureSettings): Promise<readonly string[] | null> {
    return new Promise((done) => {
      if (drawing) {
        waiting?.done(null);
        waiting = { settings, done };
        return;
      }
      drawing = done;
      ask({ kind: 'draw', settings });
    });
  }
  function drawn(cells: readonly string[]): void {
    const done = drawing;
    drawing = null;
    done?.(waiting ? null : cells);
    const next = waiting;
    waiting = null;
    if (!next) return;
    drawing = next.done;
    ask({ kind: 'draw', settings: next.settings });
  }
  const palette = (count: number) =>
    new Promise<readonly string[]>((done) => {
      colours = done;
      ask({ kind: 'palette', count });
    });

  worker.addEventListener('message', ({ data }: MessageEvent<PictureTold>) => {
    switch (data.kind) {
      case 'progress':
        return tell(data);
      case 'refused':
        close();
        return tell(data);
      case 'open':
        return tell({ kind: 'open', picture: { name: file instanceof File ? file.name : '', width: data.width, height: data.height, shown: data.shown, draw, palette, close } });
      case 'cells':
        return drawn(data.cells);
      case 'palette':
        return colours?.(data.colours);
    }
  });
  worker.addEventListener('error', () => {
    close();
    tell({ kind: 'refused', reason: 'The picture could not be read here.' });
  });
  ask({ kind: 'read', file });
  return close;
}
