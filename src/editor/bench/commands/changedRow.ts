import type { Fabric } from '../../../engine/3-fabric/fabric.ts';
import { bodyForSize } from '../../../engine/notation/changeAmounts.ts';
import type { Instruction } from '../../../engine/notation/instruction.ts';
import { stitchOfCode } from '../../../engine/craft/stitches.ts';
import { countStitches } from '../../../engine/readings/words/countStitches.ts';
import { changedPlace, drawnTogether } from './changedPlace.ts';
import { isolateStitch, type Isolated, type Refused } from './isolateStitch.ts';
import type { RowInSize } from './placeInSizes.ts';
import type { StitchChange } from './stitchChange.ts';

/** A row of one size with one stitch changed: `clauses` stand in the place of clauses [from, to) of `body`, which has that size's numbers. */
export interface ChangedRow {
  readonly body: readonly Instruction[];
  readonly from: number;
  readonly to: number;
  readonly clauses: readonly Instruction[];
  /** Stitches that the row makes more. */
  readonly more: number;
  /** Stitches of the row that may differ, before. */
  readonly touched: number;
}

/** Changes the stitch at a place of a row (from 0, turning chains aside) in one size. A last stitch decreases with the one before it. */
export function changedRow(fabric: Fabric, found: RowInSize, words: readonly Instruction[], size: number, at: number, change: StitchChange): ChangedRow | Refused {
  const body = bodyForSize(words, size);
  const changed = changedAt(fabric, found, body, at, change);
  const isLast = at > 0 && at === found.stitches.length - 1;
  return 'reason' in changed && change.kind === 'decrease' && isLast ? changedAt(fabric, found, body, at - 1, change) : changed;
}

function changedAt(fabric: Fabric, { stitches }: RowInSize, body: readonly Instruction[], at: number, change: StitchChange): ChangedRow | Refused {
  const stitch = stitches[at]!;
  const from = fabric.instruction[stitch]!;
  const own = (clause: number) => stitches.filter((each) => fabric.instruction[each] === clause);
  const kindOf = (which: number) => () => stitchOfCode(fabric.kind[which]!).kind;
  const clause = body[from];
  if (!clause) return { reason: 'The words of this row don’t tell that stitch: write it in them.' };
  const mine = own(from);
  const cut = isolateStitch(clause, mine.indexOf(stitch), mine.length, kindOf(stitch));
  if ('reason' in cut) return cut;
  const changed = changedPlace(cut.one, cut.inside, change);
  const inPlace = countStitches(cut.one, 0)!;
  if (changed !== 'next') {
    if ('reason' in changed) return changed;
    return { body, from, to: from + 1, clauses: joinRuns([...cut.before, ...changed.clauses, ...cut.after]), more: changed.more, touched: inPlace };
  }
  const further = nextPlace(cut, from, body, (index) => own(index).length, kindOf(stitches[at + 1] ?? stitch));
  if ('reason' in further) return further;
  const both = drawnTogether(cut.one, further.next.one);
  if ('reason' in both) return both;
  return {
    body, from, to: further.to, more: both.more, touched: 2,
    clauses: joinRuns([...cut.before, ...both.clauses, ...further.between, ...further.next.before, ...further.next.after, ...further.rest]),
  };
}

const NONE_NEXT: Refused = { reason: 'No stitch follows at once that could be worked together with it.' };

/** The place after one, cut out of what follows: of the same clause, else of a clause after it. Yarn clauses may stand between. */
function nextPlace(cut: Isolated, from: number, body: readonly Instruction[], made: (clause: number) => number, kindOf: Parameters<typeof isolateStitch>[3]): { readonly next: Isolated; readonly between: readonly Instruction[]; readonly rest: readonly Instruction[]; readonly to: number } | Refused {
  const follows = (list: readonly Instruction[]) => list.findIndex(({ kind }) => kind !== 'yarn' && kind !== 'remark');
  const here = follows(cut.after);
  const inOwn = here >= 0;
  const list = inOwn ? cut.after : body.slice(from + 1);
  const at = inOwn ? here : follows(list);
  const clause = list[at];
  if (!clause) return NONE_NEXT;
  const known = cut.after.filter((_, i) => i !== at).reduce((sum, each) => sum + (countStitches(each, 0) ?? 0), 0);
  const count = inOwn ? (countStitches(clause, 0) ?? cut.left - known) : made(from + 1 + at);
  if (count < 1 || clause.kind === 'chain') return NONE_NEXT;
  const next = isolateStitch(clause, 0, count, kindOf);
  if ('reason' in next) return next;
  const between = [...(inOwn ? [] : cut.after), ...list.slice(0, at)];
  return { next, between, rest: inOwn ? list.slice(at + 1) : [], to: inOwn ? from + 1 : from + 2 + at };
}

/** Runs of the same stitch one after another as one. */
function joinRuns(clauses: readonly Instruction[]): readonly Instruction[] {
  const joined: Instruction[] = [];
  for (const clause of clauses) {
    const last = joined.at(-1);
    if (last?.kind === 'work' && clause.kind === 'work' && last.into.at === 'next' && clause.into.at === 'next' && bare(last) === bare(clause)) {
      joined[joined.length - 1] = { ...last, into: { ...last.into, count: Number(last.into.count) + Number(clause.into.count) } };
    } else joined.push(clause);
  }
  return joined;
}

/** A clause without its range and its number of places. */
function bare(clause: Instruction): string {
  return JSON.stringify(clause, (name, value: unknown) => (name === 'range' || name === 'count' ? undefined : value));
}
