import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { blocksWithin, changedBlocks, cutBlocks } from '../../../src/editor/chart/blocks.ts';
import { syntheticDrawing, syntheticYarns } from './syntheticDrawing.ts';

describe.each([false, true])('blocks of a drawing (tilted: %s)', (tilted) => {
  const shape = { columns: 50, rows: 40, tilted };
  const drawing = syntheticDrawing(shape);
  const blocks = cutBlocks(drawing, 16);

  it('hold every item once, in drawing order', () => {
    expect([...blocks.items].sort((a, b) => a - b)).toEqual([...drawing.stitches.stitch.keys()]);
    for (let b = 0; b < blocks.count; b++) {
      const items = [...blocks.items.subarray(blocks.start[b], blocks.start[b + 1])];
      expect(items).toEqual([...items].sort((x, y) => x - y));
      for (const item of items) expect(blocks.blockOf[item]).toBe(b);
    }
  });

  it('hold about 256 stitches at most and none is empty', () => {
    for (let b = 0; b < blocks.count; b++) {
      const size = blocks.start[b + 1]! - blocks.start[b]!;
      expect(size).toBeGreaterThan(0);
      expect(size).toBeLessThanOrEqual(340);
    }
  });

  it('are as many fewer as they are larger', () => {
    const larger = cutBlocks(drawing, 32);
    expect(larger.count).toBeLessThan(blocks.count / 2);
    expect(Math.max(...Array.from({ length: larger.count }, (_, b) => larger.start[b + 1]! - larger.start[b]!))).toBeLessThanOrEqual(4 * 340);
  });

  it('have boxes that hold their cells', () => {
    for (let i = 0; i < drawing.stitches.count; i++) {
      const o = blocks.blockOf[i]! * 4;
      for (let c = i * 8; c < i * 8 + 8; c += 2) {
        expect(drawing.stitches.corners[c]!).toBeGreaterThanOrEqual(blocks.boxes[o]!);
        expect(drawing.stitches.corners[c]!).toBeLessThanOrEqual(blocks.boxes[o + 2]!);
        expect(drawing.stitches.corners[c + 1]!).toBeGreaterThanOrEqual(blocks.boxes[o + 1]!);
        expect(drawing.stitches.corners[c + 1]!).toBeLessThanOrEqual(blocks.boxes[o + 3]!);
      }
    }
  });

  it('are found by the box they meet', () => {
    const { x, y } = drawing.stitches;
    const box = { x0: x[700]! - 1, y0: y[700]! - 1, x1: x[700]! + 1, y1: y[700]! + 1 };
    const within = blocksWithin(blocks, box);
    expect(within).toContain(blocks.blockOf[700]);
    expect(within.length).toBeLessThan(blocks.count);
    expect(blocksWithin(blocks, drawing.bounds)).toHaveLength(blocks.count);
    expect(blocksWithin(blocks, { x0: 1e6, y0: 0, x1: 1e6 + 1, y1: 1 })).toEqual([]);
  });

  it('are told apart by the yarns that changed', () => {
    const before = syntheticYarns(shape, 4);
    fc.assert(
      fc.property(fc.uniqueArray(fc.nat(drawing.stitches.count - 1), { maxLength: 5 }), (stitches) => {
        const after = before.slice();
        for (const stitch of stitches) after[stitch] = (after[stitch]! + 1) % 4;
        expect(changedBlocks(blocks, drawing.stitches.stitch, before, after)).toEqual(new Set(stitches.toSorted((a, b) => a - b).map((s) => blocks.blockOf[s]!)));
      }),
      { seed: 11 },
    );
    expect(changedBlocks(blocks, drawing.stitches.stitch, before, before).size).toBe(0);
    expect(changedBlocks(blocks, drawing.stitches.stitch, new Uint8Array(3), before).size).toBe(blocks.count);
  });
});
