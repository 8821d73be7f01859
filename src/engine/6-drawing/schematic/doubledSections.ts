import type { Pattern } from '../../1-pattern/pattern.ts';

/** Indices of sections that are folded in half when finished: edges doubled at a ridge or at a row of holes. */
export function doubledSections(pattern: Pick<Pattern, 'sections'>): ReadonlySet<number> {
  return new Set(pattern.sections.flatMap(({ recipe }, index) => (recipe?.settings['edge'] === 'folded' || recipe?.settings['edge'] === 'picot' ? [index] : [])));
}
