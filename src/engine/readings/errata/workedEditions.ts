import type { Pattern } from '../../1-pattern/pattern.ts';
import { construct } from '../../2-construct/construct.ts';
import type { Program } from '../../2-construct/program.ts';
import type { Fabric } from '../../3-fabric/fabric.ts';
import { work } from '../../3-fabric/work.ts';
import { colour } from '../../4-colour/colour.ts';
import { colourGrid } from '../../4-colour/colourGrid.ts';
import { fabricWithStitches, setStitches } from '../../4-colour/setStitches.ts';

/** One edition in one size. */
export interface WorkedEdition {
  readonly pattern: Pattern;
  readonly program: Program;
  readonly fabric: Fabric;
  /** With the stitches that motifs set. */
  readonly dressed: Fabric;
  readonly yarnOf: Uint8Array;
}

/** A size that both editions have. */
export interface SizePair {
  readonly name: string;
  readonly before: WorkedEdition;
  readonly after: WorkedEdition;
}

/** Two editions with the sizes that both have. */
export interface Editions {
  readonly before: Pattern;
  readonly after: Pattern;
  readonly sizes: readonly SizePair[];
}

/** Works both editions in every size that both have: sizes of one name, or of one place where neither is the other's by name. */
export function workedEditions(before: Pattern, after: Pattern): Editions {
  const sizes = after.sizes.flatMap((name, size): readonly SizePair[] => {
    const other = matchingSize(before.sizes, after.sizes, size);
    return other === null ? [] : [{ name: name || `size ${size + 1}`, before: worked(before, other), after: worked(after, size) }];
  });
  return { before, after, sizes };
}

/** The size of `before` that a size of `after` is; null for a new one. */
export function matchingSize(before: readonly string[], after: readonly string[], size: number): number | null {
  const nth = after.slice(0, size).filter((name) => name === after[size]).length;
  const named = before.flatMap((name, i) => (name === after[size] ? [i] : []));
  if (named[nth] !== undefined) return named[nth];
  // A size under a new name: the one in its place, if that name is no longer there.
  return size < before.length && before.length === after.length && !after.includes(before[size]!) ? size : null;
}

function worked(pattern: Pattern, size: number): WorkedEdition {
  const program = construct(pattern, size);
  const fabric = work(program);
  const grid = colourGrid(fabric);
  return { pattern, program, fabric, dressed: fabricWithStitches(fabric, setStitches(pattern, grid, size)), yarnOf: colour(pattern, fabric, size, grid).yarn };
}
