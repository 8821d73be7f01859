import { describe, expect, it } from 'vitest';
import { gridIndex } from '../../../src/editor/chart/gridIndex.ts';
import { itemOfStitch } from '../../../src/editor/chart/itemOfStitch.ts';
import { stitchesBetween } from '../../../src/editor/chart/stroke.ts';
import { syntheticDrawing } from './syntheticDrawing.ts';

describe.each([false, true])('finding the stitch under a point (tilted: %s)', (tilted) => {
  const drawing = syntheticDrawing({ columns: 30, rows: 20, tilted });
  const { x, y, corners } = drawing.stitches;
  const find = gridIndex(drawing);

  it('finds each stitch at its middle', () => {
    for (let i = 0; i < drawing.stitches.count; i++) expect(find(x[i]!, y[i]!)).toBe(i);
  });

  it('finds each stitch just inside each corner', () => {
    for (let i = 0; i < drawing.stitches.count; i++) {
      for (let c = i * 8; c < i * 8 + 8; c += 2) {
        expect(find(corners[c]! + 0.06 * (x[i]! - corners[c]!), corners[c + 1]! + 0.06 * (y[i]! - corners[c + 1]!))).toBe(i);
      }
    }
  });

  it('finds nothing away from the chart, nor at no place', () => {
    expect(find(drawing.bounds.x1 + 50, 0)).toBe(-1);
    expect(find(NaN, 0)).toBe(-1);
  });
});

describe('a straight panel', () => {
  const drawing = syntheticDrawing({ columns: 6, rows: 4 });
  const find = gridIndex(drawing);

  it('gives the nearest stitch a little beside its edge', () => {
    expect(find(-0.5, -1.9)).toBe(5);
    expect(find(-3, -1.9)).toBe(-1);
  });

  it('prefers a stitch to a ghost drawn in the same place', () => {
    const { stitches } = drawing;
    const ghost = stitches.ghost.slice();
    const twice = { ...stitches, ghost, corners: stitches.corners.slice(), x: stitches.x.slice(), y: stitches.y.slice() };
    ghost[0] = 1;
    twice.corners.set(stitches.corners.subarray(8, 16), 0);
    twice.x[0] = stitches.x[1]!;
    twice.y[0] = stitches.y[1]!;
    expect(gridIndex({ ...drawing, stitches: twice })(stitches.x[1]!, stitches.y[1]!)).toBe(1);
  });

  it('maps a stitch to its own item before its ghost, and what is not drawn to none', () => {
    const { stitches } = drawing;
    const ghost = stitches.ghost.slice();
    const stitch = stitches.stitch.slice();
    ghost[0] = 1;
    stitch[0] = 7;
    const items = itemOfStitch({ ...drawing, stitches: { ...stitches, ghost, stitch } });
    expect(items[7]).toBe(7);
    expect(items[0]).toBe(-1);
    expect(items[3]).toBe(3);
  });

  it('gives all stitches on the way between two points, in order, each once', () => {
    const between = (a: [number, number], b: [number, number]): number[] => stitchesBetween(find, drawing.stitches.stitch, a, b, 1.2);
    expect(between([22, -1.9], [2, -1.9])).toEqual([0, 1, 2, 3, 4, 5]);
    expect(between([2, -1.9], [2, -13.3])).toEqual([5, 6, 17, 18]);
    expect(between([2, -1.9], [2, -1.9])).toEqual([5]);
    expect(between([-40, 40], [-50, 40])).toEqual([]);
    expect(between([22, -1.9], [10, -9.5])).toEqual([0, 1, 10, 9, 14, 15]);
  });

  it('refuses a step that gets nowhere', () => {
    expect(() => stitchesBetween(find, drawing.stitches.stitch, [0, 0], [1, 1], 0)).toThrow(RangeError);
  });
});
