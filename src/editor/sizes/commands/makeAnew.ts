import type { Graded } from '../../../engine/2-construct/recipes/gradePattern.ts';
import type { Command } from '../../bench/benchState.ts';

/** Makes the piece anew as it was reckoned, as one step. */
export function makeAnew(graded: Graded): Command {
  return ({ at }) => ({ label: 'Make the piece anew', at, edits: graded.edits });
}
