import type { MadePiece } from '../../2-construct/recipes/makePiece.ts';
import { finding, type Finding } from '../../notation/finding.ts';

/** Numbers set by hand that a piece can't be made with, as findings: the reckoned ones were used. */
export function pinChecks(piece: MadePiece): Finding[] {
  return piece.problems.map(({ key, size, found, expected }) =>
    finding('doubtful', 'pinUnusable', {}, { found, expected, params: { key, size, says: piece.numbers[size]?.get(key)?.says ?? key } }));
}
