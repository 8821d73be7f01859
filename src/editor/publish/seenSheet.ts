import type { MadeFile } from '../../publish/archive.ts';

/** A sheet as it is seen on the page: the very SVG that goes out, with its size. */
export interface SeenSheet {
  readonly name: string;
  readonly title: string;
  readonly svg: string;
  readonly widthMm: number;
  readonly heightMm: number;
}

const SIZE = /<svg[^>]* width="([\d.]+)mm" height="([\d.]+)mm"/;
const TITLE = /<title[^>]*>([^<]*)<\/title>/;
const ENTITIES: Readonly<Record<string, string>> = { '&lt;': '<', '&gt;': '>', '&quot;': '"', '&apos;': '\'', '&#39;': '\'', '&amp;': '&' };

/** Reads name, title and size of a sheet that the publisher made. A file that is none is a programmer's slip. */
export function seenSheet({ name, bytes }: MadeFile): SeenSheet {
  const svg = new TextDecoder().decode(bytes);
  const size = SIZE.exec(svg);
  if (!size) throw new RangeError(`${name} is no sheet: a width and height in mm were expected`);
  const title = (TITLE.exec(svg)?.[1] ?? name).replace(/&(?:lt|gt|quot|apos|#39|amp);/g, (entity) => ENTITIES[entity]!);
  return { name, title, svg, widthMm: Number(size[1]), heightMm: Number(size[2]) };
}
