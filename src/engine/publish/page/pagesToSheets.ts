import type { OutlineEntry, PrintedSheet } from '../printedSheet.ts';
import type { Block } from './block.ts';
import type { Format } from './format.ts';
import { paginate } from './paginate.ts';
import { writePage } from './writePage.ts';

/** What the pages of a booklet say of themselves. */
export interface PagesAbout {
  readonly title: string;
  readonly creator: string;
  readonly rights: string;
  /** As the designer gives it; empty where none is given. */
  readonly date: string;
  /** For file names. */
  readonly name: string;
  /** No running head on the first page. */
  readonly firstPlain: boolean;
}

/** Blocks as pages in reading order, with running heads that name the part a page begins in, and where headings begin. */
export function pagesToSheets(blocks: readonly Block[], format: Format, about: PagesAbout): readonly PrintedSheet[] {
  const pages = paginate(blocks, format.heightMm);
  let part = '';
  return pages.map((page, i) => {
    const outline: OutlineEntry[] = page.strips.flatMap(({ block, nth, yMm }) => {
      const head = nth === 0 ? blocks[block]!.heading : null;
      return head ? [{ ...head, yMm: Math.round((format.topMm + yMm) * 1000) / 1000 }] : [];
    });
    // A page that opens with a part is named by it, others by the part that goes on.
    const opening = page.strips[0]?.nth === 0 ? blocks[page.strips[0].block]!.heading : null;
    const shown = opening && opening.level === 2 ? opening.title : part;
    part = outline.findLast(({ level }) => level === 2)?.title ?? part;
    const number = i + 1;
    const svg = writePage(page, format, { number, pages: pages.length, head: about.firstPlain && i === 0 ? null : { title: about.title, part: shown }, title: about.title, creator: about.creator, rights: about.rights, date: about.date });
    return { name: `${about.name}-${String(number).padStart(String(pages.length).length, '0')}`, title: `Page ${number}`, widthMm: format.paper.widthMm, heightMm: format.paper.heightMm, svg, outline };
  });
}
