import type { ColourLimits, Yarn } from '../../engine/1-pattern/pattern.ts';
import { COLOUR_VISIONS, seenWith, type ColourVision } from '../../engine/craft/colourVision.ts';
import { colourDifference, labOf, toneContrast } from '../../engine/craft/colourDifference.ts';

/** Two yarns side by side, in numbers. */
export interface YarnPair {
  readonly one: Yarn;
  readonly other: Yarn;
  /** CIEDE2000 as they are. */
  readonly difference: number;
  /** WCAG contrast in light and dark, from 1 on. */
  readonly contrast: number;
  /** What an editor would ask about, in sentences; none if they go well together. */
  readonly warnings: readonly string[];
}

/** Below this a pair is hard to tell apart in a fabric, and below this tone the pattern is lost in dim light: *common practice*, from memory. */
export const LEAST_DIFFERENCE = 12;
export const LEAST_CONTRAST = 1.5;

const SEERS: Readonly<Record<ColourVision, string>> = { protan: 'who see no red', deutan: 'who see no green', tritan: 'who see no blue' };

/** Every two yarns of a palette with what is to be said about them. */
export function yarnPairs(yarns: readonly Yarn[], limits: ColourLimits = {}): readonly YarnPair[] {
  const leastDifference = limits.leastDifference ?? LEAST_DIFFERENCE;
  const leastContrast = limits.leastContrast ?? LEAST_CONTRAST;
  return yarns.flatMap((one, i) =>
    yarns.slice(i + 1).map((other): YarnPair => {
      const difference = colourDifference(labOf(one.colour), labOf(other.colour));
      const contrast = toneContrast(one.colour, other.colour);
      const warnings: string[] = [];
      if (difference < leastDifference) warnings.push('hard to tell apart');
      else {
        const blind = COLOUR_VISIONS.filter((vision) => colourDifference(labOf(seenWith(vision, one.colour)), labOf(seenWith(vision, other.colour))) < leastDifference);
        if (blind.length > 0) warnings.push(`hard to tell apart for those ${blind.map((vision) => SEERS[vision]).join(' or ')}`);
      }
      if (contrast < leastContrast) warnings.push('nearly the same in black and white');
      if (one.mark === other.mark) warnings.push('both have the same print mark');
      return { one, other, difference, contrast, warnings };
    }),
  );
}
