import { describe, expect, it } from 'vitest';
import type { Stroke } from '../../../src/engine/6-drawing/drawing.ts';
import { cutBlocks } from '../../../src/editor/chart/blocks.ts';
import { blockFills, blockSymbols, FIRST_YARN_INK, GHOST_FILL } from '../../../src/editor/chart/blockPaths.ts';
import { detailFor } from '../../../src/editor/chart/detail.ts';
import { fillPath } from '../../../src/editor/chart/fillPaths.ts';
import { glyphPen } from '../../../src/editor/chart/glyphPen.ts';
import { REACHING_INK, GHOST_INK, inksOnYarns } from '../../../src/editor/chart/inks.ts';
import { area, strokeOutline } from '../../../src/editor/chart/strokeOutline.ts';
import { blockPrints } from '../../../src/editor/chart/blockPrints.ts';
import { itemOfStitch } from '../../../src/editor/chart/itemOfStitch.ts';
import { marksPath } from '../../../src/editor/chart/marksPath.ts';
import { cellsPath, flagsPath, ghostPaths, rowPath } from '../../../src/editor/chart/overlayPaths.ts';
import { printLook } from '../../../src/engine/6-drawing/look.ts';
import { pathAreas } from './pathArea.ts';
import { syntheticDrawing, syntheticYarns, YARNS } from './syntheticDrawing.ts';

const exact = { growMm: 0, toleranceMm: 0.01, merge: true };
const panel = syntheticDrawing({ columns: 6, rows: 4 });
const all = [...panel.stitches.stitch.keys()];

describe('filling cells', () => {
  it('makes a rectangle of a straight run, whichever way the row runs', () => {
    expect(fillPath(panel, all, 0, 6, exact)).toBe('M2400 -380h-2400v380h2400z');
    expect(fillPath(panel, all, 6, 12, exact)).toBe('M0 -380h2400v-380h-2400z');
  });

  it('gives each cell its own outline when asked', () => {
    expect(pathAreas(fillPath(panel, all, 0, 6, { ...exact, merge: false }))).toHaveLength(6);
  });

  it('breaks a run where a stitch is missing', () => {
    expect(pathAreas(fillPath(panel, [0, 1, 3, 4, 5], 0, 5, exact)).map(Math.abs)).toEqual([2 * 400 * 380, 3 * 400 * 380]);
  });

  it('grows outward on all four sides', () => {
    expect(pathAreas(fillPath(panel, all, 0, 6, { ...exact, growMm: 0.1 })).map(Math.abs)).toEqual([2420 * 400]);
  });

  it.each([false, true])('covers the same area merged or not, all outlines the same way round (tilted: %s)', (tilted) => {
    const drawing = syntheticDrawing({ columns: 24, rows: 8, tilted });
    const items = [...drawing.stitches.stitch.keys()];
    const total = (d: string): number => pathAreas(d).reduce((sum, part) => sum + part, 0);
    const merged = fillPath(drawing, items, 0, items.length, exact);
    const single = fillPath(drawing, items, 0, items.length, { ...exact, merge: false });
    expect(Math.abs(total(merged) / total(single) - 1)).toBeLessThan(0.002);
    expect(pathAreas(merged).every((part) => part < 0)).toBe(true);
    expect(pathAreas(single).every((part) => part < 0)).toBe(true);
    expect(pathAreas(merged)).toHaveLength(8);
    expect(merged.length).toBeLessThan(single.length / 1.4);
  });
});

describe('outlines of strokes', () => {
  const cases: { name: string; stroke: Stroke; width: number; area: number; within: number }[] = [
    { name: 'a line is as long as it is, and as wide as asked', stroke: { kind: 'line', points: [0, 0, 3, 4] }, width: 0.5, area: 2.5, within: 1e-9 },
    { name: 'a filled oval has the area of an ellipse', stroke: { kind: 'oval', x: 1, y: 2, rx: 2, ry: 1, turnRad: 0.3, filled: true }, width: 0.5, area: Math.PI * 2, within: 0.02 },
    { name: 'an open oval is a band', stroke: { kind: 'oval', x: 1, y: 2, rx: 2, ry: 1, turnRad: 0.3, filled: false }, width: 0.4, area: Math.PI * (2.2 * 1.2 - 1.8 * 0.8), within: 0.02 },
    { name: 'a curve is a band along it (a straight one here)', stroke: { kind: 'curve', points: [0, 0, 1, 0, 2, 0] }, width: 0.5, area: 1, within: 1e-9 },
  ];
  it.each(cases)('$name', ({ stroke, width, area: expected, within }) => {
    const sum = strokeOutline(stroke, width, 64).reduce((total, outline) => total + area(outline) / 2, 0);
    expect(Math.abs(sum / expected - 1)).toBeLessThanOrEqual(within);
  });

  it('closes the gap where a line bends', () => {
    const [first, second] = strokeOutline({ kind: 'line', points: [0, 0, 4, 0, 4, 4] }, 1, 8);
    expect(Math.max(...first!.filter((_, i) => i % 2 === 0))).toBe(4.5);
    expect(Math.min(...second!.filter((_, i) => i % 2 === 1))).toBe(-0.5);
  });

  it('draws nothing for a line without length and fills an oval too small to be open', () => {
    expect(strokeOutline({ kind: 'line', points: [1, 1, 1, 1] }, 1, 8)).toEqual([]);
    expect(strokeOutline({ kind: 'oval', x: 0, y: 0, rx: 0.4, ry: 0.4, turnRad: 0, filled: false }, 1, 8)).toHaveLength(1);
  });
});

describe('symbols and fills of a block', () => {
  const shape = { columns: 16, rows: 16 };
  const drawing = syntheticDrawing(shape);
  const blocks = cutBlocks(drawing, 16);
  const yarnOf = syntheticYarns(shape, 3);
  const inks = inksOnYarns(printLook(YARNS));

  it('turns a glyph clockwise from up', () => {
    const pen = glyphPen({ ...drawing, glyphs: [{ id: 'bar', name: 'bar', strokes: [{ kind: 'line', points: [0, 0, 0, 4] }] }] }, detailFor(60, true));
    const half = Math.round(detailFor(60, true).lineWidth * 3.8 * 50);
    expect(pen(0, 0)).toBe(`m${half} 0l0 400 ${-2 * half} 0 0 -400z`);
    expect(pen(0, Math.PI / 2)).toBe(`m0 ${half}l-400 0 0 ${-2 * half} 400 0z`);
    expect(pen(0, 2 * Math.PI)).toBe(pen(0, 0));
  });

  it('fills every cell with its yarn', () => {
    const areas = new Map<number, number>();
    for (let b = 0; b < blocks.count; b++) {
      for (const { key, d } of blockFills(drawing, blocks, b, yarnOf, { ...detailFor(60, true), grow: 0 })) {
        areas.set(key, (areas.get(key) ?? 0) + pathAreas(d).reduce((sum, part) => sum + Math.abs(part), 0));
      }
    }
    for (const yarn of [0, 1, 2]) expect(areas.get(yarn)! / (400 * 380)).toBeCloseTo(yarnOf.filter((y) => y === yarn).length, 6);
  });

  it('groups symbols by the ink they have on paper, or on their yarn', () => {
    const pen = glyphPen(drawing, detailFor(20, true));
    const keys = (withInks: boolean): Set<number> => {
      const found = new Set<number>();
      for (let b = 0; b < blocks.count; b++) for (const { key } of blockSymbols(drawing, blocks, b, yarnOf, pen, withInks ? inks : null)) found.add(key);
      return found;
    };
    expect(keys(false)).toEqual(new Set([0, 1, 2, 3]));
    // What reaches for a stitch elsewhere has its own ink on any yarn, and comes last, because it stands on a halo.
    expect([...keys(true)].filter((key) => key < FIRST_YARN_INK)).toEqual([REACHING_INK]);
    expect([...keys(true)].every((key) => key < FIRST_YARN_INK + inks.colours.length)).toBe(true);
    for (let b = 0; b < blocks.count; b++) {
      const order = blockSymbols(drawing, blocks, b, yarnOf, pen, inks).map(({ key }) => key);
      expect(order.includes(REACHING_INK) ? order.at(-1) : REACHING_INK).toBe(REACHING_INK);
    }
  });

  it('prints a mark on each cell whose yarn has one, in the corner beside a symbol', () => {
    const marks = YARNS.map((yarn, y) => ({ ...yarn, mark: y === 0 ? ('none' as const) : y === 1 ? ('slash' as const) : ('dot' as const) }));
    let slashes = 0;
    let dots = 0;
    for (let b = 0; b < blocks.count; b++) {
      const whole = blockPrints(drawing, blocks, b, yarnOf, marks, false);
      slashes += whole.stroked.split('M').length - 1;
      dots += whole.filled.split('M').length - 1;
      expect(blockPrints(drawing, blocks, b, yarnOf, marks, true).stroked).not.toBe(whole.stroked);
    }
    expect(slashes).toBe(yarnOf.filter((yarn) => yarn === 1).length);
    expect(dots).toBe(yarnOf.filter((yarn) => yarn === 2).length);
  });

  it('keeps ghosts and cells beside the fabric apart', () => {
    const ghost = drawing.stitches.ghost.slice();
    const filled = drawing.stitches.filled.slice();
    ghost[0] = 1;
    filled[1] = 0;
    const marked = { ...drawing, stitches: { ...drawing.stitches, ghost, filled } };
    const block = blocks.blockOf[0]!;
    expect(blockFills(marked, blocks, block, yarnOf, detailFor(20, true)).map((path) => path.key)).toContain(GHOST_FILL);
    const symbols = blockSymbols(marked, blocks, block, yarnOf, glyphPen(marked, detailFor(20, true)), inks).map((path) => path.key);
    expect(symbols).toContain(GHOST_INK);
    expect(symbols).toContain(0);
  });
});

describe('what is laid over a chart', () => {
  const items = itemOfStitch(panel);

  it('is one outline for neighbours, whatever order they come in, and none for stitches that are not drawn', () => {
    expect(pathAreas(cellsPath(panel, items, [2, 0, 1])).map(Math.abs)).toEqual([3 * 400 * 380]);
    expect(cellsPath(panel, items, [999, -1])).toBe('');
  });

  it('is a whole row without its ghosts', () => {
    expect(pathAreas(rowPath(panel, 1)).map(Math.abs)).toEqual([6 * 400 * 380]);
    const ghost = panel.stitches.ghost.slice();
    ghost[6] = 1;
    expect(pathAreas(rowPath({ ...panel, stitches: { ...panel.stitches, ghost } }, 1)).map(Math.abs)).toEqual([5 * 400 * 380]);
  });

  it('flags a stitch in its top right corner', () => {
    expect(flagsPath(panel, items, [0, 999])).toBe('M2400 -380L2200 -380L2400 -190z');
  });

  it('is cut by yarn and by place, so that a long stroke changes few outlines', () => {
    const wide = syntheticDrawing({ columns: 60, rows: 2 });
    const cells = Array.from({ length: 60 }, (_, stitch) => ({ stitch, yarn: stitch < 30 ? 1 : 2 }));
    const before = ghostPaths(wide, itemOfStitch(wide), cells.slice(0, 40), 0);
    const after = ghostPaths(wide, itemOfStitch(wide), cells.slice(0, 41), 0);
    expect(new Set(after.map((path) => path.key)).size).toBe(after.length);
    expect(after.filter((path) => !before.some((old) => old.key === path.key && old.d === path.d))).toHaveLength(1);
    const area = (paths: typeof after): number => paths.flatMap((path) => pathAreas(path.d)).reduce((sum, part) => sum + Math.abs(part), 0);
    expect(area(after)).toBe(41 * 400 * 380);
  });

  it('gathers lines and areas by role, in the order asked for', () => {
    const paths = marksPath(panel.marks, ['bandWS', 'grid', 'title']);
    expect(paths.map(({ role, kind }) => `${role} ${kind}`)).toEqual(['bandWS area', 'grid line']);
    expect(paths[0]!.d.split('z').length - 1).toBe(2);
  });
});
