import type { Pattern } from '../1-pattern/pattern.ts';
import { patternInVersion } from '../1-pattern/patternInVersion.ts';
import { construct } from '../2-construct/construct.ts';
import type { Program } from '../2-construct/program.ts';
import type { Fabric } from '../3-fabric/fabric.ts';
import { work } from '../3-fabric/work.ts';
import { colour } from '../4-colour/colour.ts';
import { colourGrid, type ColourGrid } from '../4-colour/colourGrid.ts';
import type { Colours } from '../4-colour/colours.ts';
import { fabricWithStitches, setStitches } from '../4-colour/setStitches.ts';
import type { PublishChoices } from './publishChoices.ts';

/** One size of a pattern with all that is read from it. */
export interface WorkedSize {
  readonly size: number;
  readonly name: string;
  readonly program: Program;
  /** As the rows have it: to lay out and to count. */
  readonly fabric: Fabric;
  /** With the stitches that motifs set: to draw and to describe. */
  readonly dressed: Fabric;
  readonly grid: ColourGrid;
  readonly colours: Colours;
}

/** A pattern, as the version chosen has it, with the sizes that go out. */
export interface WorkedPattern {
  readonly pattern: Pattern;
  readonly version: string;
  readonly sizes: readonly WorkedSize[];
}

/** Works the sizes that are chosen. Linear in stitches. */
export function workedSizes(whole: Pattern, { version, sizes }: Pick<PublishChoices, 'version' | 'sizes'>): WorkedPattern {
  const pattern = version === null ? whole : patternInVersion(whole, version);
  const chosen = sizes === 'all' ? pattern.sizes.map((_, size) => size) : [sizes];
  return {
    pattern, version: whole.versions?.find(({ id }) => id === version)?.name ?? '',
    sizes: chosen.map((size) => {
      const program = construct(pattern, size);
      const fabric = work(program);
      const grid = colourGrid(fabric);
      return { size, name: pattern.sizes[size]!, program, fabric, dressed: fabricWithStitches(fabric, setStitches(pattern, grid, size)), grid, colours: colour(pattern, fabric, size, grid) };
    }),
  };
}
