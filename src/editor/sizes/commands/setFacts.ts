import type { PieceFacts } from '../../../engine/1-pattern/pieceFacts.ts';
import type { Command } from '../../bench/benchState.ts';

/** Changes what is known of the piece, as one step. No step where nothing changes. */
export function setFacts(change: (facts: PieceFacts) => PieceFacts, label: string): Command {
  return ({ pattern, at }) => {
    const before = pattern.piece ?? {};
    const after = change(before);
    return JSON.stringify(before) === JSON.stringify(after) ? null : { label, at, edits: [{ kind: 'setPiece', piece: after }] };
  };
}
