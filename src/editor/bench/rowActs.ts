import { handWritten } from '../../engine/2-construct/recipes/handWritten.ts';
import { copyRow } from './commands/copyRow.ts';
import { insertRow } from './commands/insertRow.ts';
import { layYarn } from './commands/layYarn.ts';
import { mirrorRow } from './commands/mirrorRow.ts';
import { removeRow } from './commands/removeRow.ts';
import { removeRows } from './commands/removeRows.ts';
import { remakeSection } from './commands/remakeSection.ts';
import { MOST_ROWS, repeatRows } from './commands/repeatRows.ts';
import { setStitch } from './commands/setStitch.ts';
import { swapRows } from './commands/swapRows.ts';
import { turnHere } from './commands/turnHere.ts';
import { MOST_STITCHES, workToCount } from './commands/workToCount.ts';
import type { Command } from './benchState.ts';
import type { Clipboard } from './clipboard.svelte.ts';
import type { RowEntry } from './rowEntries.ts';
import type { Session } from './session.svelte.ts';
import { placedAt } from './placedAt.ts';
import { wholeRow } from './strokeStitches.ts';

/** One thing that can be done to a row; `act` is null where it can't be done now. */
export interface RowAct {
  readonly name: string;
  readonly act: (() => void) | null;
  /** A number that is asked for first: what it is, what it is to begin with, and its bounds. */
  readonly asks?: { readonly what: string; readonly value: number; readonly most: number; readonly act: (count: number) => void };
}

/** What can be done to a row, and at a stitch of it; where rows are chosen and this is one of them, to all of them. */
export function rowActs(session: Session, clipboard: Clipboard, entry: RowEntry, stitch: number | null, everySize: boolean): RowAct[] {
  const name = entry.name.toLowerCase();
  const offer = (says: string, command: Command): RowAct => ({
    name: says,
    act: command(session.state) === null ? null : () => void session.commit(command),
  });
  const ask = (says: string, what: string, value: number, most: number, command: (count: number) => Command): RowAct => ({
    name: says,
    act: entry.worked === null || entry.worked.word === 'foundation' || entry.worked.word === 'step' ? null : () => undefined,
    asks: { what, value, most, act: (count) => void session.commit(command(count)) },
  });
  const { chosenRows, choice } = session;
  const many = chosenRows.length > 1 && chosenRows.some((each) => each.row === entry.row) ? chosenRows : null;
  const keys = (many ?? [entry]).map((each) => each.key);
  const names = many ? `${many.length} rows` : name;
  const copies: RowAct[] = [
    { name: many ? `Copy ${names}` : 'Copy it', act: entry.worked && entry.worked.word !== 'foundation' ? () => void clipboard.copyRows(keys) : null },
    { name: 'Put what was copied after it', act: clipboard.clip?.kind === 'rows' ? () => void clipboard.put(everySize) : null },
  ];
  if (many) {
    return [
      ask(`Work ${names} again …`, 'times more', 1, Math.max(1, Math.floor(MOST_ROWS / keys.length)), (times) => repeatRows(keys, times, names)),
      ...copies,
      offer(`Remove ${names}`, removeRows(keys, names)),
    ];
  }
  const acts = [
    offer('Insert a row after it', insertRow(entry.key, name)),
    ask('Work even after it …', 'rows', 2, MOST_ROWS, (rows) => insertRow(entry.key, name, rows)),
    offer('Work it once more', copyRow(entry.key, name)),
    ask('Work it again …', 'times more', 2, MOST_ROWS, (times) => repeatRows(keys, times, name)),
    ask('Work it to a count …', 'stitches', entry.worked?.made ?? 1, MOST_STITCHES, (count) => workToCount(entry.key, count, name)),
    offer('Mirror it', mirrorRow(entry.key, name)),
    offer('Move it on by one', swapRows(entry.key, 1, name)),
    offer('Move it back by one', swapRows(entry.key, -1, name)),
    ...copies,
    offer('Remove it', removeRow(entry.key, name)),
  ];
  const owner = session.pattern.sections[session.shown]?.id;
  if (owner !== undefined && handWritten(session.pattern).includes(owner)) acts.push({ name: 'Make this section from its recipe again', act: () => remake(session, owner) });
  if (choice.kind === 'yarn') acts.unshift(offer(`Lay ${choice.letter} on the whole row`, layYarn(wholeRow(session.fabric, entry.row), choice.letter, everySize)));
  if (stitch !== null) acts.unshift(offer('Increase here', setStitch(stitch, { kind: 'increase' })), offer('Decrease here', setStitch(stitch, { kind: 'decrease' })), offer('Turn here', turnHere(stitch)));
  if (stitch !== null) {
    for (const { placement, says } of placedAt(session.pattern, session.grid, session.size, stitch)) acts.push({ name: says, act: () => (session.sheet = { kind: 'placing', placement }) });
  }
  return acts;
}

/** Makes a section from its recipe again as one step, or says why it can't be. */
export function remake(session: Session, section: string): void {
  const step = remakeSection(section, session.state);
  if ('reason' in step) session.refusal = step.reason;
  else session.commit(() => step);
}
