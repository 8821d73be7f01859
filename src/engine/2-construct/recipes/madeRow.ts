import type { Instruction } from '../../notation/instruction.ts';
import type { RowLabel } from '../../notation/written.ts';

/** A line of a recipe in one size, before the sizes are put together. `role` is its name within the section. */
export type MadeRow =
  | {
    readonly kind: 'row';
    readonly role: string;
    readonly word: RowLabel['word'];
    /** Rows it stands for; 0 drops it in this size. */
    readonly rows: number;
    readonly side: 'RS' | 'WS' | null;
    readonly body: readonly Instruction[];
    /** The count of each row; with a step, that of the last, the others `step` apart. */
    readonly stated: { readonly count: number; readonly unit: string; readonly step: number } | null;
  }
  | { readonly kind: 'step'; readonly role: string; readonly body: readonly Instruction[] }
  /** Words and numbers; numbers may differ by size. */
  | { readonly kind: 'note'; readonly role: string; readonly words: readonly (string | number)[] };

/** Rows with one and the same count. */
export function rows(role: string, count: number, body: readonly Instruction[], made: number, unit = 'sc', side: 'RS' | 'WS' | null = null): MadeRow {
  return { kind: 'row', role, word: 'row', rows: count, side, body, stated: { count: made, unit, step: 0 } };
}

/** Rounds with one and the same count. */
export function rounds(role: string, count: number, body: readonly Instruction[], made: number, unit = 'sc'): MadeRow {
  return { kind: 'row', role, word: 'round', rows: count, side: null, body, stated: { count: made, unit, step: 0 } };
}

/** Rows whose counts move by a step, ending with `last`. */
export function movingRows(role: string, count: number, body: readonly Instruction[], last: number, step: number): MadeRow {
  const moving = count > 1 && step !== 0;
  return { kind: 'row', role, word: 'row', rows: count, side: null, body, stated: { count: last, unit: 'sc', step: moving ? step : 0 } };
}

/** The foundation. */
export function foundation(body: readonly Instruction[]): MadeRow {
  return { kind: 'row', role: 'foundation', word: 'foundation', rows: 1, side: null, body, stated: null };
}

/** A step without a label. */
export function step(role: string, ...body: readonly Instruction[]): MadeRow {
  return { kind: 'step', role, body };
}

/** A note for the maker. */
export function note(role: string, ...words: readonly (string | number)[]): MadeRow {
  return { kind: 'note', role, words };
}
