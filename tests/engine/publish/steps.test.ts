import { describe, expect, it } from 'vitest';
import { heelRows, rowSteps } from '../../../src/engine/6-drawing/steps/rowSteps.ts';
import { stepWords } from '../../../src/engine/6-drawing/steps/stepWords.ts';
import { defaultChoices, type PublishChoices } from '../../../src/engine/publish/publishChoices.ts';
import { publishPattern } from '../../../src/engine/publish/publishPattern.ts';
import { MOST_STEPS, stepFigures } from '../../../src/engine/publish/steps/stepFigures.ts';
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
    expect(told(2)).toEqual(['Ch 1, turn. open: 0 left, 24 right', 'Sc in next 17 sts. open: 0 left, 24 right', 'Leave 7 unworked. Row 2 is done, 17 sts made: turn. open: 0 left, 7 right']);
    expect(told(4)).toEqual(['Ch 1, turn. open: 7 left, 17 right', 'Sc in each st across. open: 7 left, 17 right', 'Sc in next unworked st. open: 7 left, 7 right', 'Row 4 is done, 11 sts made: turn. open: 7 left, 6 right']);
  });

  it('change sides for the left hand', () => {
    expect(told(2, 'left')[0]).toBe('Ch 1, turn. open: 24 left, 0 right');
  });

  it('say nothing of open stitches in a first row, which is worked into another section', () => {
    expect(told(1).join(' ')).not.toContain('open:');
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
    expect(pictures.some(({ text }) => text.includes('Sc in next 17 sts.') && text.includes('open: 0 left, 24 right'))).toBe(true);
  });
});
