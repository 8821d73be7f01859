import { techniqueLimits, type Technique, type TechniqueLimits } from '../craft/colourTechniques.ts';
import type { ColourLimits, Pattern } from '../1-pattern/pattern.ts';
import type { ColourGrid } from './colourGrid.ts';
import type { Colours } from './colours.ts';
import { rowRuns } from './rowRuns.ts';

/** How a section's colours are worked, and what the technique allows in this pattern. */
export interface SectionTechnique {
  readonly technique: Technique;
  /** Whether the pattern says so; otherwise it follows from the rows. */
  readonly isSaid: boolean;
  readonly limits: TechniqueLimits;
}

/** The technique of every section of a fabric: as the pattern says, else stripes where no row changes yarn and carried inside where one does. Linear in stitches. */
export function techniquesOf(pattern: Pick<Pattern, 'sections' | 'gauge' | 'colourLimits'>, grid: ColourGrid, colours: Pick<Colours, 'yarn'>): readonly SectionTechnique[] {
  const { fabric } = grid;
  const said = new Map(pattern.sections.map((section) => [section.id, section.colour?.technique]));
  return fabric.sections.map(({ id }) => {
    const own = said.get(id);
    const technique = own ?? (grid.rows.of(id).some((row) => rowRuns(fabric, colours, row).length > 1) ? 'carried' : 'stripes');
    return { technique, isSaid: own !== undefined, limits: limitsOf(technique, stitchWidthMm(pattern), pattern.colourLimits) };
  });
}

function limitsOf(technique: Technique, widthMm: number, own: ColourLimits = {}): TechniqueLimits {
  const usual = techniqueLimits(technique, widthMm);
  return {
    longestCarry: own.longestCarry === undefined ? usual.longestCarry : own.longestCarry,
    // Stripes have one yarn a row, whatever else is allowed.
    mostYarns: own.mostYarns === undefined || technique === 'stripes' ? usual.mostYarns : own.mostYarns,
    rowsUp: own.rowsUp ?? usual.rowsUp,
  };
}

/** Width of a stitch in mm, from the gauge. */
export function stitchWidthMm({ gauge }: Pick<Pattern, 'gauge'>): number {
  return (10 * gauge.overCm) / gauge.stitches;
}
