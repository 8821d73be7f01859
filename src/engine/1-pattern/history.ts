import { applyTransaction } from './applyTransaction.ts';
import type { Transaction } from './edit.ts';
import type { Pattern } from './pattern.ts';

/** One step that was done: what was done, and what takes it back. Both have the same label and time. */
export interface Step {
  readonly done: Transaction;
  readonly inverse: Transaction;
}

/** The steps of a document as a plain value (JSON): `past` from the first step on, `future` from the next step to do again. No limit. */
export interface History {
  readonly past: readonly Step[];
  readonly future: readonly Step[];
}

/** A pattern with its history. */
export interface Historied {
  readonly pattern: Pattern;
  readonly history: History;
}

/** What undo and redo give: pattern and history one step on, with the step; or why not. */
export type Moved = ({ readonly ok: true; readonly step: Step } & Historied) | { readonly ok: false; readonly reason: string };

/** No steps yet. */
export const NO_HISTORY: History = { past: [], future: [] };

/** The history with one more step; steps that were undone are gone. */
export function record(history: History, done: Transaction, inverse: Transaction): History {
  return { past: [...history.past, { done, inverse }], future: [] };
}

/** Makes a transaction and records it. Refuses what `applyTransaction` refuses; pattern and history stay as they are then. */
export function perform({ pattern, history }: Historied, transaction: Transaction): Moved {
  const applied = applyTransaction(pattern, transaction);
  if (!applied.ok) return { ok: false, reason: applied.reason };
  const step = { done: transaction, inverse: applied.inverse };
  return { ok: true, pattern: applied.pattern, history: record(history, step.done, step.inverse), step };
}

/** Takes the last step back. */
export function undo({ pattern, history }: Historied): Moved {
  const step = history.past.at(-1);
  if (!step) return { ok: false, reason: 'There is nothing to undo.' };
  const applied = applyTransaction(pattern, step.inverse);
  if (!applied.ok) return { ok: false, reason: applied.reason };
  return { ok: true, pattern: applied.pattern, history: { past: history.past.slice(0, -1), future: [step, ...history.future] }, step };
}

/** Does the step again that was undone last. */
export function redo({ pattern, history }: Historied): Moved {
  const step = history.future[0];
  if (!step) return { ok: false, reason: 'There is nothing to do again.' };
  const applied = applyTransaction(pattern, step.done);
  if (!applied.ok) return { ok: false, reason: applied.reason };
  return { ok: true, pattern: applied.pattern, history: { past: [...history.past, step], future: history.future.slice(1) }, step };
}

/** Two steps that were done one after the other as one, under the label of the first and the time of the second: the moves of one drag. */
export function joinSteps(first: Step, second: Step): Step {
  const { label } = first.done;
  const { at } = second.done;
  return {
    done: { label, at, edits: [...first.done.edits, ...second.done.edits] },
    inverse: { label, at, edits: [...second.inverse.edits, ...first.inverse.edits] },
  };
}

/** The steps in words, first step first; `isDone` is false for those that were undone. */
export function historyList(history: History): readonly { readonly label: string; readonly at: number; readonly isDone: boolean }[] {
  return [...history.past.map((step) => [step, true] as const), ...history.future.map((step) => [step, false] as const)].map(([{ done }, isDone]) => ({
    label: done.label,
    at: done.at,
    isDone,
  }));
}
