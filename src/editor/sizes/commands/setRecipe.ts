import type { Section } from '../../../engine/1-pattern/pattern.ts';
import type { MotifMultiple } from '../../../engine/2-construct/recipes/settings.ts';
import type { Command } from '../../bench/benchState.ts';

/** Says what a motif asks of the piece's stitches; the rows follow when the piece is made anew. */
export function setMotifMultiple({ repeat, edge }: MotifMultiple): Command {
  return setRecipe(['sock.leg', 'panel.panel', 'tube.tube'], { repeat, edge }, repeat === 0 ? 'Heed no motif' : `Heed a motif of ${repeat}${edge === 0 ? '' : ` and ${edge}`}`);
}

/** Says whether a sock's leg is wider at the calf; the rows follow when the piece is made anew. */
export function setCalf(calf: boolean): Command {
  return setRecipe(['sock.leg'], { calf }, calf ? 'Shape the leg for the calf' : 'Work the leg straight');
}

/** Changes settings of the first section that one of these recipes made. */
function setRecipe(recipes: readonly string[], settings: NonNullable<Section['recipe']>['settings'], label: string): Command {
  return ({ pattern, at }) => {
    const section = pattern.sections.find(({ recipe }) => recipe && recipes.includes(recipe.name));
    if (!section?.recipe || Object.entries(settings).every(([name, value]) => section.recipe!.settings[name] === value)) return null;
    const recipe = { ...section.recipe, settings: { ...section.recipe.settings, ...settings } };
    return { label, at, edits: [{ kind: 'setSection', section: section.id, name: section.name, remark: section.remark, recipe }] };
  };
}
