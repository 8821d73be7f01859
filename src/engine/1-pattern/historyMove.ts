import * as v from 'valibot';
import type { Transaction } from './edit.ts';
import { transactionSchema } from './editSchema.ts';
import { perform, redo, undo, type Historied, type History, type Moved } from './history.ts';

/** One move of a document with its history, plain JSON. The steps of undo and redo are in the history already. */
export type Move = { readonly kind: 'do'; readonly transaction: Transaction } | { readonly kind: 'undo' } | { readonly kind: 'redo' };

/**
 * The move that leads from one history to another, found by their last steps alone, so in the same time however long they
 * are; `null` where they are not one move apart.
 */
export function moveBetween(before: History, after: History): Move | null {
  const last = after.past.at(-1);
  if (last && after.past.length === before.past.length + 1 && after.past.at(-2) === before.past.at(-1)) {
    if (last === before.future[0] && after.future.length === before.future.length - 1) return { kind: 'redo' };
    return after.future.length === 0 ? { kind: 'do', transaction: last.done } : null;
  }
  const isBack = after.past.length === before.past.length - 1 && after.future.length === before.future.length + 1 && after.future[0] === before.past.at(-1);
  return isBack ? { kind: 'undo' } : null;
}

/** Makes a move. Refuses what `perform`, `undo` and `redo` refuse. */
export function makeMove(now: Historied, move: Move): Moved {
  switch (move.kind) {
    case 'do':
      return perform(now, move.transaction);
    case 'undo':
      return undo(now);
    case 'redo':
      return redo(now);
  }
}

const movesSchema = v.array(
  v.variant('kind', [v.strictObject({ kind: v.literal('do'), transaction: transactionSchema }), v.strictObject({ kind: v.literal('undo') }), v.strictObject({ kind: v.literal('redo') })]),
);

/** Moves as JSON text, for a journal: the edits and nothing of the document. */
export function writeMoves(moves: readonly Move[]): string {
  return JSON.stringify(moves);
}

/** Reads moves that `writeMoves` wrote; `null` if the text is anything else. Never throws. */
export function readMoves(text: string): readonly Move[] | null {
  let value: unknown;
  try {
    value = JSON.parse(text);
  } catch {
    return null;
  }
  const result = v.safeParse(movesSchema, value, { abortEarly: true });
  return result.success ? result.output : null;
}
