import type { OutlineEntry } from '../../engine/publish/printedSheet.ts';
import type { SheetCell, SheetItem, SheetItems } from '../svg/sheetItems.ts';
import { readTextPlace } from './textPlace.ts';

/** A stretch of items, in painting order, that a reader of the PDF takes as one thing. */
export interface Passage {
  readonly kind: 'heading' | 'paragraph' | 'figure' | 'cell' | 'aside';
  /** Level of a heading, index of a figure, index of the table that a cell is of. */
  readonly nth: number;
  /** Where a cell stands; its lines come as passages of their own where other cells' lines stand between. */
  readonly cell: SheetCell | null;
  readonly items: readonly SheetItem[];
}

/** How far (mm) a heading's base line may lie from where the outline says that it begins. */
const HEADING_REACH_MM = 30;
/** Lines of a paragraph stand at most so many sizes of text apart. */
const LINE_REACH = 1.6;

/**
 * Parts a sheet's items into headings (texts that the outline names), paragraphs (texts on one line, or on lines that follow one another
 * closely in one size), cells of tables, figures and what is aside. A sheet that is no page of print, without groups that say what they show, is one figure.
 */
export function passages({ items, figures, isPage }: Pick<SheetItems, 'items' | 'figures' | 'isPage'>, outline: readonly OutlineEntry[]): Passage[] {
  const made: { kind: Passage['kind']; nth: number; cell: SheetCell | null; items: SheetItem[] }[] = [];
  const table = { nth: -1, last: -1, hasBody: false };
  const open = [...outline];
  const whole = figures.length === 0 && !isPage;
  let line: Line | null = null;
  // What of a heading that takes several lines is still to come.
  let rest = '';
  for (const item of items) {
    const last = made.at(-1);
    const join = (kind: Passage['kind'], nth: number, same: boolean): void => {
      if (last?.kind === kind && last.nth === nth && same) last.items.push(item);
      else made.push({ kind, nth, cell: null, items: [item] });
    };
    if (item.aside) {
      join('aside', 0, true);
      continue;
    }
    const words = item.kind === 'text' && item.figure === null ? readTextPlace(item).words : '';
    const heading = item.kind === 'text' && item.figure === null ? headingOf(item, open) : null;
    if (last?.kind === 'heading' && words !== '' && rest.startsWith(words)) {
      rest = rest.slice(words.length).trim();
      last.items.push(item);
    } else if (heading) {
      open.splice(open.indexOf(heading), 1);
      rest = heading.title.slice(words.length).trim();
      made.push({ kind: 'heading', nth: heading.level, cell: null, items: [item] });
      line = null;
    } else if (item.kind === 'text' && item.cell && item.figure === null) {
      made.push({ kind: 'cell', nth: tableOf(item.cell), cell: item.cell, items: [item] });
      line = null;
    } else if (whole || item.figure !== null) join('figure', item.figure ?? 0, true);
    else if (item.kind === 'path') join('aside', 0, true);
    else {
      const next = lineOf(item);
      join('paragraph', 0, line !== null && goesOn(line, next));
      line = line !== null && last?.kind === 'paragraph' && made.at(-1) === last ? { ...next, firstX: line.firstX, lines: line.lines + (next.y === line.y ? 0 : 1) } : next;
    }
  }
  return made;

  /** Index of the table that a cell is of: a new one where columns are headed again, or rows begin again after something else. */
  function tableOf({ row, headOf }: SheetCell): number {
    const isHead = headOf === 'column';
    const before = made.findLast(({ kind }) => kind !== 'aside')?.kind;
    if (table.nth < 0 || (isHead && table.hasBody) || (before !== 'cell' && row <= table.last)) Object.assign(table, { nth: table.nth + 1, hasBody: false });
    Object.assign(table, { last: row, hasBody: table.hasBody || !isHead });
    return table.nth;
  }
}

interface Line {
  readonly x: number;
  readonly y: number;
  readonly size: number;
  /** Where the paragraph's first line begins. */
  readonly firstX: number;
  readonly lines: number;
}

function lineOf(item: Extract<SheetItem, { kind: 'text' }>): Line {
  const { x, y, size } = readTextPlace(item);
  return { x, y, size, firstX: x, lines: 1 };
}

/** Whether a text goes on a paragraph: on its line, or on the next and not back where a label stands. */
function goesOn(before: Line, next: Line): boolean {
  if (next.y === before.y) return true;
  const down = next.y - before.y;
  const backAtLabel = next.x === before.firstX && before.x !== before.firstX;
  return down > 0 && down <= before.size * LINE_REACH && next.size === before.size && !backAtLabel && next.x >= before.firstX;
}

function headingOf(item: Extract<SheetItem, { kind: 'text' }>, open: readonly OutlineEntry[]): OutlineEntry | null {
  const { y, words } = readTextPlace(item);
  return open.find((entry) => words !== '' && entry.title.startsWith(words) && Math.abs(y - entry.yMm) <= HEADING_REACH_MM) ?? null;
}
