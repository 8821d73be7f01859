import type { Transaction } from '../../../engine/1-pattern/edit.ts';
import type { Pattern } from '../../../engine/1-pattern/pattern.ts';
import { gradePattern, type Graded } from '../../../engine/2-construct/recipes/gradePattern.ts';
import { settingsOf } from '../../../engine/2-construct/recipes/settingsOf.ts';
import { measureWords } from '../../../engine/2-construct/recipes/wanted.ts';
import { sectionTitle } from '../../piece/sectionTitle.ts';
import { missingMeasures } from '../../sizes/neededMeasures.ts';
import type { BenchState } from '../benchState.ts';
import type { Refused } from './isolateStitch.ts';

/** The step that makes one section from its recipe again, with the settings it keeps and what the pattern measures now; or why there is none. */
export function remakeSection(section: string, { pattern, at }: Pick<BenchState, 'pattern' | 'at'>): Transaction | Refused {
  const owner = pattern.sections.find(({ id }) => id === section);
  if (!owner) return { reason: 'There is no such section.' };
  const name = sectionTitle(owner.name);
  if (owner.recipe === null) return { reason: `No recipe made ${name}: it was written by hand from the start.` };
  const graded = gradedAlone(pattern, section);
  if ('reason' in graded) return { reason: `${name} can’t be made from its recipe: ${graded.reason}.` };
  const isSame = graded.changes.some((each) => each.section === section && each.change === 'same');
  return isSame ? { reason: `${name} is as its recipe makes it.` } : { label: `Make ${name} from its recipe again`, at, edits: graded.edits };
}

function gradedAlone(pattern: Pattern, only: string): Graded | Refused {
  const settings = settingsOf(pattern);
  if (!settings) return { reason: 'the recipe is not known here' };
  const { measures = [], swatches = [], pins = {} } = pattern.piece ?? {};
  const [missing] = missingMeasures(settings, measures, pattern.sizes.length);
  if (missing) return { reason: `the ${measureWords(missing.name)} is not known in every size; write it on the page of sizes` };
  try {
    const sizes = pattern.sizes.map((name, from) => ({ name, from }));
    return gradePattern(pattern, { sizes, measures, pins, swatches, gauge: null, settings, only }) ?? { reason: 'the piece has no such section in its make of now' };
  } catch (error) {
    if (!(error instanceof RangeError)) throw error;
    return { reason: error.message };
  }
}
