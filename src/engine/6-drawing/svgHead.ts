import { escapeXml, num } from './svgText.ts';

/** Words about a file: title and description for readers and screen readers, and who made it. Dates come from the pattern, never from a clock. */
export interface SvgWords {
  readonly title: string;
  /** The chart in words: section, rows, stitches, yarns. */
  readonly desc: string;
  readonly creator?: string | null;
  readonly rights?: string | null;
  /** As ISO 8601 date. */
  readonly date?: string | null;
}

/**
 * XML declaration, root element, title, description and Dublin Core metadata. The root is left open. One user unit is one millimetre.
 * Uses are written with xlink:href, which every program reads; Inkscape 1.2 leaves those with a plain href out.
 */
export function svgHead(box: { readonly x: number; readonly y: number; readonly width: number; readonly height: number }, words: SvgWords): string {
  const [width, height] = [num(box.width), num(box.height)];
  const about = [['title', words.title], ['creator', words.creator], ['rights', words.rights], ['date', words.date], ['format', 'image/svg+xml']] as const;
  const core = about.flatMap(([name, value]) => (value ? [`<dc:${name}>${escapeXml(value)}</dc:${name}>`] : [])).join('');
  return `<?xml version="1.0" encoding="UTF-8"?>
<svg xmlns="http://www.w3.org/2000/svg" xmlns:xlink="http://www.w3.org/1999/xlink" width="${width}mm" height="${height}mm" viewBox="${num(box.x)} ${num(box.y)} ${width} ${height}" role="img" aria-labelledby="title desc">
<title id="title">${escapeXml(words.title)}</title>
<desc id="desc">${escapeXml(words.desc)}</desc>
<metadata><rdf:RDF xmlns:rdf="http://www.w3.org/1999/02/22-rdf-syntax-ns#" xmlns:dc="http://purl.org/dc/elements/1.1/"><rdf:Description rdf:about="">${core}</rdf:Description></rdf:RDF></metadata>`;
}
