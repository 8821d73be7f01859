import type { ColourLimits, Yarn } from '../../engine/1-pattern/pattern.ts';
import { LEAST_CONTRAST, LEAST_DIFFERENCE, yarnPairs } from '../../engine/4-colour/palettes.ts';
import { areMarksAlike } from '../../engine/4-colour/printMarks.ts';
import { COLOUR_VISIONS, type ColourVision } from '../../engine/craft/colourVision.ts';

/** Two yarns side by side, in numbers and in what is to be asked about them. */
export interface ToldPair {
  readonly one: Yarn;
  readonly other: Yarn;
  /** CIEDE2000 as they are. */
  readonly difference: number;
  /** WCAG contrast in light and dark, from 1 on. */
  readonly contrast: number;
  /** None if they go well together. */
  readonly warnings: readonly string[];
}

const SEERS: Readonly<Record<ColourVision, string>> = { protan: 'who see no red', deutan: 'who see no green', tritan: 'who see no blue' };

/** Every two yarns of a palette with what is to be said about them, from the pattern's own limits on. */
export function yarnWarnings(yarns: readonly Yarn[], limits: ColourLimits = {}): readonly ToldPair[] {
  const { leastDifference = LEAST_DIFFERENCE, leastContrast = LEAST_CONTRAST } = limits;
  return yarnPairs(yarns).map((pair): ToldPair => {
    const [one, other] = [yarns[pair.one]!, yarns[pair.other]!];
    const blind = COLOUR_VISIONS.filter((vision) => pair.seen[vision] < leastDifference).map((vision) => SEERS[vision]);
    const warnings: string[] = [];
    if (pair.difference < leastDifference) warnings.push('hard to tell apart');
    else if (blind.length > 0) warnings.push(`hard to tell apart for those ${blind.join(' or ')}`);
    if (pair.contrast < leastContrast) warnings.push('nearly the same in black and white');
    if (one.mark === other.mark) warnings.push('both have the same print mark');
    else if (areMarksAlike(one.mark, other.mark)) warnings.push('their print marks are alike');
    return { one, other, difference: pair.difference, contrast: pair.contrast, warnings };
  });
}
