import * as v from 'valibot';
import { openPatternFile, type Opened } from '../engine/1-pattern/file.ts';
import { editsStandFrom } from '../engine/1-pattern/migrations/migrateUp.ts';
import { NO_HISTORY, type Historied } from '../engine/1-pattern/history.ts';
import { makeMove, readMoves } from '../engine/1-pattern/historyMove.ts';
import { readPieces, type Piece } from './historyPieces.ts';
import { batchSchema, wholeSchema } from './kept.ts';
import { unsealed } from './sealed.ts';

/** A pattern as far as it could be read back: the whole it was read from, and the moves since that were made again. */
export interface Recovered extends Historied {
  readonly revision: number;
  /** When the last move that was read was kept, milliseconds. */
  readonly at: number;
  readonly from: { readonly revision: number; readonly pieces: readonly Piece[] };
  readonly isHistoryLost: boolean;
  /** File version of that whole. */
  readonly version: number;
}

/** A kept value with its key. */
export type KeptEntry = readonly [key: string, value: unknown];

/**
 * Reads a pattern back from its wholes and its journal. The newest whole that is sound is taken and the moves after it are
 * made again, up to the first that is missing or damaged; an older whole is taken where that leads further, or to the same
 * place with its history. `null` if no whole is sound.
 */
export function recover(wholes: readonly KeptEntry[], journal: readonly KeptEntry[], pieces: ReadonlyMap<string, unknown>): Recovered | null {
  let best: Recovered | null = null;
  for (const [, value] of [...wholes].reverse()) {
    const start = startOf(value, pieces);
    if (!start) continue;
    const reached = editsStandFrom(start.version) ? replay(start, journal) : start;
    if (best === null || reached.revision > best.revision || (reached.revision === best.revision && best.isHistoryLost && !reached.isHistoryLost)) best = reached;
    if (!best.isHistoryLost && !isLeft(best.revision, journal)) break;
  }
  return best;
}

/** Makes moves of a journal again, from a state on, as far as they follow on it without a gap and are sound. */
export function replay<S extends Historied & { readonly revision: number; readonly at: number }>(start: S, journal: readonly KeptEntry[]): S {
  let state = start;
  for (const [, value] of journal) {
    const parsed = v.safeParse(batchSchema, value);
    const batch = parsed.success ? parsed.output : null;
    if (batch && batch.last <= state.revision) continue;
    const text = batch?.first === state.revision + 1 ? unsealed(batch.moves) : null;
    const moves = text === null ? null : readMoves(text);
    if (!batch || moves?.length !== batch.last - batch.first + 1) return state;
    for (const move of moves) {
      const moved = makeMove(state, move);
      if (!moved.ok) return state;
      state = { ...state, pattern: moved.pattern, history: moved.history, revision: state.revision + 1, at: batch.at };
    }
  }
  return state;
}

/** Why the newest whole can't be opened, with its text to be saved. */
export function unsoundWhole(wholes: readonly KeptEntry[]): { readonly file: string; readonly opened: Exclude<Opened, { kind: 'ok' }> } {
  const whole = v.safeParse(wholeSchema, wholes.at(-1)?.[1]);
  const file: unknown = whole.success ? whole.output.file : undefined;
  const text = typeof file === 'object' && file !== null && 'text' in file && typeof file.text === 'string' ? file.text : '';
  const opened = openPatternFile(text);
  return { file: text, opened: opened.kind !== 'ok' ? opened : { kind: 'damaged', path: '', found: 'a text that is not what was kept', expected: 'the text of its checksum' } };
}

function startOf(value: unknown, pieces: ReadonlyMap<string, unknown>): Recovered | null {
  const parsed = v.safeParse(wholeSchema, value);
  const text = parsed.success ? unsealed(parsed.output.file) : null;
  if (!parsed.success || text === null) return null;
  const opened = openPatternFile(text);
  if (opened.kind !== 'ok') return null;
  const { revision, at, pieces: keys, done } = parsed.output;
  const read = editsStandFrom(opened.from) ? readPieces(keys, keys.map((key) => pieces.get(key)), done) : null;
  return {
    pattern: opened.pattern, history: read?.history ?? NO_HISTORY, revision, at, isHistoryLost: read === null, version: opened.from,
    from: { revision, pieces: read?.pieces ?? keys.map((key) => ({ key, steps: [] })) },
  };
}

function isLeft(revision: number, journal: readonly KeptEntry[]): boolean {
  const last = v.safeParse(batchSchema, journal.at(-1)?.[1]);
  return !last.success ? journal.length > 0 : last.output.last > revision;
}
