import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { block, strip, type Block } from '../../../src/engine/publish/page/block.ts';
import { paginate, type Page } from '../../../src/engine/publish/page/paginate.ts';

const HEIGHT = 100;
const lines = (count: number, more: Partial<Block> = {}, each = 5): Block => block(Array.from({ length: count }, () => strip(each)), 3, more);
const head = (): Block => block([strip(8)], 6, { withNext: true, heading: { title: 'H', level: 2 } });

function where(pages: readonly Page[], index: number): number[] {
  return pages.flatMap((page, p) => page.strips.filter((one) => one.block === index).map(() => p));
}

describe('pages', () => {
  const plainBlock = fc.oneof(
    fc.integer({ min: 1, max: 12 }).map((count) => lines(count)),
    fc.integer({ min: 1, max: 40 }).map((count) => lines(count, { whole: false })),
    fc.integer({ min: 1, max: 70 }).map((height) => block([strip(height)], 2)),
    fc.constant(lines(1, { newPage: true })),
  );
  const anyBlock = fc.oneof(fc.constant(head()), plainBlock);

  it('hold every strip once, in order, and none outside the page', () => {
    fc.assert(fc.property(fc.array(anyBlock, { maxLength: 30 }), (blocks) => {
      const pages = paginate(blocks, HEIGHT);
      const placed = pages.flatMap((page) => page.strips);
      expect(placed.map((one) => `${one.block} ${one.nth}`)).toEqual(blocks.flatMap((one, i) => one.strips.map((_, nth) => `${i} ${nth}`)));
      for (const page of pages) {
        let bottom = 0;
        for (const one of page.strips) {
          expect(one.yMm).toBeGreaterThanOrEqual(bottom - 1e-9);
          bottom = one.yMm + one.strip.heightMm;
        }
        expect(bottom).toBeLessThanOrEqual(HEIGHT + 1e-6);
      }
    }), { seed: 5, numRuns: 200 });
  });

  it('part no block that is whole and not higher than a page', () => {
    fc.assert(fc.property(fc.array(anyBlock, { maxLength: 30 }), (blocks) => {
      const pages = paginate(blocks, HEIGHT);
      blocks.forEach((one, i) => {
        if (one.whole) expect(new Set(where(pages, i)).size).toBe(1);
      });
    }), { seed: 6, numRuns: 200 });
  });

  it('end in no heading', () => {
    const followed = fc.array(fc.tuple(fc.integer({ min: 0, max: 2 }), plainBlock).map(([heads, after]) => [...Array.from({ length: heads }, head), after]), { minLength: 1, maxLength: 14 }).map((pairs) => [...pairs.flat(), lines(1)]);
    fc.assert(fc.property(followed, (blocks) => {
      for (const page of paginate(blocks, HEIGHT)) {
        const last = blocks[page.strips.at(-1)!.block]!;
        const next = blocks[page.strips.at(-1)!.block + 1];
        // A new page that is asked for comes before all else.
        expect(last.withNext && next !== undefined && !next.newPage).toBe(false);
      }
    }), { seed: 7, numRuns: 300 });
  });

  it('leave two lines or more of a parted paragraph on either side', () => {
    fc.assert(fc.property(fc.integer({ min: 0, max: 19 }), fc.integer({ min: 4, max: 60 }), (before, count) => {
      const blocks = [lines(before), lines(count, { whole: false })].filter((one) => one.strips.length > 0);
      const pages = paginate(blocks, HEIGHT);
      const own = where(pages, blocks.length - 1);
      for (const page of new Set(own)) expect(own.filter((one) => one === page).length).toBeGreaterThanOrEqual(2);
    }), { seed: 8, numRuns: 300 });
  });

  it('begin anew where it is asked for, and not with an empty page', () => {
    const pages = paginate([lines(2, { newPage: true }), lines(2), lines(2, { newPage: true })], HEIGHT);
    expect(pages.map((page) => page.strips.map((one) => one.block))).toEqual([[0, 0, 1, 1], [2, 2]]);
  });

  it('refuse what no page can hold, with both numbers', () => {
    expect(() => paginate([block([strip(120)], 0)], HEIGHT)).toThrow(/120 mm.*100 mm/);
  });
});
