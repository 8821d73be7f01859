import { bodyForSize } from '../../notation/changeAmounts.ts';
import { growRow, runsOf, shapes } from '../../notation/growRow.ts';
import { amountFor } from '../../notation/instruction.ts';
import type { Instruction, RunChange } from '../../notation/instruction.ts';
import { sameBody } from './groupRows.ts';
import type { Merged } from './foldLines.ts';
import { mergeNumbers } from './mergeSizes.ts';

/** Lines from `from` on that are the lines of a cycle before them with numbers that move by a fixed step. */
export interface Family {
  /** Lines of the cycle; the family begins so many lines after its first. */
  readonly period: number;
  /** Lines of the family after the cycle. */
  readonly length: number;
  /** Rows of the section that the cycle is, by number. */
  readonly first: number;
  readonly last: number;
  readonly changes: readonly RunChange[];
}

/** Longer cycles are not seen by a reader. */
const LONGEST_CYCLE = 3;

type Bodies = Map<readonly Instruction[], string>;

/** The families that begin with the cycle at line `at`, longest first; none where the rows after it go on otherwise. */
export function familiesAt(lines: readonly Merged[], at: number, written: readonly number[], known: Bodies): readonly Family[] {
  const families: Family[] = [];
  for (let period = 1; period <= LONGEST_CYCLE && at + 2 * period <= lines.length; period++) {
    const family = familyOf(lines, at, period, written, known);
    if (family) families.push(family);
  }
  return families.sort((a, b) => b.length - a.length || a.period - b.period);
}

function familyOf(lines: readonly Merged[], at: number, period: number, written: readonly number[], known: Bodies): Family | null {
  const cycle = lines.slice(at, at + period);
  const base = cycle[0]!;
  if (!cycle.every((line) => mayBeCycled(line) && fits(line, base)) || !follows(cycle)) return null;
  const changes = changesOf(cycle, lines.slice(at + period, at + 2 * period), written);
  if (!changes || (changes.length === 0 && period === 1)) return null;
  const grown = new Map<string, readonly Instruction[]>();
  let length = 0;
  while (at + period + length < lines.length) {
    const line = lines[at + period + length]!;
    const like = cycle[length % period]!;
    if (!mayBeCycled(line) || line.line.kind !== 'row' || line.line.label.side !== null || !fits(line, base) || rowsOf(line) !== rowsOf(like) || !followsOn(lines[at + period + length - 1]!, line)) break;
    const times = Math.floor(length / period) + 1;
    const same = line.groups.every((group, index) => {
      const size = written[line.sizes[index]!]!;
      const key = `${length % period} ${times} ${size}`;
      const wanted = grown.get(key) ?? growRow(bodyForSize(like.groups[index]!.body, size), inSize(changes, size, written), times);
      grown.set(key, wanted);
      return sameBody(wanted, bodyForSize(group.body, size), known);
    });
    if (!same) break;
    length++;
  }
  const first = base.groups[0]!.number!;
  const end = cycle.at(-1)!.groups[0]!;
  // One row more, or half a cycle, is plainer said than referred to.
  return length < Math.max(2, period) ? null : { period, length, first, last: end.number! + (end.to - end.from), changes };
}

/** Rows that a line stands for, in every size; null where they differ. */
function rowsOf(line: Merged): number | null {
  const rows = line.groups.map(({ from, to }) => to - from + 1);
  return rows.every((count) => count === rows[0]) ? rows[0]! : null;
}

/** Numbered rows of one yarn, with the same number in every size. */
function mayBeCycled(line: Merged): boolean {
  if (line.line.kind !== 'row' || (line.line.label.word !== 'row' && line.line.label.word !== 'round') || rowsOf(line) === null) return false;
  const [first] = line.groups;
  return line.groups.every((group) => group.number !== null && group.number === first!.number && !group.runs && group.body.every(({ kind }) => kind !== 'asRows' && kind !== 'inPattern'));
}

function fits(line: Merged, base: Merged): boolean {
  return line.line.kind === 'row' && base.line.kind === 'row' && line.line.label.word === base.line.label.word && line.sizes.join() === base.sizes.join() && line.groups.every((group, index) => (group.unit === null) === (base.groups[index]!.unit === null));
}

function follows(lines: readonly Merged[]): boolean {
  return lines.every((line, index) => index === 0 || followsOn(lines[index - 1]!, line));
}

function followsOn(before: Merged, line: Merged): boolean {
  const [a] = before.groups;
  const [b] = line.groups;
  return a!.number !== null && b!.number === a!.number + (a!.to - a!.from + 1);
}

/** How the runs of one cycle move to the next; null where the clauses differ otherwise, or runs of two rows move differently. */
function changesOf(cycle: readonly Merged[], next: readonly Merged[], written: readonly number[]): readonly RunChange[] | null {
  const sizes = cycle[0]!.sizes;
  const moves: (number | undefined)[][] = sizes.map(() => []);
  let runs = 0;
  for (const [at, line] of cycle.entries()) {
    for (const index of sizes.keys()) {
      const size = written[sizes[index]!]!;
      const before = line.groups[index];
      const after = next[at]?.groups[index];
      if (!before || !after) return null;
      const own = runsOf(bodyForSize(before.body, size));
      const later = runsOf(bodyForSize(after.body, size));
      if (own.length !== later.length) return null;
      runs = Math.max(runs, own.length);
      for (const [run, clause] of own.entries()) {
        const move = countOf(later[run]!) - countOf(clause);
        const known = moves[index]![run];
        if (known !== undefined && known !== move) return null;
        moves[index]![run] = move;
      }
    }
  }
  const byMove = new Map<string, { by: RunChange['by']; runs: number[] }>();
  for (let run = 0; run < runs; run++) {
    const by = moves.map((each) => each[run] ?? 0);
    if (by.every((move) => move === 0)) continue;
    // More in one size and fewer in another can't be said in one phrase.
    if (by.some((move) => move > 0) && by.some((move) => move < 0)) return null;
    const key = by.join();
    const entry = byMove.get(key) ?? { by: mergeNumbers(by), runs: [] };
    byMove.set(key, entry);
    entry.runs.push(run + 1);
  }
  const changes = [...byMove.values()];
  if (changes.length === 1 && changes[0]!.runs.length === runs) return [{ by: changes[0]!.by, runs: cycle.every(({ groups }) => groups.every(({ body }) => growsBetween(body))) ? 'between' : 'each' }];
  return changes;
}

/** Whether all runs of a row lie between its increases or decreases, in one repeat of them; so too where it has neither. */
function growsBetween(body: readonly Instruction[]): boolean {
  const runs = runsOf(body);
  const shaping = body.filter((node) => node.kind === 'repeat' && shapes(node.body));
  if (runs.length === 0) return !shapes(body);
  return shaping.length === 1 && shaping[0]!.kind === 'repeat' && runsOf(shaping[0]!.body).length === runs.length;
}

function countOf(clause: Extract<Instruction, { kind: 'work' }>): number {
  return clause.into.at === 'next' && typeof clause.into.count === 'number' ? clause.into.count : 0;
}

/** Changes whose vectors are of the sizes written, for one of them. */
function inSize(changes: readonly RunChange[], size: number, written: readonly number[]): readonly RunChange[] {
  return changes.map((change) => (typeof change.by === 'number' ? change : { ...change, by: amountFor(change.by, written.indexOf(size)) }));
}
