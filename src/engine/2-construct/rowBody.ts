import { changeAmounts } from '../notation/changeAmounts.ts';
import { growRow } from '../notation/growRow.ts';
import { amountFor, type Instruction } from '../notation/instruction.ts';

/** The rows of a section so far: by number, and in order of working. */
export interface Known {
  readonly numbered: Map<number, readonly Instruction[]>;
  readonly recent: (readonly Instruction[])[];
}

const MAKES = new Set<Instruction['kind']>(['work', 'group', 'repeat', 'skip', 'inPattern', 'spread', 'evenly', 'joinAt', 'leave']);
const JOINS = new Set<Instruction['kind']>(['join', 'noJoin']);
const GROWN = new WeakMap<readonly Instruction[], Map<string, readonly Instruction[]>>();

/**
 * Instructions of the nth row of a line: its own, in turn those of the rows it is worked as (with their numbers moved once
 * more in every turn), or for a row worked even, with the turning chain and the join of the row before. `before` is how many
 * rows of the section stand before the line. Rows that come later or not at all are told to `missing`.
 */
export function rowBody(body: readonly Instruction[], nth: number, known: Known, before: number, size: number, missing: (row: number, clause: Instruction) => void): readonly Instruction[] {
  const clause = body.find((part) => part.kind === 'asRows');
  if (clause?.kind === 'asRows') {
    const span = clause.last ?? clause.rows?.length ?? clause.to - clause.from + 1;
    const turn = nth % span;
    const row = clause.rows?.[turn] ?? clause.from + turn;
    const found = clause.last === undefined ? known.numbered.get(row) : known.recent[before - span + turn];
    if (!found) {
      missing(clause.last === undefined ? row : before - span + turn + 1, clause);
      return body;
    }
    return clause.changes ? grown(found, clause, Math.floor(nth / span) + 1, size) : found;
  }
  if (!body.some((part) => part.kind === 'inPattern' && part.even)) return body;
  return evenRow(body, known.recent.at(-1) ?? []);
}

/** The very same list again for the same row, changes and turn, by which the fabric knows what need not be worked anew. */
function grown(body: readonly Instruction[], clause: Extract<Instruction, { kind: 'asRows' }>, times: number, size: number): readonly Instruction[] {
  const key = `${size} ${times} ${JSON.stringify(clause.changes)}`;
  const memo = GROWN.get(body) ?? new Map<string, readonly Instruction[]>();
  GROWN.set(body, memo);
  const had = memo.get(key);
  if (had) return had;
  const own = changeAmounts(body, (amount) => amountFor(amount, size));
  const changes = clause.changes!.map((change) => ({ ...change, by: amountFor(change.by, size) }));
  const made = growRow(own, changes, times);
  memo.set(key, made);
  return made;
}

function evenRow(body: readonly Instruction[], before: readonly Instruction[]): readonly Instruction[] {
  const key = 'even';
  const memo = GROWN.get(body) ?? new Map<string, readonly Instruction[]>();
  GROWN.set(body, memo);
  const rises = body.some(({ kind }) => kind === 'turn' || kind === 'chain');
  const first = before.findIndex(({ kind }) => MAKES.has(kind));
  const last = before.findLastIndex(({ kind }) => MAKES.has(kind));
  const lead = rises || first < 0 ? [] : before.slice(0, first).filter(({ kind }) => kind === 'turn' || kind === 'chain');
  const tail = body.some(({ kind }) => JOINS.has(kind)) || last < 0 ? [] : before.slice(last + 1).filter(({ kind }) => JOINS.has(kind));
  const wanted = `${key} ${JSON.stringify([lead, tail])}`;
  const had = memo.get(wanted);
  if (had) return had;
  const made = [...lead, ...body, ...tail];
  memo.set(wanted, made);
  return made;
}
