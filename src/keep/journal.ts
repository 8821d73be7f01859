import type { History, Step } from '../engine/1-pattern/history.ts';
import { readSteps, writeSteps } from '../engine/1-pattern/stepsText.ts';

/**
 * A piece of a kept history: steps in order, under one key. Pieces are never changed once written, so an entry that names
 * its pieces is whole whatever happens in between, and a save writes only the newest piece, however long the history is.
 */
export interface Piece {
  readonly key: string;
  readonly steps: readonly Step[];
}

/** Steps of a piece that is full. */
export const PIECE_LENGTH = 50;

/** A history laid out in pieces: those that can stay, those to write, and how many steps of the whole are done. */
export interface JournalPlan {
  readonly pieces: readonly Piece[];
  readonly fresh: readonly (readonly [key: string, text: string])[];
  /** Keys of earlier pieces that are no longer named. */
  readonly gone: readonly string[];
  readonly done: number;
}

/** Lays a history out, keeping earlier pieces that are full (or end it) and hold the very same steps. Linear in steps, writes few. */
export function planJournal(before: readonly Piece[], history: History, newKey: () => string): JournalPlan {
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
    fresh: added.map((piece) => [piece.key, writeSteps(piece.steps)]),
    gone: before.slice(kept.length).map((piece) => piece.key),
    done: history.past.length,
  };
}

/** Reads a history back from its pieces' texts; `null` if one is missing or damaged, or fewer steps are there than are done. */
export function readJournal(keys: readonly string[], texts: readonly unknown[], done: number): { readonly history: History; readonly pieces: readonly Piece[] } | null {
  const pieces: Piece[] = [];
  for (const [i, key] of keys.entries()) {
    const text = texts[i];
    const steps = typeof text === 'string' ? readSteps(text) : null;
    if (!steps) return null;
    pieces.push({ key, steps });
  }
  const steps = pieces.flatMap((piece) => piece.steps);
  if (done > steps.length) return null;
  return { history: { past: steps.slice(0, done), future: steps.slice(done) }, pieces };
}
