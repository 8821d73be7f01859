import { NO_HISTORY, perform, type Historied } from '../../src/engine/1-pattern/history.ts';
import { SMALL } from '../engine/1-pattern/smallPattern.ts';

/** The small pattern with nothing done to it yet. */
export const START: Historied = { pattern: SMALL, history: NO_HISTORY };

/** One step on: the pattern has another title. */
export function titled(now: Historied, title: string): Historied {
  const moved = perform(now, { label: `Name it ${title}`, at: 0, edits: [{ kind: 'set', field: 'title', value: title }] });
  if (!moved.ok) throw new Error(moved.reason);
  return { pattern: moved.pattern, history: moved.history };
}
