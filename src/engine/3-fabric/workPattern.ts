import { stitchCode, stitchOfCode, stitchRow, type StitchKind } from '../craft/stitches.ts';
import { plainCall, type Instruction, type StitchCall } from '../notation/instruction.ts';
import { NONE } from './edge.ts';
import { FLAG } from './fabric.ts';
import { amountOf, report, type RowWork } from './rowWork.ts';
import { settleTurningChain } from './turningChain.ts';
import { impliedTurn, workStitch } from './workStitch.ts';

type InPattern = Extract<Instruction, { kind: 'inPattern' }>;
type Spread = Extract<Instruction, { kind: 'spread' }>;

/** Rows looked back through for the last one that sets a stitch upon a stitch of this kind. */
const ROWS_BACK = 8;
/** Stitches whose pattern can be told one by one; others go on as they lie. */
const PLAIN = new Set<StitchKind>(['sc', 'hdc', 'dc', 'tr', 'dtr']);

/**
 * Goes on in the stitch pattern: on each stitch of the row below the kind that the last rows set upon its like (sc upon dc
 * and dc upon sc stays so), or its own kind where none was set yet. Linear in the stitches of the rows looked at.
 */
export function workInPattern(work: RowWork, clause: InPattern): void {
  begin(work);
  const { hook } = work;
  const upon = kindsUpon(work);
  const { into } = clause;
  const reach = hook.reachCount('st');
  const count = into.at === 'next' ? amountOf(work, into.count) : reach - amountOf(work, into.except);
  if (count <= 0) {
    report(work, 'wrong', 'notEnoughPlaces', clause.range, { expected: into.at === 'across' ? amountOf(work, into.except) + 1 : 1, found: reach });
    return;
  }
  for (let done = 0; done < count && !work.stopped; done++) {
    const kind = kindAhead(work);
    if (kind === null) {
      report(work, 'wrong', 'notEnoughPlaces', clause.range, { expected: count, found: done, params: { what: 'st' } });
      return;
    }
    one(work, clause, plainCall(upon.get(kind) ?? kind), 1);
  }
}

/** One stitch in each stitch of the row below, with increases or decreases spread evenly, the last at the end. */
export function workSpread(work: RowWork, clause: Spread): void {
  begin(work, clause.stitch.kind);
  const reach = work.hook.reachCount('st');
  const by = work.program.size >= 0 && typeof clause.by !== 'number' ? (clause.by[work.program.size] ?? 0) : (clause.by as number);
  if (by < 0 && reach < 2 * -by) {
    report(work, 'wrong', 'notEnoughPlaces', clause.range, { expected: 2 * -by, found: reach });
    return;
  }
  const makes = by < 0 ? reach + by : reach;
  const extra = Math.abs(by);
  for (let done = 0; done < makes && !work.stopped; done++) {
    const more = Math.floor(((done + 1) * extra) / makes) - Math.floor((done * extra) / makes);
    if (by < 0) one(work, clause, more > 0 ? { ...clause.stitch, together: 2 } : clause.stitch, 1);
    else one(work, clause, clause.stitch, 1 + more);
  }
}

/** Turns where the words leave it unsaid, and settles what chains before the first stitch are. */
function begin(work: RowWork, kind?: StitchKind): void {
  const { hook } = work;
  if (hook.state.piece === NONE) return;
  impliedTurn(work);
  const first = kind ?? kindAhead(work);
  if (hook.state.pending > 0 && hook.state.pendingAtStart && first) settleTurningChain(hook, first, work.reading);
}

function one(work: RowWork, clause: InPattern | Spread, stitch: StitchCall, each: number): void {
  workStitch(work, { kind: 'work', stitch, each, into: { at: 'next', count: 1, what: 'st' }, range: clause.range });
}

/** The plain kind of the next stitch in reach; null where none is. */
function kindAhead(work: RowWork): StitchKind | null {
  const { hook } = work;
  let place = hook.ahead();
  const first = place;
  while (hook.inReach(place) && !hook.answers(place, 'st')) {
    place = hook.ahead(place);
    if (place === first) return null;
  }
  return hook.inReach(place) ? plainKind(work, hook.edge.stitch.at(place)) : null;
}

/** A stitch as a plain kind: chains and slip stitches stand as single crochet, a counted turning chain as the stitch of its height. */
function plainKind({ hook }: RowWork, stitch: number): StitchKind {
  const { kind, legKind } = stitchOfCode(hook.stitches.code(stitch));
  if (PLAIN.has(kind)) return kind;
  if (kind === 'ch' && hook.stitches.has(stitch, FLAG.counts) && hook.stitches.has(stitch, FLAG.turning)) {
    const next = stitch + 1 < hook.stitches.count ? stitchOfCode(hook.stitches.code(stitch + 1)).kind : 'sc';
    return PLAIN.has(next) ? next : 'dc';
  }
  return legKind !== null && PLAIN.has(legKind) ? legKind : 'sc';
}

/** For each kind of stitch the kind that was set upon it last, most often where it differs. */
function kindsUpon(work: RowWork): Map<StitchKind, StitchKind> {
  const { hook } = work;
  const { stitches } = hook;
  const found = new Map<StitchKind, StitchKind>();
  const counts = new Map<string, number>();
  const chain = stitchCode('ch');
  const close = () => {
    const best = new Map<string, number>();
    for (const [pair, count] of counts) {
      const base = pair.slice(0, pair.indexOf('>'));
      if (found.has(base as StitchKind) || count <= (best.get(base) ?? 0)) continue;
      best.set(base, count);
    }
    for (const [base, count] of best) {
      const pair = [...counts].find(([key, own]) => key.startsWith(`${base}>`) && own === count)!;
      found.set(base as StitchKind, pair[0].split('>')[1] as StitchKind);
    }
    counts.clear();
  };
  let row = NONE;
  let rows = 0;
  for (let stitch = stitches.count - 1; stitch >= 0; stitch--) {
    const own = stitches.rows.at(stitch);
    if (own === hook.row) continue;
    if (own !== row) {
      close();
      row = own;
      if (++rows > ROWS_BACK || work.program.rows[own]?.section !== work.row.section) break;
    }
    const base = stitches.firstBase(stitch);
    const { kind } = stitchOfCode(stitches.code(stitch));
    if (base < 0 || !PLAIN.has(kind) || stitches.has(stitch, FLAG.sameBase) || stitches.code(base) === chain) continue;
    const below = stitchRow(stitchOfCode(stitches.code(base)).kind).kind;
    if (!PLAIN.has(below)) continue;
    const pair = `${below}>${kind}`;
    counts.set(pair, (counts.get(pair) ?? 0) + 1);
  }
  close();
  return found;
}
