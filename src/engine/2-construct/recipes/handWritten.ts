import type { Pattern } from '../../1-pattern/pattern.ts';
import { fingerprint } from './fingerprint.ts';

/** Sections (ids) that a recipe made and that were changed by hand since: grading leaves their rows as they are. */
export function handWritten(pattern: Pick<Pattern, 'sections'>): readonly string[] {
  return pattern.sections.filter(({ recipe, lines }) => recipe !== null && recipe.settings['written'] !== undefined && recipe.settings['written'] !== fingerprint(lines)).map(({ id }) => id);
}
