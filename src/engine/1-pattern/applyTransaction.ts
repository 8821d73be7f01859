import { applyEdit } from './applyEdit.ts';
import type { Edit, Transaction } from './edit.ts';
import type { Pattern } from './pattern.ts';
import { vectorFault } from './references.ts';
import { rowsFault } from './rowsFault.ts';

/** What a transaction gives: the new pattern with the transaction that takes it back, or a refusal that names the edit (from 0). */
export type Transacted =
  | { readonly ok: true; readonly pattern: Pattern; readonly inverse: Transaction }
  | { readonly ok: false; readonly reason: string; readonly edit: number };

/**
 * Makes all edits of a transaction in order, or none. At the end every size vector that was touched must have one number
 * for each size; if the number of sizes changed, every vector of the pattern must. The inverse keeps label and time.
 */
export function applyTransaction(pattern: Pattern, transaction: Transaction): Transacted {
  const inverse: Edit[] = [];
  let now = pattern;
  for (const [i, edit] of transaction.edits.entries()) {
    const applied = applyEdit(now, edit);
    if (!applied.ok) return { ok: false, reason: applied.reason, edit: i };
    now = applied.pattern;
    inverse.push(applied.inverse);
  }
  const changed = now.sizes.length === pattern.sizes.length ? now.sections.filter((section) => !pattern.sections.includes(section)) : now.sections;
  const fault = vectorFault(now, changed);
  if (fault) {
    const at = /^sections\.(\d+)/.exec(fault.path)?.[1];
    if (fault.path.startsWith('piece.')) return { ok: false, reason: `What the piece is made to has ${fault.found}, expected ${fault.expected}.`, edit: transaction.edits.length - 1 };
    const name = fault.path.startsWith('placements.') ? 'A placement' : (at && now.sections[Number(at)]?.name) || 'A section';
    const what = fault.path.startsWith('placements.') ? 'what differs by size' : fault.path.includes('.recipe.') ? 'a setting' : 'the rows of a line';
    return { ok: false, reason: `${name}: ${what} has ${fault.found}, expected ${fault.expected}.`, edit: transaction.edits.length - 1 };
  }
  const rows = now.sections === pattern.sections && now.sizes === pattern.sizes ? null : rowsFault(now);
  if (rows) return { ok: false, reason: `The pattern would have ${rows.found}, and ${rows.expected} can be worked.`, edit: transaction.edits.length - 1 };
  return { ok: true, pattern: now, inverse: { ...transaction, edits: inverse.reverse() } };
}
