import type { Origin } from '../../engine/2-construct/recipes/origin.ts';
import { originInputs } from './originWords.ts';

/** A number of a tree as it is shown: what it is reckoned from stands under it once, and not again further down. */
export interface OriginNode {
  readonly origin: Origin;
  readonly inputs: readonly OriginNode[];
  /** Its inputs stand above already. */
  readonly isAbove: boolean;
}

/** The tree of a number for showing, depth first. */
export function originTree(origin: Origin, known: Set<string> = new Set()): OriginNode {
  const inputs = originInputs(origin);
  if (inputs.length === 0) return { origin, inputs: [], isAbove: false };
  if (known.has(origin.key)) return { origin, inputs: [], isAbove: true };
  known.add(origin.key);
  return { origin, inputs: inputs.map((input) => originTree(input, known)), isAbove: false };
}
