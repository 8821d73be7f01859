import type { Piece } from './historyPieces.ts';

/** How a pattern stands on the shelf: what the next save starts from. */
export interface Standing {
  /** Counts the moves. */
  readonly revision: number;
  readonly createdAt: number | null;
  readonly keptAt: number | null;
  /** Revision of the newest whole and the pieces of history that it names; null if the next save has to be a whole. */
  readonly whole: { readonly revision: number; readonly pieces: readonly Piece[] } | null;
  /** The whole before it, which is kept until the next one. */
  readonly before: { readonly revision: number; readonly pieceKeys: readonly string[] } | null;
}

/** The standing of a pattern that was never kept. */
export const NEVER_KEPT: Standing = { revision: 0, createdAt: null, keptAt: null, whole: null, before: null };
