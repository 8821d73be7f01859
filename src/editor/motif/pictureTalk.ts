import type { PictureSettings } from '../../engine/4-colour/pictureMotif.ts';

/** What the page asks of the worker that reads pictures. */
export type PictureAsk =
  | { readonly kind: 'read'; readonly file: File | Blob }
  | { readonly kind: 'draw'; readonly settings: PictureSettings }
  | { readonly kind: 'palette'; readonly count: number };

/** What the worker tells the page. */
export type PictureTold =
  | { readonly kind: 'progress'; readonly says: string; readonly part: number }
  | { readonly kind: 'refused'; readonly reason: string }
  /** The picture is read; `shown` is it at the size that it is worked with. */
  | { readonly kind: 'open'; readonly width: number; readonly height: number; readonly shown: ImageBitmap }
  | { readonly kind: 'cells'; readonly cells: readonly string[] }
  | { readonly kind: 'palette'; readonly colours: readonly string[] };
