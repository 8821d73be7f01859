import { describe, expect, it } from 'vitest';
import { heelRows, rowSteps } from '../../../src/engine/6-drawing/steps/rowSteps.ts';
import { stepWords } from '../../../src/engine/6-drawing/steps/stepWords.ts';
import { defaultChoices, type PublishChoices } from '../../../src/engine/publish/publishChoices.ts';
import { publishPattern } from '../../../src/engine/publish/publishPattern.ts';
import { MOST_STEPS, stepFigures, steppedSize } from '../../../src/engine/publish/steps/stepFigures.ts';
import { workedSizes } from '../../../src/engine/publish/workedSizes.ts';
import { BAND, DEMO } from './demoPattern.ts';

const choices = (more: Partial<PublishChoices> = {}): PublishChoices => ({ ...defaultChoices(DEMO), sizes: 0, ...more });
const worked = workedSizes(DEMO, choices());
const { fabric, program } = worked.sizes[0]!;
const rowNumbered = (number: number): number => fabric.rows.findIndex((row) => row.number === number && fabric.sections[row.section]!.name === 'HEEL');
const told = (number: number, hand: 'right' | 'left' = 'right'): string[] => rowSteps(fabric, rowNumbered(number), program.rows[rowNumbered(number)]!).map((step) => {
  const { does, open } = stepWords(fabric, step, { terms: 'us', size: 0, hand });
  return `${does} ${open}`.trim();
});

describe('steps', () => {
  it('are the clauses of a row, with what is open on either side before each, and the row when it is done', () => {
    expect(told(2)).toEqual(['Ch 1, turn. open: 0 on the left, 24 on the right', 'Sc in next 17 sts. open: 0 on the left, 24 on the right', 'Leave 7 sts unworked. Row 2 is done, 17 sts made: turn. open: 0 on the left, 7 on the right']);
    expect(told(4)).toEqual(['Ch 1, turn. open: 7 on the left, 17 on the right', 'Sc in each st across. open: 7 on the left, 17 on the right', 'Sc in next unworked st. open: 7 on the left, 7 on the right', 'Row 4 is done, 11 sts made: turn. open: 7 on the left, 6 on the right']);
  });

  it('change sides for the left hand', () => {
    expect(told(2, 'left')[0]).toBe('Ch 1, turn. open: 24 on the left, 0 on the right');
  });

  it('count what is open in a first row too, and say nothing of it where there is nothing below', () => {
    expect(told(1)).toEqual([
      'Ch 1. open: 24 on the left, 0 on the right', 'Sc in same st. open: 24 on the left, 0 on the right', 'Sc in next 11 sts. open: 23 on the left, 0 on the right',
      'Skip the seam, sc in next 12 sts. open: 12 on the left, 0 on the right', 'Leave the rest unworked. Row 1 is done, 24 sts made: turn. open: 0 on the left, 0 on the right',
    ]);
    const foundation = fabric.rows.findIndex(({ word }) => word === 'foundation');
    expect(rowSteps(fabric, foundation, program.rows[foundation]!).map((step) => stepWords(fabric, step, { terms: 'us', size: 0, hand: 'right' }).open)).toEqual(['', '']);
  });

  it('say something each, in every row of the piece', () => {
    fabric.rows.forEach(({ first, end }, row) => {
      if (first === end) return;
      for (const step of rowSteps(fabric, row, program.rows[row]!)) expect(stepWords(fabric, step, { terms: 'us', size: 0, hand: 'right' }).does, `row ${row}`).not.toBe('');
    });
  });

  it('are shown in the first size that has the rows chosen', () => {
    const all = workedSizes(DEMO, { ...choices(), sizes: 'all' });
    const short = { ...all, sizes: all.sizes.map((size, i) => (i === 0 ? { ...size, fabric: { ...size.fabric, rows: size.fabric.rows.slice(0, 3) } } : size)) };
    const { line } = DEMO.sections.flatMap(({ lines }) => lines.filter((one) => one.kind === 'row').map(({ id }) => ({ line: id }))).at(-1)!;
    expect(steppedSize(short, { stepRows: [{ line, nth: 0 }] }).name).toBe('M');
    expect(steppedSize(all, { stepRows: [{ line, nth: 0 }] }).name).toBe('S');
    expect(steppedSize(all, { stepRows: 'heel' }).name).toBe('S');
  });

  it('make every stitch of their row once, each beginning at a place that is worked into', () => {
    for (const row of heelRows(fabric)) {
      const steps = rowSteps(fabric, row, program.rows[row]!);
      let at = fabric.rows[row]!.first;
      for (const step of steps) {
        expect(step.from).toBe(at);
        at = step.to;
        if (step.place >= 0) expect([...fabric.bases.subarray(fabric.baseStart[step.from]!, fabric.baseStart[step.to]!)]).toContain(step.place);
      }
      expect(at).toBe(fabric.rows[row]!.end);
      expect(steps.at(-1)!.end).toBe(true);
      expect(steps.at(-1)!.open).toEqual(fabric.rows[row]!.left);
    }
  });

  it('are of the heel’s rows if nothing else is chosen: of each line the first two and the last', () => {
    expect(heelRows(fabric).map((row) => fabric.rows[row]!.number)).toEqual([1, 2, 3, 4, 5, 17]);
    expect(heelRows(workedSizes(BAND, { ...defaultChoices(BAND), sizes: 0 }).sizes[0]!.fabric)).toEqual([]);
  });

  it('refuse a row that is not there', () => {
    expect(() => rowSteps(fabric, 5_000, { body: [] })).toThrow(/5000/);
  });

  it('show what is done and not what comes later, with a ring at the next place by shape', () => {
    const figures = stepFigures(worked, choices(), 80);
    expect(figures.map(({ number }) => number)).toEqual(figures.map((_, i) => i + 1));
    for (const { picture, step } of figures) {
      expect(picture.widthMm).toBeLessThanOrEqual(82);
      expect((picture.svg.match(/<circle/g) ?? []).length).toBe(step.place >= 0 ? 2 : 0);
    }
    const uses = (index: number): number => (figures[index]!.picture.svg.match(/<use/g) ?? []).length;
    const [first, last] = [figures.findIndex(({ step }) => step.row === rowNumbered(17)), figures.length - 1];
    expect(uses(last) - uses(first)).toBe(fabric.rows[rowNumbered(17)]!.end - fabric.rows[rowNumbered(17)]!.first);
  });

  it('are of the rows that are chosen, and no more than a lesson can hold', () => {
    const line = DEMO.sections[3]!.lines.find((one) => one.kind === 'row')!;
    const chosen = stepFigures(worked, choices({ stepRows: [{ line: line.id, nth: 0 }] }), 80);
    expect(chosen.map(({ words }) => words.label)).toEqual(['Rnd 1, step 1', 'Rnd 1, step 2']);
    const all = DEMO.sections.flatMap(({ lines }) => lines.flatMap((one) => Array.from({ length: 40 }, (_, nth) => ({ line: one.id, nth })))).filter(({ line: id }) => DEMO.sections.some(({ lines }) => lines.some((one) => one.id === id && one.kind === 'row')));
    expect(stepFigures(worked, choices({ stepRows: all }), 80).length).toBeLessThanOrEqual(MOST_STEPS);
  });

  it('go out as files with their words, one a step', () => {
    const { files } = publishPattern(DEMO, choices({ parts: ['steps'] }));
    const pictures = files.filter(({ name }) => /-step-\d+\.svg$/.test(name));
    expect(pictures).toHaveLength(stepFigures(worked, choices(), 80).length);
    expect(pictures.some(({ text }) => text.includes('Sc in next 17 sts.') && text.includes('open: 0 on the left, 24 on the right'))).toBe(true);
  });
});
