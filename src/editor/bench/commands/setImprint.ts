import type { Imprint } from '../../../engine/1-pattern/pattern.ts';
import type { Command } from '../benchState.ts';

/** What is said about the pattern where it is published; an imprint that says nothing is left out. */
export function setImprint(imprint: Imprint): Command {
  return ({ at }) => ({ label: 'Words for print', at, edits: [{ kind: 'setImprint', imprint: Object.keys(imprint).length === 0 ? null : imprint }] });
}
