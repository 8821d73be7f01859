import { describe, expect, it } from 'vitest';
import { planRuler, ruler, rulerLabelOf, withArrow } from '../../../src/editor/chart/ruler.ts';
import { fitView } from '../../../src/editor/chart/viewTransform.ts';
import { syntheticDrawing } from './syntheticDrawing.ts';

const size = { width: 800, height: 600 };

describe('row and stitch numbers on the screen', () => {
  const drawing = syntheticDrawing({ columns: 20, rows: 12 });
  const plan = planRuler(drawing);

  it('stand where the drawing has them when there is room', () => {
    const { inPlace, held, thinned } = ruler(drawing, plan, fitView(drawing.bounds, size, 'whole', 20), size);
    expect(inPlace.filter((label) => label.row !== null).map((label) => label.text).sort()).toEqual(Array.from({ length: 12 }, (_, i) => String(i + 1)).sort());
    expect(held).toEqual([]);
    expect(thinned).toBe(false);
  });

  it('know the side that each row starts from', () => {
    for (const { row, side } of plan.rows) expect(side).toBe(row % 2 === 0 ? 'right' : 'left');
  });

  it('are held at the edge when their place is out of sight', () => {
    const view = { k: 10, x: -300, y: 400 };
    const { inPlace, held } = ruler(drawing, plan, view, size);
    const left = held.filter((label) => label.side === 'left');
    expect(left.map((label) => label.text)).toContain('2');
    expect(left.find((label) => label.text === '2')!.y).toBeCloseTo(-1.5 * 3.8 * 10 + 400, 4);
    expect(inPlace.some((label) => label.side === 'left')).toBe(false);
    expect(left.every((label) => label.y >= 0 && label.y <= size.height)).toBe(true);
  });

  it('are thinned to fives or tens when rows are too narrow, and carry their arrows then', () => {
    const tall = syntheticDrawing({ columns: 20, rows: 200 });
    const { inPlace, thinned, fontPx } = ruler(tall, planRuler(tall), fitView(tall.bounds, size, 'whole', 20), size);
    const rows = inPlace.filter((label) => label.row !== null);
    expect(thinned).toBe(true);
    expect(fontPx).toBe(11);
    expect(rows.length).toBeGreaterThan(10);
    expect(rows.filter((label) => Number(label.text) % 5 !== 0).map((label) => label.text)).toEqual(['1']);
    expect(rows.some((label) => label.text === '200')).toBe(true);
    expect(withArrow(rows.find((label) => label.side === 'right')!, true)).toMatch(/^← \d+$/);
    expect(withArrow(rows.find((label) => label.side === 'left')!, true)).toMatch(/^\d+ →$/);
  });

  it('on the fabric of rounds are thinned as one line, and carry no arrow', () => {
    const rounds = { ...drawing, marks: drawing.marks.map((mark, i) => (mark.kind === 'text' && mark.role === 'rowNumber' ? { ...mark, anchor: 'middle' as const, x: i % 2 === 0 ? 20 : 22 } : mark)) };
    const { inPlace, thinned } = ruler(rounds, planRuler(rounds), { k: 1.2, x: 300, y: 400 }, size);
    const labels = inPlace.filter((label) => label.row !== null);
    expect(thinned).toBe(true);
    expect(labels.length).toBeGreaterThan(2);
    expect(labels.map((label) => [label.side, withArrow(label, true)])).toEqual(labels.map((label) => ['inside', label.text]));
  });

  it('of the row in hand is there even where it was left out', () => {
    const tall = syntheticDrawing({ columns: 20, rows: 200 });
    const [plan, view] = [planRuler(tall), fitView(tall.bounds, size, 'whole', 20)];
    const made = ruler(tall, plan, view, size);
    const row = plan.rows.find(({ mark }) => mark.text === '53')!.row;
    expect(rulerLabelOf(tall, plan, made, row, view, size)).toMatchObject({ text: '53', row, held: false });
    // One that stands there already isn't set twice, and a row without a number has none.
    expect(rulerLabelOf(tall, plan, made, made.inPlace[0]!.row, view, size)).toBeNull();
    expect(rulerLabelOf(tall, plan, made, null, view, size)).toBeNull();
  });

  it('are held below when the bottom of the chart is out of sight', () => {
    const { held } = ruler(drawing, plan, { k: 30, x: 0, y: 2000 }, size);
    expect(held.filter((label) => label.side === 'bottom').length).toBeGreaterThan(0);
  });
});
