import { copyRow } from './commands/copyRow.ts';
import { insertRow } from './commands/insertRow.ts';
import { layYarn } from './commands/layYarn.ts';
import { removeRow } from './commands/removeRow.ts';
import { setStitch } from './commands/setStitch.ts';
import { turnHere } from './commands/turnHere.ts';
import type { Command } from './benchState.ts';
import type { RowEntry } from './rowEntries.ts';
import type { Session } from './session.svelte.ts';
import { wholeRow } from './strokeStitches.ts';

/** One thing that can be done to a row; `act` is null where it can't be done now. */
export interface RowAct {
  readonly name: string;
  readonly act: (() => void) | null;
}

/** What can be done to a row, and at a stitch of it. */
export function rowActs(session: Session, entry: RowEntry, stitch: number | null, everySize: boolean): RowAct[] {
  const name = entry.name.toLowerCase();
  const offer = (says: string, command: Command): RowAct => ({
    name: says,
    act: command(session.state) === null ? null : () => void session.commit(command),
  });
  const { choice } = session;
  const acts = [offer('Insert a row after it', insertRow(entry.key, name)), offer('Work it once more', copyRow(entry.key, name)), offer('Remove it', removeRow(entry.key, name))];
  if (choice.kind === 'yarn') acts.unshift(offer(`Lay ${choice.letter} on the whole row`, layYarn(wholeRow(session.fabric, entry.row), choice.letter, everySize)));
  if (stitch !== null) acts.unshift(offer('Increase here', setStitch(stitch, 'increase')), offer('Decrease here', setStitch(stitch, 'decrease')), offer('Turn here', turnHere(stitch)));
  return acts;
}
