import { block, strip, type Block } from '../page/block.ts';
import type { Format } from '../page/format.ts';
import { paginate } from '../page/paginate.ts';
import { baseline, oneLine } from '../page/setText.ts';
import { cutToWidth, leadingMm } from '../type/breakLines.ts';
import { heading } from './setBlocks.ts';

/** Booklets of fewer pages need no list of what is in them. */
const FEWEST_PAGES = 6;

/**
 * The blocks with a list of their parts and the pages these begin on, put before the first block that begins a page. The list has
 * its final height before the pages are counted, so that its numbers are true. Short booklets stay as they are.
 */
export function withContents(blocks: readonly Block[], format: Format): readonly Block[] {
  const at = blocks.findIndex(({ newPage }, i) => newPage && i > 0);
  const parts = blocks.flatMap(({ heading: head }, i) => (i >= at && head?.level === 2 ? [{ title: head.title, block: i }] : []));
  if (at < 0 || parts.length < 3) return blocks;
  const put = (numbers: readonly number[]): readonly Block[] => [...blocks.slice(0, at), ...contents(parts.map(({ title }, i) => ({ title, page: numbers[i]! })), format), ...blocks.slice(at)];
  const draft = put(parts.map(() => 0));
  const added = draft.length - blocks.length;
  const pages = paginate(draft, format.heightMm);
  if (pages.length < FEWEST_PAGES) return blocks;
  const pageOf = (index: number): number => pages.findIndex(({ strips }) => strips.some((one) => one.block === index)) + 1;
  return put(parts.map((part) => pageOf(part.block + added)));
}

function contents(entries: readonly { readonly title: string; readonly page: number }[], format: Format): readonly Block[] {
  const { labelMm, widthMm, measure, bodyPt, large } = format;
  const columns = large ? 1 : 2;
  const gap = 8;
  const wide = (widthMm - labelMm - gap * (columns - 1)) / columns;
  const rows = Math.ceil(entries.length / columns);
  const high = leadingMm(bodyPt, 1.45);
  const y = baseline(high, bodyPt);
  const numberMm = measure('0000', 'text', bodyPt);
  const strips = Array.from({ length: rows }, (_, row) => {
    const own = Array.from({ length: columns }, (_, column) => ({ nth: column * rows + row, x: labelMm + column * (wide + gap) })).flatMap(({ nth, x }) => (entries[nth] ? [{ entry: entries[nth], nth, x }] : []));
    return strip(high, {
      texts: own.flatMap(({ entry, nth, x }) => [{ ...oneLine(cutToWidth(entry.title, 'text', bodyPt, wide - numberMm, measure), 'text', bodyPt, x, y, measure), cell: { row: nth, column: 0, headOf: 'row' as const } }, { ...oneLine(String(entry.page), 'text', bodyPt, x + wide, y, measure, 'end'), cell: { row: nth, column: 1, headOf: null } }]),
      rules: own.map(({ x }) => ({ x0Mm: x, x1Mm: x + wide, yMm: high - 0.2, weightMm: 0.2 })),
    });
  });
  return [...(large ? [heading('Contents', 3, format)] : []), block(strips, large ? 1 : 8)];
}
