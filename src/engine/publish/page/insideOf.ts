/** What a drawing of its own shows, to be placed on a page. */
export interface Inside {
  /** Moved so that its upper left corner is (0, 0). */
  readonly svg: string;
  readonly widthMm: number;
  readonly heightMm: number;
}

/** The inside of an SVG document that the engine wrote, without head and paper. Refuses a text that is none. */
export function insideOf(document: string): Inside {
  const view = /viewBox="([-\d.]+) ([-\d.]+) ([\d.]+) ([\d.]+)"/.exec(document);
  const from = document.indexOf('</metadata>');
  const to = document.lastIndexOf('</svg>');
  if (!view || from < 0 || to < from) throw new RangeError(`a document of ${document.length} characters without view, metadata or end is no drawing of the engine`);
  const [x, y, widthMm, heightMm] = view.slice(1, 5).map(Number) as [number, number, number, number];
  const body = document.slice(from + '</metadata>'.length, to).replace(/<rect id="paper"[^>]*\/>/, '').trim();
  return { svg: `<g transform="translate(${-x} ${-y})">${body}</g>`, widthMm, heightMm };
}

/** A drawing made smaller to fit into a room, or as it is. */
export function shrunk({ svg, widthMm, heightMm }: Inside, roomMm: { readonly widthMm: number; readonly heightMm: number }, most = 1): Inside {
  const scale = Math.round(Math.min(most, roomMm.widthMm / widthMm, roomMm.heightMm / heightMm) * 1e5) / 1e5;
  return scale === 1 ? { svg, widthMm, heightMm } : { svg: `<g transform="scale(${scale})">${svg}</g>`, widthMm: widthMm * scale, heightMm: heightMm * scale };
}
