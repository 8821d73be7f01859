import { getDocument, OPS } from 'pdfjs-dist/legacy/build/pdf.mjs';

export interface ReadPdf {
  readonly info: Readonly<Record<string, unknown>>;
  readonly displaysTitle: boolean;
  readonly pages: readonly { readonly widthPt: number; readonly heightPt: number; readonly text: string; readonly tags: readonly Tag[] }[];
  readonly outline: readonly Bookmark[];
}

export interface Tag {
  readonly role: string;
  readonly alt: string | null;
}

export interface Bookmark {
  readonly title: string;
  /** Index of its page. */
  readonly page: number;
  readonly topPt: number;
  readonly inside: readonly Bookmark[];
}

interface Node { readonly role?: string; readonly alt?: string; readonly children?: readonly Node[] }
interface Item { readonly title: string; readonly dest: readonly [object, object, number, number]; readonly items: readonly Item[] }

/** What another maker's reader of PDF (pdf.js) finds in a file. */
export async function readPdf(bytes: Uint8Array): Promise<ReadPdf> {
  const task = getDocument({ data: bytes.slice(), verbosity: 0, useSystemFonts: false, disableFontFace: true });
  const file = await task.promise;
  const [{ info }, outline, preferences] = [await file.getMetadata(), await file.getOutline(), await file.getViewerPreferences()];
  const pages = await Promise.all(Array.from({ length: file.numPages }, async (_, index) => {
    const page = await file.getPage(index + 1);
    const [x0, y0, x1, y1] = page.view as [number, number, number, number];
    const { items } = await page.getTextContent();
    const tags: Tag[] = [];
    collect((await page.getStructTree()) as Node | null, tags);
    return { widthPt: x1 - x0, heightPt: y1 - y0, text: items.map((item) => ('str' in item ? item.str + (item.hasEOL ? '\n' : '') : '')).join(''), tags };
  }));
  const bookmarks = async (items: readonly Item[]): Promise<Bookmark[]> => Promise.all(items.map(async ({ title, dest, items: inside }) => ({
    title, page: await file.getPageIndex(dest[0] as Parameters<typeof file.getPageIndex>[0]), topPt: dest[3], inside: await bookmarks(inside),
  })));
  const read = { info: info as Record<string, unknown>, displaysTitle: (preferences as { DisplayDocTitle?: boolean } | null)?.DisplayDocTitle === true, pages, outline: await bookmarks((outline ?? []) as unknown as Item[]) };
  await task.destroy();
  return read;
}

function collect(node: Node | null, tags: Tag[]): void {
  if (!node) return;
  if (node.role !== undefined) tags.push({ role: node.role, alt: node.alt ?? null });
  for (const child of node.children ?? []) collect(child, tags);
}

/** Widths and heights (mm) of the boxes about all paths of a page, as it is drawn: transforms followed, strokes left out. */
export async function pathBoxesMm(bytes: Uint8Array, page: number): Promise<{ readonly width: number; readonly height: number }[]> {
  const task = getDocument({ data: bytes.slice(), verbosity: 0 });
  const list = await (await (await task.promise).getPage(page + 1)).getOperatorList();
  const boxes: { width: number; height: number }[] = [];
  const saved: number[] = [];
  // Charts are placed by scales and moves alone: how far a unit reaches is enough.
  let scale = 1;
  list.fnArray.forEach((operator, index) => {
    const given = list.argsArray[index] as unknown[];
    if (operator === OPS.save) saved.push(scale);
    else if (operator === OPS.restore) scale = saved.pop() ?? 1;
    else if (operator === OPS.transform) scale *= Math.hypot(given[0] as number, given[1] as number);
    else if (operator === OPS.constructPath) {
      const [x0, y0, x1, y1] = given[2] as [number, number, number, number];
      boxes.push({ width: ((x1 - x0) * scale * 25.4) / 72, height: ((y1 - y0) * scale * 25.4) / 72 });
    }
  });
  await task.destroy();
  return boxes;
}
