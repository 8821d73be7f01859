import type { CellRun, Pattern } from '../../engine/1-pattern/pattern.ts';
import { patternFromText } from '../../engine/1-pattern/patternFromText.ts';

const TEXT = `A first swatch
Yarn A: slate #4b5a6b
Yarn B: chalk #f2efe6

SWATCH (worked flat)
Foundation: with A, ch 12.
Row 1 (RS): sc in 2nd ch from hook and in each ch across. (11 sc)
Rows 2-3: ch 1, turn, sc in each st across. (11 sc)
Row 4: ch 1, turn, sc in next 7 sts, sc2tog, sc in next 2 sts. (10 sc)
Row 5: ch 1, turn, sc in each st across. (10 sc)`;

/** The small swatch that the empty shelf teaches with. */
export function lessonPattern(): Pattern {
  const { pattern } = patternFromText(TEXT);
  if (!pattern) throw new RangeError('the lesson has no rows');
  const lines = pattern.sections[0]!.lines;
  const cell = (line: number, nth: number, from: number, letters: string): CellRun => ({ section: pattern.sections[0]!.id, row: { line: lines[line]!.id, nth }, size: 0, from, letters });
  return { ...pattern, cells: [cell(2, 0, 4, 'B'), cell(2, 1, 3, 'BBB'), cell(3, 0, 2, 'BBBB'), cell(4, 0, 3, 'BBB')] };
}
