import type { History, Step } from '../engine/1-pattern/history.ts';
import { readSteps, writeSteps } from '../engine/1-pattern/stepsText.ts';
import { sealed, unsealed, type Sealed } from './sealed.ts';

/**
 * A piece of a kept history: steps in order, under one key. Pieces are never changed once written, so a whole that names
 * its pieces is sound whatever happens in between, and writes only the newest piece, however long the history is.
 */
export interface Piece {
  readonly key: string;
  readonly steps: readonly Step[];
}

/** Steps of a piece that is full. */
export const PIECE_LENGTH = 50;

/** A history laid out in pieces: those that can stay, those to write, and how many steps of the whole are done. */
export interface PiecesPlan {
  readonly pieces: readonly Piece[];
  readonly fresh: readonly (readonly [key: string, value: Sealed])[];
  /** Keys of earlier pieces that are no longer named. */
  readonly gone: readonly string[];
  readonly done: number;
}

/** Lays a history out, keeping earlier pieces that are full (or end it) and hold the very same steps. Linear in steps, writes few. */
export function planPieces(before: readonly Piece[], history: History, newKey: () => string): PiecesPlan {
  const steps = [...history.past, ...history.future];
  const kept: Piece[] = [];
  let at = 0;
  for (const piece of before) {
    const isSame = piece.steps.length > 0 && piece.steps.every((step, i) => step === steps[at + i]);
    if (!isSame || (piece.steps.length < PIECE_LENGTH && at + piece.steps.length < steps.length)) break;
    kept.push(piece);
    at += piece.steps.length;
  }
  const added: Piece[] = [];
  for (; at < steps.length; at += PIECE_LENGTH) added.push({ key: newKey(), steps: steps.slice(at, at + PIECE_LENGTH) });
  return {
    pieces: [...kept, ...added],
    fresh: added.map((piece) => [piece.key, sealed(writeSteps(piece.steps))]),
    gone: before.slice(kept.length).map((piece) => piece.key),
    done: history.past.length,
  };
}

/** Reads a history back from its pieces; `null` if one is missing or damaged, or fewer steps are there than are done. Pieces of the first shelves are texts without a checksum. */
export function readPieces(keys: readonly string[], values: readonly unknown[], done: number): { readonly history: History; readonly pieces: readonly Piece[] } | null {
  const pieces: Piece[] = [];
  for (const [i, key] of keys.entries()) {
    const value = values[i];
    const text = typeof value === 'string' ? value : unsealed(value);
    const steps = text === null ? null : readSteps(text);
    if (!steps) return null;
    pieces.push({ key, steps });
  }
  const steps = pieces.flatMap((piece) => piece.steps);
  if (done > steps.length) return null;
  return { history: { past: steps.slice(0, done), future: steps.slice(done) }, pieces };
}
