import type { RowKey } from '../../../engine/1-pattern/pattern.ts';
import type { Command } from '../benchState.ts';
import { manySteps } from './manySteps.ts';
import { removeRow } from './removeRow.ts';

/** Takes rows that follow one another out of the section, as one step. From the last to the first, so that the keys of those before still hold. */
export function removeRows(keys: readonly RowKey[], name: string): Command {
  return manySteps(`Remove ${name}`, [...keys].reverse().map((key) => removeRow(key, name)));
}
