import { wcagLuminance } from 'culori';
import type { PrintMark, Yarn } from '../1-pattern/pattern.ts';

/** Every print mark, in the order in which they are given out: those that differ most by shape first. */
export const PRINT_MARKS: readonly PrintMark[] = ['none', 'dot', 'slash', 'cross', 'bars', 'wedge', 'ring', 'solid'];

/** Marks of nearly the same outline, which a small or worn print confuses: the project's own judgement. */
const CONFUSED: readonly (readonly [PrintMark, PrintMark])[] = [['dot', 'ring']];

/** Whether two marks can't be told apart in print: the same one, or two of nearly the same shape. */
export function areMarksAlike(one: PrintMark, other: PrintMark): boolean {
  return one === other || CONFUSED.some(([a, b]) => (a === one && b === other) || (a === other && b === one));
}

/**
 * The yarns with marks that can all be told apart. A yarn keeps its own where no yarn before it has one that is alike;
 * the others get the next that is free, the palest of them `none` if it is free. Beyond seven yarns some marks are alike; none is
 * given twice before all are used.
 */
export function distinctMarks(yarns: readonly Yarn[]): readonly Yarn[] {
  const marks: (PrintMark | null)[] = [];
  for (const { mark } of yarns) marks.push(marks.some((taken) => taken !== null && areMarksAlike(taken, mark)) ? null : mark);
  const open = yarns.map((yarn, i) => [i, wcagLuminance(yarn.colour)] as const).filter(([i]) => marks[i] === null).sort((a, b) => b[1] - a[1] || a[0] - b[0]);
  const palest = open[0]?.[0];
  const order = [...(palest === undefined ? [] : [palest]), ...open.slice(1).map(([i]) => i).sort((a, b) => a - b)];
  for (const i of order) {
    const isFree = (mark: PrintMark, test: (a: PrintMark, b: PrintMark) => boolean) => !marks.some((taken) => taken !== null && test(taken, mark));
    marks[i] = PRINT_MARKS.find((mark) => isFree(mark, areMarksAlike)) ?? PRINT_MARKS.find((mark) => isFree(mark, (a, b) => a === b)) ?? PRINT_MARKS[i % PRINT_MARKS.length]!;
  }
  return yarns.map((yarn, i) => (marks[i] === yarn.mark ? yarn : { ...yarn, mark: marks[i]! }));
}
