import type { PieceFacts } from '../../engine/1-pattern/pieceFacts.ts';
import type { Pattern } from '../../engine/1-pattern/pattern.ts';
import type { PieceSettings } from '../../engine/2-construct/recipes/settings.ts';
import type { Feature } from '../../engine/craft/cautions.ts';
import { stitchCode } from '../../engine/craft/stitches.ts';
import type { Fabric } from '../../engine/3-fabric/fabric.ts';
import type { SizeReport } from '../../engine/readings/sizes/sizeReport.ts';

/** Features in words, as the page names them. */
export const FEATURE_WORDS: Readonly<Record<Feature, string>> = {
  sock: 'it is a sock', loop: 'a hanging loop', cord: 'cords', fringe: 'fringe', bobble: 'bobbles', button: 'buttons or eyes', hung: 'it is hung up', infantGarment: 'a garment for a baby',
};

/** What the rows themselves show: a heel makes a sock; loops, fringe and bobbles by recipe, bobbles by their stitches too. */
export function workedFeatures(pattern: Pattern, settings: PieceSettings | null, report: SizeReport | undefined, fabric: Fabric | undefined): ReadonlySet<Feature> {
  const found = new Set<Feature>();
  if (settings?.kind === 'sock' || report?.finished.some((one) => one.name === 'footLength')) found.add('sock');
  const roles = pattern.sections.map(({ recipe }) => recipe?.name.split('.')[1]);
  if (roles.includes('loop')) found.add('loop');
  if (roles.includes('fringe')) found.add('fringe');
  const bobble = stitchCode('bobble');
  const popcorn = stitchCode('popcorn');
  if (fabric?.kind.some((kind) => kind === bobble || kind === popcorn)) found.add('bobble');
  return found;
}

/** Those with what was said by hand. */
export function allFeatures(worked: ReadonlySet<Feature>, facts: PieceFacts): ReadonlySet<Feature> {
  return new Set([...worked, ...(facts.features ?? [])]);
}
