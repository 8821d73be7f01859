import { gaugeAtScale } from '../../5-layout/gaugeAtScale.ts';
import { layOut } from '../../5-layout/layOutSection.ts';
import { draw } from '../../6-drawing/draw.ts';
import type { Drawing } from '../../6-drawing/drawing.ts';
import { printLook, type Look } from '../../6-drawing/look.ts';
import { heelRows, rowSteps, type Step } from '../../6-drawing/steps/rowSteps.ts';
import { STEP_CELLS, stepPicture, type StepPicture } from '../../6-drawing/steps/stepPicture.ts';
import { stepWords, type StepWords } from '../../6-drawing/steps/stepWords.ts';
import type { PublishChoices } from '../publishChoices.ts';
import type { WorkedPattern, WorkedSize } from '../workedSizes.ts';

/** A step with its picture and its words, numbered through. */
export interface StepFigure {
  readonly number: number;
  readonly section: string;
  readonly step: Step;
  readonly picture: StepPicture;
  readonly words: StepWords;
}

/** Steps beyond this are left out: a lesson of hundreds of pictures is no lesson, and its bytes would have no bound. */
export const MOST_STEPS = 400;

/** The size whose rows are shown step by step: of those that go out the first that has most of the rows chosen. */
export function steppedSize({ sizes }: WorkedPattern, { stepRows }: Pick<PublishChoices, 'stepRows'>): WorkedSize {
  if (stepRows === 'heel') return sizes[0]!;
  const rows = sizes.map((size) => chosenRows(size, stepRows).length);
  return sizes[rows.indexOf(Math.max(...rows))]!;
}

/** The pictures of the rows chosen, in working order, each at most `widthMm` wide. */
export function stepFigures(worked: WorkedPattern, choices: PublishChoices, widthMm: number): readonly StepFigure[] {
  const size = steppedSize(worked, choices);
  const { fabric, dressed, program } = size;
  const rows = choices.stepRows === 'heel' ? heelRows(fabric) : chosenRows(size, choices.stepRows);
  const drawn = new Map<number, Drawn>();
  const figures: StepFigure[] = [];
  for (const row of rows) {
    const section = fabric.rows[row]!.section;
    const own = drawn.get(section) ?? drawSection(worked, size, section, widthMm, choices);
    drawn.set(section, own);
    for (const step of rowSteps(dressed, row, program.rows[row]!)) {
      if (figures.length >= MOST_STEPS) return figures;
      figures.push({ number: figures.length + 1, section: fabric.sections[section]!.name, step, picture: stepPicture(dressed, own.drawing, own.look, step), words: stepWords(fabric, step, { terms: choices.terms, size: size.size, hand: choices.hand }) });
    }
  }
  return figures;
}

interface Drawn {
  readonly drawing: Drawing;
  readonly look: Look;
}

/** Stitches are never larger than this in a picture of a step, mm. */
const LARGEST_MM = 5;

/** A section so large that its whole width fits, or as much of it as can still be seen. */
function drawSection({ pattern }: WorkedPattern, { fabric, dressed }: WorkedSize, section: number, widthMm: number, { hand, view, symbols, mono, largePrint }: PublishChoices): Drawn {
  const at = (mmPerStitch: number): Drawn => {
    const look = printLook(pattern.yarns, { mono, large: largePrint, fills: 'none', mmPerStitch });
    return { look, drawing: draw(dressed, layOut(fabric, section, gaugeAtScale(pattern.gauge, mmPerStitch), { hand, view }), { symbols, numbers: false, grid: false, textMm: look.textMm }) };
  };
  const first = at(4);
  const { corners } = first.drawing.stitches;
  let [left, right] = [Infinity, -Infinity];
  for (let i = 0; i < corners.length; i += 2) [left, right] = [Math.min(left, corners[i]!), Math.max(right, corners[i]!)];
  const across = left > right ? 1 : (right - left) / 4;
  const mm = Math.round(Math.min(LARGEST_MM, (widthMm - 2) / Math.min(across, STEP_CELLS.across)) * 100) / 100;
  return at(mm);
}

function chosenRows({ fabric }: WorkedSize, keys: Exclude<PublishChoices['stepRows'], 'heel'>): readonly number[] {
  const wanted = new Set(keys.map(({ line, nth }) => `${nth} ${line}`));
  return fabric.rows.flatMap(({ key, first, end }, row) => (end > first && wanted.has(`${key.nth} ${key.line}`) ? [row] : []));
}
