import type { Pattern } from '../../1-pattern/pattern.ts';
import type { Feature } from '../../craft/cautions.ts';
import { stitchCode } from '../../craft/stitches.ts';
import type { Fabric } from '../../3-fabric/fabric.ts';
import { finishedMeasures } from '../../6-drawing/schematic/finishedMeasures.ts';
import { rowMeasures } from '../../6-drawing/schematic/rowMeasures.ts';
import { sectionMeasures } from '../../6-drawing/schematic/sectionMeasures.ts';

/** What a piece has that cautions hang on: from its worked rows (a heel makes a sock, bobbles), the names of its sections, and what the designer says. */
export function featuresOf(pattern: Pattern, fabric: Fabric): ReadonlySet<Feature> {
  const found = new Set<Feature>(pattern.piece?.features ?? []);
  const sections = sectionMeasures(fabric, rowMeasures(fabric, { gauge: pattern.gauge, swatches: [], yarn: null }));
  if (finishedMeasures(fabric, sections).some((one) => one.name === 'footLength')) found.add('sock');
  const bobbles = new Set([stitchCode('bobble'), stitchCode('popcorn')]);
  if (fabric.kind.some((code) => bobbles.has(code))) found.add('bobble');
  for (const { name, recipe } of pattern.sections) {
    const words = `${recipe?.name ?? ''} ${name}`.toLowerCase();
    if (/\bloop\b/.test(words)) found.add('loop');
    if (/\bfringe\b/.test(words)) found.add('fringe');
    if (/\b(cord|drawstring|tie)s?\b/.test(words)) found.add('cord');
    if (/\bbuttons?\b/.test(words)) found.add('button');
  }
  return found;
}
