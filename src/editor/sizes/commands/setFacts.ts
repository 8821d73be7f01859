import { dequal } from 'dequal/lite';
import type { PieceFacts } from '../../../engine/1-pattern/pieceFacts.ts';
import type { Command } from '../../bench/benchState.ts';

/** Changes what is known of the piece, as one step. No step where nothing changes. */
export function setFacts(change: (facts: PieceFacts) => PieceFacts, label: string): Command {
  return ({ pattern, at }) => {
    const before = pattern.piece ?? {};
    const after = change(before);
    return dequal(before, after) ? null : { label, at, edits: [{ kind: 'setPiece', piece: after }] };
  };
}
