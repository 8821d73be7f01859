import { describe, expect, it } from 'vitest';
import type { Mark, MarkRole } from '../../../src/engine/6-drawing/drawing.ts';
import { scaleDrawing } from '../../../src/engine/6-drawing/scaleDrawing.ts';
import { LEAST_TEXT_MM } from '../../../src/engine/6-drawing/textSize.ts';
import { stitchCode } from '../../../src/engine/craft/stitches.ts';
import { FLAG } from '../../../src/engine/3-fabric/fabric.ts';
import { chartOf } from './chartOf.ts';
import { SAMPLES } from '../../../src/editor/gallery/samples.ts';

const PLAIN = 'Foundation: ch 13.\nRow 1 (RS): sc in 2nd ch from hook and in each ch across.\nRows 2-11: ch 1, turn, sc in each st across.';
const HEEL = `Sample\n\n${SAMPLES.find(({ name }) => name === 'heel')!.text}`;
const texts = (marks: readonly Mark[], role: MarkRole): Extract<Mark, { kind: 'text' }>[] => marks.flatMap((mark) => (mark.kind === 'text' && mark.role === role ? [mark] : []));
const count = (marks: readonly Mark[], role: MarkRole): number => marks.filter((mark) => mark.role === role).length;

describe('a straight chart', () => {
  const { drawing, fabric } = chartOf(PLAIN);

  it('draws every stitch of the section once, in working order', () => {
    expect([...drawing.stitches.stitch]).toEqual(Array.from({ length: fabric.count }, (_, i) => i));
    expect([...drawing.stitches.ghost].every((ghost) => ghost === 0)).toBe(true);
  });

  it('fills stitches with their yarn, chains not', () => {
    const filled = [...drawing.stitches.filled].reduce((sum, value) => sum + value, 0);
    expect(filled).toBe(12 * 11);
  });

  it('numbers rows at the side where they start, with an arrow that points into the row', () => {
    const numbers = texts(drawing.marks, 'rowNumber');
    expect(numbers.map(({ text }) => text)).toEqual(Array.from({ length: 11 }, (_, i) => String(i + 1)));
    const middle = (drawing.bounds.x0 + drawing.bounds.x1) / 2;
    numbers.forEach(({ text, x }) => expect(x > middle).toBe(Number(text) % 2 === 1));
    const arrows = drawing.marks.flatMap((mark) => (mark.kind === 'line' && mark.role === 'direction' ? [mark.points] : []));
    expect(arrows).toHaveLength(11);
    arrows.forEach(([tail, , tip]) => expect(Math.abs(tip! - middle)).toBeLessThan(Math.abs(tail! - middle)));
  });

  it('has heavier lines after every 5th and 10th stitch from the right and row from the bottom', () => {
    // 11 inner column lines: after 5 and after 10; 10 inner row lines: after 5 and after 10. Four edges.
    expect(count(drawing.marks, 'grid')).toBe(11 - 2 + 10 - 2);
    expect(count(drawing.marks, 'grid5')).toBe(2);
    expect(count(drawing.marks, 'grid10')).toBe(2);
    expect(count(drawing.marks, 'frame')).toBe(4);
    const heavy = drawing.marks.flatMap((mark) => (mark.kind === 'line' && mark.role === 'grid5' && mark.points[0] === mark.points[2] ? [mark.points[0]!] : []));
    const right = Math.max(...drawing.marks.flatMap((mark) => (mark.kind === 'line' && mark.role === 'frame' ? [mark.points[0]!, mark.points[2]!] : [])));
    expect(right - heavy[0]!).toBeCloseTo(5 * 4, 3);
  });

  it('numbers stitches below: the first, every fifth, the last where there is room', () => {
    expect(texts(drawing.marks, 'stitchNumber').map(({ text }) => text)).toEqual(['1', '5', '10', '12']);
  });

  it('counts from the left for a left-handed maker', () => {
    const left = chartOf(PLAIN, { layOut: { hand: 'left' } }).drawing;
    const first = texts(left.marks, 'stitchNumber').find(({ text }) => text === '1')!;
    expect(first.x).toBeLessThan((left.bounds.x0 + left.bounds.x1) / 2);
    expect(texts(left.marks, 'rowNumber')[0]!.x).toBeLessThan(first.x);
  });

  it('brackets a repeat where it is asked for', () => {
    const { marks } = chartOf(PLAIN, { draw: { repeatBrackets: [{ from: 3, to: 8, text: '' }] } }).drawing;
    expect(texts(marks, 'repeatText').map(({ text }) => text)).toEqual(['6 sts = 1 repeat']);
    const [bracket] = marks.flatMap((mark) => (mark.kind === 'line' && mark.role === 'repeat' ? [mark.points] : []));
    expect(Math.max(...bracket!.filter((_, i) => i % 2 === 0)) - Math.min(...bracket!.filter((_, i) => i % 2 === 0))).toBeCloseTo(6 * 4, 0);
  });

  it('has no symbols, numbers or grid when none are asked for', () => {
    const bare = chartOf(PLAIN, { draw: { symbols: 'none', numbers: false, grid: false } }).drawing;
    expect(bare.glyphs).toEqual([]);
    expect([...bare.stitches.glyph].every((glyph) => glyph === -1)).toBe(true);
    expect(bare.marks).toEqual([]);
  });

  it('keeps all texts at 6 pt or more and leaves out row numbers that would touch', () => {
    const small = chartOf(PLAIN, { mmPerStitch: 0.8 }).drawing;
    small.marks.forEach((mark) => {
      if (mark.kind === 'text') expect(mark.sizeMm).toBeGreaterThanOrEqual(LEAST_TEXT_MM - 1e-9);
    });
    const rows = texts(small.marks, 'rowNumber').map(({ text }) => text);
    expect(rows.sort((a, b) => Number(a) - Number(b))).toEqual(['1', '2', '5', '6', '10', '11']);
  });

  it('is the same drawing at another scale', () => {
    const twice = scaleDrawing(drawing, 8);
    expect(twice.cellWidthMm).toBe(8);
    expect(twice.stitches.x[20]).toBeCloseTo(drawing.stitches.x[20]! * 2, 4);
    expect(twice.glyphs.map(({ id }) => id)).toEqual(drawing.glyphs.map(({ id }) => id));
    expect(() => scaleDrawing(drawing, 0)).toThrow(RangeError);
  });
});

describe('inks', () => {
  it('tell wrong-side rows, shaping and attaching stitches apart', () => {
    const { drawing, fabric } = chartOf(`Foundation: ch 9.
Row 1 (RS): sc in 2nd ch from hook and in each ch across. (8 sc)
Row 2: ch 1, turn, sc2tog, sc in next 4 sts, 2 sc in next st, sc in next st. (8 sts)`);
    const row = fabric.rows[2]!;
    const inks = [...drawing.stitches.ink.slice(row.first, row.end)];
    expect(inks).toEqual([1, 3, 1, 1, 1, 1, 3, 3, 1]);
  });

  it('turn a leaning cross by half of its lean only', () => {
    const { drawing, fabric } = chartOf(`Foundation: ch 9.
Row 1 (RS): sc in 2nd ch from hook and in each ch across. (8 sc)
Row 2: ch 1, turn, 2 sc in next st, sc in next 7 sts. (9 sc)`);
    const { stitches, glyphs } = drawing;
    const first = fabric.rows[2]!.first + 1;
    expect(glyphs[stitches.glyph[first]!]!.name).toBe('sc');
    const [bottomX, topX] = [(stitches.corners[first * 8]! + stitches.corners[first * 8 + 2]!) / 2, (stitches.corners[first * 8 + 4]! + stitches.corners[first * 8 + 6]!) / 2];
    expect(topX).toBeLessThan(bottomX);
    expect(stitches.glyphTurnRad[first]!).toBeLessThan(0);
    expect(stitches.glyphTurnRad[first]!).toBeGreaterThan(-0.5);
  });
});

describe('a chart without symbols', () => {
  it('still shows where each row of a heel holds to an open stitch', () => {
    const { drawing, fabric } = chartOf(HEEL, { section: 1, draw: { symbols: 'none' } });
    const attaching = [...fabric.flags].filter((flags) => flags & FLAG.attaching).length;
    expect(attaching).toBe(8);
    expect(count(drawing.marks, 'attach')).toBe(attaching);
    expect(count(chartOf(HEEL, { section: 1 }).drawing.marks, 'attach')).toBe(0);
  });
});

describe('what reaches for a stitch elsewhere', () => {
  const SPIKES = `Foundation: ch 9.
Row 1 (RS): sc in 2nd ch from hook and in each ch across. (8 sc)
Row 2: ch 1, turn, sc in each st across. (8 sc)
Row 3: ch 1, turn, sc in next 3 sts, spike sc in next st 1 row below, sc in next 4 sts. (8 sc)`;

  it('has an ink of its own: attaching stitches and spikes', () => {
    const { drawing, fabric } = chartOf(SPIKES);
    const reaching = [...drawing.stitches.ink].flatMap((ink, i) => (ink === 2 ? [drawing.stitches.stitch[i]!] : []));
    expect(reaching).toHaveLength(1);
    expect(fabric.flags[reaching[0]!]! & FLAG.spike).toBeTruthy();
  });

  it('shows a stem from the row itself down to the row it is worked into', () => {
    const { drawing } = chartOf(SPIKES);
    const item = drawing.stitches.ink.indexOf(2);
    const glyph = drawing.glyphs[drawing.stitches.glyph[item]!]!;
    const low = Math.max(...glyph.strokes.flatMap((stroke) => (stroke.kind === 'line' ? [stroke.points[1]!, stroke.points[3]!] : [])));
    expect(low).toBeGreaterThan(1.8 * drawing.cellHeightMm);
  });
});

describe('grey stitches', () => {
  it('have cells to be tinted, chains none', () => {
    const { drawing, fabric } = chartOf(HEEL, { section: 1 });
    const ghosts = [...drawing.stitches.ghost.keys()].filter((i) => drawing.stitches.ghost[i]);
    expect(ghosts.length).toBeGreaterThan(0);
    ghosts.forEach((i) => expect(drawing.stitches.filled[i]).toBe(fabric.kind[drawing.stitches.stitch[i]!] === stitchCode('ch') ? 0 : 1));
  });

  it('are named by their section, once, under them', () => {
    const { drawing } = chartOf(HEEL, { section: 1 });
    expect(texts(drawing.marks, 'caption').map(({ text }) => text)).toEqual(['LEG']);
  });
});

describe('words beside bands', () => {
  it('give way to the count where there is no room for them', () => {
    const HOURGLASS = `Sample\n\n${SAMPLES.find(({ name }) => name === 'hourglass')!.text}`;
    expect(texts(chartOf(HOURGLASS, { section: 1 }).drawing.marks, 'openText').map(({ text }) => text)).toEqual(['4 sts left open by rows 3–9', '4 sts left open by rows 2–8']);
    expect(texts(chartOf(HOURGLASS, { section: 1, mmPerStitch: 1.5 }).drawing.marks, 'openText').map(({ text }) => text)).toEqual(['4', '4']);
  });
});

describe('symbols of a set', () => {
  it('are told by the drawing, and all is one for the US set', () => {
    const of = (symbols: 'all' | 'us' | 'jis') => chartOf(PLAIN, { draw: { symbols } }).drawing;
    expect([of('all').symbols, of('us').symbols, of('jis').symbols]).toEqual(['us', 'us', 'jis']);
    expect(of('all').glyphs).toEqual(of('us').glyphs);
    expect(of('jis').glyphs).not.toEqual(of('us').glyphs);
    expect(chartOf(PLAIN, { draw: { symbols: 'none' } }).drawing.symbols).toBeUndefined();
  });
});
