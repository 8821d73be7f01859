import type { ProgramRow } from '../2-construct/program.ts';
import type { Finding, Rule } from '../notation/finding.ts';
import type { Instruction } from '../notation/instruction.ts';

/** What working finds by counting places: it follows from the rows before as much as from the row's own words. */
const COUNTED = new Set<Rule>(['notEnoughPlaces', 'repeatUneven', 'statedCount', 'leftCount', 'lastNotNext', 'leftUnsaid', 'noBase', 'noSeam', 'noRing', 'noMarker', 'noPiece']);
const UNREAD = new WeakMap<readonly Instruction[], boolean>();

/** Whether a row holds words that were not read, or refers to rows that are not there, so that what it makes is not known. */
export function hasUnread(body: readonly Instruction[]): boolean {
  const known = UNREAD.get(body);
  if (known !== undefined) return known;
  const found = body.some((node) => node.kind === 'unread' || node.kind === 'asRows' || ((node.kind === 'repeat' || node.kind === 'group' || node.kind === 'forSizes') && hasUnread(node.body)));
  UNREAD.set(body, found);
  return found;
}

/** Whether a row is worked on an edge that is known: `before` tells of the row before it. A new piece begins anew. */
export function unsureAt(row: ProgramRow, before: boolean): boolean {
  return before && row.word !== 'foundation' && !row.body.some(({ kind }) => kind === 'ring');
}

/** Whether the edge is unsure after a row: its words were not all read and no count says what it made, or it stands on such a row. */
export function unsureAfter(row: ProgramRow, unsure: boolean, countAgrees: boolean): boolean {
  return (unsure || hasUnread(row.body)) && !countAgrees;
}

/** Whether a row was worked without what its words ask for, as that is a question. */
export function isAsked(findings: readonly Finding[]): boolean {
  return findings.some(({ rule }) => rule === 'cornersUnsure');
}

/** What was found in a row that stands on words that were not read, or holds them: a question, not a fault. */
export function questioned(findings: readonly Finding[], row: ProgramRow, unsure: boolean): readonly Finding[] {
  if (!unsure && !hasUnread(row.body) && !isAsked(findings)) return findings;
  return findings.map((found) => (COUNTED.has(found.rule) ? { ...found, degree: 'doubtful', params: { ...found.params, unsure: unsure ? 'before' : hasUnread(row.body) ? 'here' : 'asked' } } : found));
}
