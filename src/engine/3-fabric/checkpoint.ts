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
  /** Changes of earlier rows' stitches up to here. */
  readonly moves: number;
  readonly places: number;
  readonly seams: number;
  readonly closings: number;
  readonly openings: number;
}

/** A report as it was before row `by`, whose first stitch is `first`, took the row's last chains over. */
export interface GivenUp {
  readonly by: number;
  readonly first: number;
  readonly row: number;
  readonly was: WorkedRow;
}

/** What stays beside a fabric so that an edit re-works only the rows it changes. */
export interface Workings {
  readonly hook: Hook;
  /** At each row's start, and after the last. */
  readonly checkpoints: readonly Checkpoint[];
  /** Findings of each row. */
  readonly findings: readonly (readonly Finding[])[];
  /** For each row, and after the last: whether it stands on words that were not read. */
  readonly unsure: readonly boolean[];
  readonly givenUp: readonly GivenUp[];
}

/** Keeps where everything is. `before` lends the orders of rings that the last row did not touch. */
export function takeCheckpoint(hook: Hook, before: Checkpoint | undefined): Checkpoint {
  const touched = new Set([hook.state.piece, before?.state.piece ?? -1]);
  return {
    state: { ...hook.state },
    pieces: hook.pieces.map((piece) => ({ ...piece })),
    orders: hook.pieces.map((piece, index) => (touched.has(index) || !before?.orders[index] ? hook.edge.order(piece.mark) : before.orders[index])),
    stitches: hook.stitches.count,
    moves: hook.stitches.moves.length,
    places: hook.edge.count,
    seams: hook.seams.length,
    closings: hook.closings.length,
    openings: hook.openings.length,
  };
}

/** A hook of its own, standing where `checkpoint` was taken of `hook`. */
export function resume(hook: Hook, checkpoint: Checkpoint): Hook {
  const resumed = new Hook();
  resumed.edge = hook.edge.copy(checkpoint.places);
  resumed.stitches = hook.stitches.copy(checkpoint.stitches, checkpoint.moves);
  resumed.seams = hook.seams.slice(0, checkpoint.seams);
  resumed.closings = hook.closings.slice(0, checkpoint.closings);
  resumed.openings = hook.openings.slice(0, checkpoint.openings);
  standAt(resumed, checkpoint);
  checkpoint.orders.forEach((_, piece) => relinkRing(resumed, checkpoint, piece));
  return resumed;
}

/** Takes `hook` itself back to the start of the row it is working, where `checkpoint` was taken. Linear in the row and its edge. */
export function rewind(hook: Hook, checkpoint: Checkpoint): void {
  hook.edge.cut(checkpoint.places);
  hook.stitches.rewind(checkpoint.stitches, checkpoint.moves);
  hook.seams.length = checkpoint.seams;
  hook.closings.length = checkpoint.closings;
  hook.openings.length = checkpoint.openings;
  standAt(hook, checkpoint);
  // A row works on the ring where it begins, and on rings it starts itself.
  if (checkpoint.orders[checkpoint.state.piece]) relinkRing(hook, checkpoint, checkpoint.state.piece);
}

function standAt(hook: Hook, { state, pieces }: Checkpoint): void {
  hook.pieces = pieces.map((piece) => ({ ...piece }));
  hook.state = { ...state };
}

function relinkRing({ edge }: Hook, { orders, pieces }: Checkpoint, piece: number): void {
  edge.relink(orders[piece]!);
  // Marks are the only places whose kind changes: a flat edge's end, until it is closed.
  edge.setMark(pieces[piece]!.mark, pieces[piece]!.markKind);
}
