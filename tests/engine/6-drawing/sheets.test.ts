import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { cutSheets } from '../../../src/engine/6-drawing/cutSheets.ts';
import { cutSpan } from '../../../src/engine/6-drawing/cutSpan.ts';
import { PAPERS, SHEET_HEAD_MM, SHEET_MARGIN_MM } from '../../../src/engine/6-drawing/paper.ts';
import { sheetFurniture } from '../../../src/engine/6-drawing/sheetFurniture.ts';
import { LEAST_TEXT_MM, POINT_MM, textWidth } from '../../../src/engine/6-drawing/textSize.ts';
import { writeSheets } from '../../../src/engine/6-drawing/writeSheets.ts';
import { chartOf } from './chartOf.ts';
import { attributeValues, xmlFault } from './wellFormed.ts';

const panel = (width: number, rows: number): string => `Foundation: ch ${width + 1}.
Row 1 (RS): sc in 2nd ch from hook and in each ch across.
Rows 2-${rows}: ch 1, turn, sc in each st across.`;

describe('cutting a stretch', () => {
  it('covers it without a gap, overlaps by what is asked, fits the paper and makes progress', () => {
    fc.assert(
      fc.property(fc.double({ min: 1, max: 3000, noNaN: true }), fc.double({ min: 40, max: 300, noNaN: true }), fc.double({ min: 0.5, max: 12, noNaN: true }), (length, most, cell) => {
        const boundaries = Array.from({ length: Math.floor(length / cell) + 1 }, (_, i) => i * cell);
        const spans = cutSpan(0, length, most, 2 * cell, boundaries);
        expect(spans[0]![0]).toBe(0);
        expect(spans.at(-1)![1]).toBe(length);
        spans.forEach(([from, to], i) => {
          expect(to - from).toBeLessThanOrEqual(most + 1e-6);
          if (i > 0) expect(spans[i - 1]![1] - from).toBeCloseTo(2 * cell, 6);
          if (i < spans.length - 1) expect(to / cell).toBeCloseTo(Math.round(to / cell), 5);
        });
        expect(spans.length).toBeLessThanOrEqual(Math.ceil(length / (most / 2 - 2 * cell > 0 ? most / 2 - 2 * cell : 1)) + 1);
      }),
      { seed: 25, numRuns: 200 },
    );
  });

  it('refuses paper smaller than the overlap, with both numbers', () => {
    expect(() => cutSpan(0, 100, 5, 8, [])).toThrow(new RangeError("stretches of 5 mm can't overlap by 8 mm"));
  });
});

describe('sheets', () => {
  it('a chart that fits is one sheet, upright', () => {
    const { drawing } = chartOf(panel(30, 20));
    const sheets = cutSheets(drawing, PAPERS.a4);
    expect(sheets).toHaveLength(1);
    expect(sheets[0]!.paper.heightMm).toBe(297);
    expect(sheets[0]!.window).toEqual(drawing.bounds);
  });

  it('a wide one lies down where that saves a sheet', () => {
    const { drawing } = chartOf(panel(55, 20));
    expect(cutSheets(drawing, PAPERS.a4)).toHaveLength(1);
    expect(cutSheets(drawing, PAPERS.a4)[0]!.paper.widthMm).toBe(297);
    expect(cutSheets(drawing, PAPERS.a4, { orientation: 'portrait' })).toHaveLength(2);
  });

  const big = chartOf(panel(70, 100), { draw: { symbols: 'none' } });

  it.each(['a4', 'letter'] as const)('every cell is on a sheet, inside the margins, and neighbours share two stitches and rows (%s)', (name) => {
    const sheets = cutSheets(big.drawing, PAPERS[name], { orientation: 'portrait' });
    expect(sheets.length).toBe(sheets[0]!.columns * sheets[0]!.rows);
    expect(sheets[0]!.columns).toBeGreaterThan(1);
    expect(sheets[0]!.rows).toBeGreaterThan(1);
    const { stitches, cellWidthMm, cellHeightMm } = big.drawing;
    for (let i = 0; i < stitches.count; i++) {
      const [x, y] = [stitches.x[i]!, stitches.y[i]!];
      if (!sheets.some(({ window }) => x > window.x0 && x < window.x1 && y > window.y0 && y < window.y1)) expect.fail(`stitch ${i} is on no sheet`);
    }
    sheets.forEach((sheet) => {
      expect(sheet.window.x0 + sheet.shiftX).toBeGreaterThanOrEqual(SHEET_MARGIN_MM - 1e-6);
      expect(sheet.window.x1 + sheet.shiftX).toBeLessThanOrEqual(sheet.paper.widthMm - SHEET_MARGIN_MM + 1e-6);
      expect(sheet.window.y1 + sheet.shiftY).toBeLessThanOrEqual(sheet.paper.heightMm - SHEET_MARGIN_MM + 1e-6);
      const right = sheets.find((other) => other.row === sheet.row && other.column === sheet.column + 1);
      if (right) expect(sheet.window.x1 - right.window.x0).toBeCloseTo(2 * cellWidthMm, 3);
      const below = sheets.find((other) => other.column === sheet.column && other.row === sheet.row + 1);
      if (below) expect(sheet.window.y1 - below.window.y0).toBeCloseTo(2 * cellHeightMm, 3);
    });
  });

  it('are cut between rows and between repeats', () => {
    const sheets = cutSheets(big.drawing, PAPERS.a4, { orientation: 'portrait', repeatStitches: 7 });
    const { stitches, cellWidthMm } = big.drawing;
    const right = Math.max(...Array.from({ length: stitches.count }, (_, i) => (stitches.filled[i] ? stitches.corners[i * 8 + 2]! : -Infinity)));
    const tops = new Set(Array.from({ length: stitches.count }, (_, i) => stitches.corners[i * 8 + 1]!));
    const cutX = (right - sheets[0]!.window.x1) / (7 * cellWidthMm);
    expect(cutX).toBeCloseTo(Math.round(cutX), 3);
    expect(tops.has(sheets[0]!.window.y1)).toBe(true);
  });

  it('are written as files of the paper\'s size with a 100 mm bar, a map and the neighbours\' numbers', () => {
    const files = writeSheets(big.drawing, PAPERS.letter, { ...big.svg, orientation: 'portrait' });
    files.forEach((file, i) => {
      expect(file).toContain('width="215.9mm" height="279.4mm" viewBox="0 0 215.9 279.4"');
      expect(file).toContain(`sheet ${i + 1} of ${files.length}`);
      expect(file).toContain('100 mm, to measure after printing at actual size');
      expect(xmlFault(file)).toBeNull();
      const ids = attributeValues(file, 'id');
      expect(new Set(ids).size).toBe(ids.length);
      attributeValues(file, 'xlink:href').forEach((href) => expect(ids).toContain(href.slice(1)));
      expect(/d="M10 ([\d.]+)L110 \1M/.exec(file)).not.toBeNull();
    });
    expect(files[0]).toContain('>sheet 2</text>');
    expect(writeSheets(big.drawing, PAPERS.letter, { ...big.svg, orientation: 'portrait' })).toEqual(files);
  });

  it.each([
    ['Short', ['Short']],
    ['A very long name of a pattern that goes on and on beyond what a line of a sheet beside its map can hold, leg, size medium', null],
    ['x'.repeat(300), null],
  ] as const)('have their title on one line or two, clear of the sheet map: %s', (title, lines) => {
    for (const leastMm of [LEAST_TEXT_MM, 12 * POINT_MM]) {
      for (const sheet of cutSheets(big.drawing, PAPERS.a4, { orientation: 'portrait' })) {
        const marks = sheetFurniture(sheet, 9, title, leastMm);
        const set = marks.flatMap((mark) => (mark.kind === 'text' && mark.role === 'title' ? [mark] : []));
        if (lines) expect(set.map(({ text }) => text)).toEqual(lines);
        else if (title.includes(' ')) expect(set).toHaveLength(2);
        const caption = marks.find((mark) => mark.kind === 'text' && mark.text.startsWith('sheet ') && mark.anchor === 'end');
        const clear = caption?.kind === 'text' ? caption.x - textWidth(caption.text, caption.sizeMm) : 0;
        for (const { text, x, y, sizeMm } of set) {
          expect(x + textWidth(text, sizeMm)).toBeLessThan(clear);
          expect(y).toBeLessThan(SHEET_MARGIN_MM + SHEET_HEAD_MM);
        }
        const joined = set.map(({ text }) => text).join(' ');
        expect(joined === title || (joined.endsWith('…') && title.startsWith(joined.slice(0, -1)))).toBe(true);
      }
    }
  });

  it('carry the legend once: under the last part or on a sheet of its own', () => {
    for (const rows of [20, 66]) {
      const { drawing, svg } = chartOf(panel(40, rows));
      const files = writeSheets(drawing, PAPERS.a4, { ...svg, orientation: 'portrait' });
      expect(files.map((file) => (file.match(/id="legend"/g) ?? []).length)).toEqual([...files.slice(1).map(() => 0), 1]);
    }
  });
});
