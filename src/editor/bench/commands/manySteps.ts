import { applyTransaction } from '../../../engine/1-pattern/applyTransaction.ts';
import type { Edit, Transaction } from '../../../engine/1-pattern/edit.ts';
import type { BenchState, Command } from '../benchState.ts';

/**
 * One step made of several commands, each on what the one before has left; commands look at the document alone here, not at the
 * fabric, which is that of before. None where any of them can't be done, or with `isLenient`, where none of them can.
 */
export function manySteps(label: string, commands: readonly Command[], isLenient = false): Command {
  return (state): Transaction | null => {
    let { pattern } = state;
    const edits: Edit[] = [];
    for (const command of commands) {
      const here: BenchState = { ...state, pattern };
      const step = command(here);
      const done = step && applyTransaction(pattern, step);
      if (isLenient && step === null) continue;
      if (!step || !done?.ok) return null;
      edits.push(...step.edits);
      ({ pattern } = done);
    }
    return edits.length === 0 ? null : { label, at: state.at, edits };
  };
}

