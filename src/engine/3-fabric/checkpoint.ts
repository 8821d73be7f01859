import type { Finding } from '../notation/finding.ts';
import type { WorkedRow } from './fabric.ts';
import { Hook, type HookState, type Piece } from './hook.ts';

/** The edge at a row's start, enough to take up the work there again. */
export interface Checkpoint {
  readonly state: HookState;
  readonly pieces: readonly Piece[];
  /** Order of each ring; shared with the checkpoint before where a ring did not change. */
  readonly orders: readonly Int32Array[];
  readonly stitches: number;
  readonly places: number;
  readonly seams: number;
  readonly closings: number;
  readonly openings: number;
  /** Report of the row before, as it was when this row began. */
  readonly lastRow: WorkedRow | null;
}

/** What stays beside a fabric so that an edit re-works only from its row on. */
export interface Workings {
  readonly hook: Hook;
  readonly checkpoints: readonly Checkpoint[];
  /** Findings of each row. */
  readonly findings: readonly (readonly Finding[])[];
  /** For each row, and after the last: whether it stands on words that were not read. */
  readonly unsure: readonly boolean[];
}

/** Keeps where everything is. `before` lends the orders of rings that the last row did not touch. */
export function takeCheckpoint(hook: Hook, before: Checkpoint | undefined, lastRow: WorkedRow | null): Checkpoint {
  const touched = new Set([hook.state.piece, before?.state.piece ?? -1]);
  return {
    state: { ...hook.state },
    pieces: hook.pieces.map((piece) => ({ ...piece })),
    orders: hook.pieces.map((piece, index) => (touched.has(index) || !before?.orders[index] ? hook.edge.order(piece.mark) : before.orders[index])),
    stitches: hook.stitches.count,
    places: hook.edge.count,
    seams: hook.seams.length,
    closings: hook.closings.length,
    openings: hook.openings.length,
    lastRow,
  };
}

/** A hook of its own, standing where `checkpoint` was taken of `hook`. */
export function resume(hook: Hook, checkpoint: Checkpoint, row: number): Hook {
  const resumed = new Hook();
  resumed.edge = hook.edge.copy(checkpoint.places);
  resumed.stitches = hook.stitches.copy(checkpoint.stitches);
  resumed.pieces = checkpoint.pieces.map((piece) => ({ ...piece }));
  resumed.state = { ...checkpoint.state };
  resumed.seams = hook.seams.slice(0, checkpoint.seams);
  resumed.closings = hook.closings.slice(0, checkpoint.closings);
  resumed.openings = hook.openings.slice(0, checkpoint.openings);
  checkpoint.pieces.forEach((piece, index) => {
    resumed.edge.relink(checkpoint.orders[index]!);
    // Marks are the only places whose kind changes: a flat edge's end, until it is closed.
    resumed.edge.setMark(piece.mark, piece.markKind);
  });
  const last = checkpoint.lastRow;
  const isFoundation = (stitch: number) => checkpoint.pieces.some(({ foundation }) => stitch >= foundation[0] && stitch < foundation[1]);
  if (last) resumed.stitches.restoreRow(last.first, last.end, row - 1, isFoundation);
  return resumed;
}
