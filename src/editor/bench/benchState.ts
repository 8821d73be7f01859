import type { Pattern, Section } from '../../engine/1-pattern/pattern.ts';
import type { Transaction } from '../../engine/1-pattern/edit.ts';
import type { Fabric } from '../../engine/3-fabric/fabric.ts';
import type { Colours } from '../../engine/4-colour/colours.ts';
import type { ColourGrid } from '../../engine/4-colour/colourGrid.ts';

/** What a command may look at. */
export interface BenchState {
  readonly pattern: Pattern;
  /** Index of the size shown. */
  readonly size: number;
  /** Index of the section shown, in the pattern and in the fabric alike. */
  readonly section: number;
  readonly fabric: Fabric;
  readonly colours: Colours;
  /** The fabric of every size as colour sees it, by size. */
  readonly grids: readonly ColourGrid[];
  /** Milliseconds: when the step is made. */
  readonly at: number;
}

/** One thing the maker can do: the step it would be, or null where it can't be done. */
export type Command = (state: BenchState) => Transaction | null;

/** The section that is shown, or null in a pattern without any. */
export function sectionShown(state: Pick<BenchState, 'pattern' | 'section'>): Section | null {
  return state.pattern.sections[state.section] ?? null;
}
