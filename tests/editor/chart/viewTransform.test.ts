import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { between, centredOn, fitView, heldInSight, onWholePixels, scaledAbout, scaleRange, toMm, TRUE_SCALE, visibleBox, withBoxInSight } from '../../../src/editor/chart/viewTransform.ts';

const bounds = { x0: -10, y0: -200, x1: 90, y1: 0 };
const size = { width: 400, height: 300 };

describe('fitting a chart into its frame', () => {
  it('shows the whole chart, centred, with the pad free', () => {
    const view = fitView(bounds, size, 'whole', 20);
    expect(view.k).toBeCloseTo(260 / 200, 9);
    expect(bounds.y0 * view.k + view.y).toBeCloseTo(20, 9);
    expect(bounds.y1 * view.k + view.y).toBeCloseTo(280, 9);
    expect((bounds.x0 + bounds.x1) * view.k * 0.5 + view.x).toBeCloseTo(200, 9);
  });

  it('fits the width and begins at the bottom, where the first row is', () => {
    const view = fitView(bounds, size, 'width', 20);
    expect(view.k).toBeCloseTo(360 / 100, 9);
    expect(bounds.y1 * view.k + view.y).toBeCloseTo(280, 9);
  });

  it('centres a chart that is lower than the frame when it is fitted to the width', () => {
    const view = fitView({ x0: 0, y0: 0, x1: 100, y1: 10 }, size, 'width', 0);
    expect(5 * view.k + view.y).toBeCloseTo(150, 9);
  });

  it.each([
    { mm: 25.4, px: 96, source: 'CSS Values and Units Level 4, 6.2: 1in = 2.54cm = 96px' },
    { mm: 10, px: 37.795_275_59, source: 'CSS Values and Units Level 4, 6.2: 1cm = 96px/2.54' },
  ])('draws $mm mm as $px px at actual size', ({ mm, px }) => {
    expect(fitView(bounds, size, 'actual', 0).k * mm).toBeCloseTo(px, 6);
    expect(TRUE_SCALE * mm).toBeCloseTo(px, 6);
  });

  it('can always zoom out to half the whole chart and in to cells of 96 px', () => {
    const [least, most] = scaleRange(bounds, size, 4);
    expect(least).toBeCloseTo(fitView(bounds, size, 'whole', 0).k / 2, 9);
    expect(most).toBeCloseTo(24, 9);
  });
});

describe('moving a view', () => {
  it('keeps the point under the pointer when scaled about it', () => {
    fc.assert(
      fc.property(fc.double({ min: 0.2, max: 5, noNaN: true }), fc.integer({ min: 0, max: 400 }), fc.integer({ min: 0, max: 300 }), (factor, x, y) => {
        const view = { x: 13, y: -40, k: 2 };
        const next = scaledAbout(view, factor, x, y, [0.1, 50]);
        const [before, after] = [toMm(view, x, y), toMm(next, x, y)];
        expect(after[0]).toBeCloseTo(before[0], 6);
        expect(after[1]).toBeCloseTo(before[1], 6);
      }),
      { seed: 4 },
    );
  });

  it('does not scale beyond its range', () => {
    expect(scaledAbout({ x: 0, y: 0, k: 2 }, 100, 0, 0, [1, 8]).k).toBe(8);
    expect(scaledAbout({ x: 0, y: 0, k: 2 }, 0.01, 0, 0, [1, 8]).k).toBe(1);
  });

  it('never loses the chart out of sight', () => {
    fc.assert(
      fc.property(fc.integer({ min: -9999, max: 9999 }), fc.integer({ min: -9999, max: 9999 }), fc.double({ min: 0.3, max: 20, noNaN: true }), (x, y, k) => {
        const view = heldInSight({ x, y, k }, bounds, size);
        const seenX = Math.min(size.width, bounds.x1 * k + view.x) - Math.max(0, bounds.x0 * k + view.x);
        const seenY = Math.min(size.height, bounds.y1 * k + view.y) - Math.max(0, bounds.y0 * k + view.y);
        expect(seenX).toBeGreaterThanOrEqual(Math.min(size.width / 3, 100 * k) - 1e-6);
        expect(seenY).toBeGreaterThanOrEqual(Math.min(size.height / 3, 200 * k) - 1e-6);
      }),
      { seed: 4 },
    );
  });

  it('leaves a view alone that shows enough', () => {
    const view = fitView(bounds, size, 'whole', 20);
    expect(heldInSight(view, bounds, size)).toEqual(view);
  });

  it('moves as little as brings a box into sight', () => {
    const view = { x: 0, y: 0, k: 1 };
    expect(withBoxInSight(view, { x0: 50, y0: 50, x1: 60, y1: 60 }, size, 10)).toEqual(view);
    expect(withBoxInSight(view, { x0: -5, y0: 50, x1: 5, y1: 60 }, size, 10)).toEqual({ x: 15, y: 0, k: 1 });
    expect(withBoxInSight(view, { x0: 50, y0: 290, x1: 60, y1: 310 }, size, 10)).toEqual({ x: 0, y: -20, k: 1 });
    expect(withBoxInSight(view, { x0: 0, y0: 0, x1: 1000, y1: 10 }, size, 10).x).toBe(-300);
  });

  it('puts a point in the middle', () => {
    expect(toMm(centredOn({ x: 3, y: 4, k: 2 }, 7, -8, size), 200, 150)).toEqual([7, -8]);
  });

  it('glides with one point standing still', () => {
    const from = { x: 0, y: 0, k: 1 };
    const to = scaledAbout(from, 4, 100, 50, [0.1, 10]);
    const half = between(from, to, 0.5);
    expect(half.k).toBeCloseTo(2, 9);
    expect(toMm(half, 100, 50)[0]).toBeCloseTo(100, 9);
    expect(between(from, to, 1)).toEqual(to);
    expect(between(from, { x: 10, y: 4, k: 1 }, 0.5)).toEqual({ x: 5, y: 2, k: 1 });
  });

  it('stands on whole device pixels', () => {
    expect(onWholePixels({ x: 1.3, y: -2.74, k: 3 }, 2)).toEqual({ x: 1.5, y: -2.5, k: 3 });
  });

  it('shows the box that the frame covers, with its margin', () => {
    expect(visibleBox({ x: 10, y: 20, k: 2 }, size, 10)).toEqual({ x0: -10, y0: -15, x1: 200, y1: 145 });
  });
});
