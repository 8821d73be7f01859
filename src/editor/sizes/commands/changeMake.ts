import { dequal } from 'dequal/lite';
import type { Pins } from '../../../engine/1-pattern/pieceFacts.ts';
import type { Graded } from '../../../engine/2-construct/recipes/gradePattern.ts';
import type { Command } from '../../bench/benchState.ts';

/** Makes the piece in another make, with its numbers set by hand, as one step. */
export function changeMake(graded: Graded, pins: Pins, label: string): Command {
  return ({ pattern, at }) => {
    const piece = pattern.piece ?? {};
    const edits = dequal(piece.pins ?? {}, pins) ? graded.edits : [...graded.edits, { kind: 'setPiece', piece: { ...piece, pins } } as const];
    return edits.length === 0 ? null : { label, at, edits };
  };
}
