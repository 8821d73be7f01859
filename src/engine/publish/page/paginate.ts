import type { Block, Strip } from './block.ts';

/** A strip with its place on the page, from the top of what is set. */
export interface PageStrip {
  readonly strip: Strip;
  readonly yMm: number;
  /** Which block it is of (index into the blocks given), and which strip of it. */
  readonly block: number;
  readonly nth: number;
}

/** One page: its strips from the top down. */
export interface Page {
  readonly strips: readonly PageStrip[];
}

/** Lines of a parted paragraph that stand together at the least, on either page. */
const LEAST_LINES = 2;

/**
 * Lays blocks on pages of the given height, in order: a block that is whole goes to the next page where it doesn't fit, others are
 * parted with two strips or more on either side; what must not be last on a page goes with what follows it. Only what is
 * higher than a page is parted against these rules, and a single strip higher than a page is refused. Linear.
 */
export function paginate(blocks: readonly Block[], heightMm: number): Page[] {
  const pages: PageStrip[][] = [[]];
  let y = 0;
  const turn = (): void => {
    pages.push([]);
    y = 0;
  };
  const lay = (strip: Strip, block: number, nth: number): void => {
    if (strip.heightMm > heightMm + 1e-6) throw new RangeError(`a strip of ${strip.heightMm} mm asked to stand on a page of ${heightMm} mm`);
    pages.at(-1)!.push({ strip, yMm: y, block, nth });
    y += strip.heightMm;
  };
  blocks.forEach((one, index) => {
    if (one.strips.length === 0) return;
    if (one.newPage && y > 0) turn();
    if (y > 0 && !onlyHeads(blocks, pages.at(-1)!)) {
      const group = needed(blocks, index);
      // A group higher than a page is not helped by a new one, unless its head would stand alone here.
      if (y + one.beforeMm + group.heightMm > heightMm + 1e-6 && (group.heightMm <= heightMm || y + one.beforeMm + group.leastMm > heightMm)) turn();
    }
    if (y > 0) y += one.beforeMm;
    const total = one.strips.length;
    one.strips.forEach((strip, nth) => {
      const left = total - nth;
      const broke = y > 0 && y + strip.heightMm > heightMm + 1e-6;
      // The last but one line goes over early so that the last one has company.
      const lonely = nth >= LEAST_LINES && left === LEAST_LINES && total > LEAST_LINES && y + strip.heightMm <= heightMm + 1e-6 && y + strip.heightMm + one.strips[nth + 1]!.heightMm > heightMm + 1e-6;
      if (broke || lonely) turn();
      lay(strip, index, nth);
    });
  });
  return pages.filter((page, i) => page.length > 0 || i === 0).map((strips) => ({ strips }));
}

/** Whether a page has nothing yet but what must have something after it: a new page would leave that alone. */
function onlyHeads(blocks: readonly Block[], strips: readonly PageStrip[]): boolean {
  return strips.every(({ block }) => blocks[block]!.withNext);
}

/** What must stand together from a block on: itself (or its first lines), and what follows as long as it must have something after it. */
function needed(blocks: readonly Block[], from: number): { readonly heightMm: number; readonly leastMm: number } {
  let heightMm = 0;
  let leastMm = 0;
  for (let i = from; i < blocks.length; i++) {
    const one = blocks[i]!;
    if (one.strips.length === 0) continue;
    if (one.newPage && i > from) break;
    const before = i === from ? 0 : one.beforeMm;
    const whole = one.strips.reduce((sum, strip) => sum + strip.heightMm, 0);
    const head = one.strips.slice(0, one.strips.length === LEAST_LINES + 1 ? LEAST_LINES + 1 : LEAST_LINES).reduce((sum, strip) => sum + strip.heightMm, 0);
    heightMm += before + (one.whole || one.withNext ? whole : head);
    leastMm += before + head;
    if (!one.withNext) break;
  }
  return { heightMm, leastMm };
}
