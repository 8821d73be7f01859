import { stitchOfCode, stitchRow } from '../craft/stitches.ts';
import type { Instruction } from '../notation/instruction.ts';
import { FLAG } from './fabric.ts';
import type { Hook } from './hook.ts';
import { rowEndPlaces } from './rowEnds.ts';
import { amountOf, MOST_STITCHES, report, type RowWork } from './rowWork.ts';
import { settleTurningChain } from './turningChain.ts';
import { impliedTurn, settleGroupChains, workStitch } from './workStitch.ts';

type Evenly = Extract<Instruction, { kind: 'evenly' }>;

/**
 * Spreads `count` stitches over the places that come next: the row ends of one side, or the stitches in reach. The
 * places are cut in `count` equal parts and each stitch goes into the place at the middle of its part, so stitch i (from 0) of n
 * over m places goes into place ⌊(2i + 1)m / 2n⌋; with more stitches than places some take several, with fewer some are passed
 * over and lie under the row (midpoints of equal parts, as an even spread is drawn: the same from either end but for halves).
 *
 * Along row ends without a number it is one in each row of single crochet, and in taller rows as many as they are high in
 * single crochet (*common practice*; heights as in the catalogue), which is asked about where no count is stated.
 */
export function workEvenly(work: RowWork, clause: Evenly): void {
  const { hook } = work;
  if (hook.state.piece === -1 || hook.state.cut) {
    report(work, 'wrong', 'noPiece', clause.range);
    return;
  }
  if (clause.along !== 'rowEnds' || rowEndPlaces(hook).length === 0) impliedTurn(work);
  if (hook.state.pending > 0 && hook.state.pendingAtStart) settleTurningChain(hook, clause.stitch.kind, work.reading);
  else settleGroupChains(work);
  const what = clause.along === 'rowEnds' ? 'rowEnd' : 'st';
  const places = what === 'st' ? hook.reachCount(what) : oneSide(hook).length;
  if (places === 0) {
    report(work, 'wrong', 'notEnoughPlaces', clause.range, { expected: 1, found: 0, params: { what } });
    return;
  }
  const count = clause.count === null ? heightOfRows(work, clause) : amountOf(work, clause.count);
  if (count > MOST_STITCHES) {
    report(work, 'wrong', 'tooManyStitches', clause.range, { found: count, expected: MOST_STITCHES });
    work.stopped = true;
    return;
  }
  let made = 0;
  for (let place = 0; place < places && !work.stopped; place++) {
    let own = 0;
    while (made + own < count && placeOf(made + own, count, places) === place) own++;
    if (own === 0) hook.takeNext(what);
    else workStitch(work, { kind: 'work', stitch: clause.stitch, each: own, into: { at: 'next', count: 1, what }, range: clause.range });
    made += own;
  }
}

/** The place, of `places` from 0, that stitch `nth` of `count` goes into. */
export function placeOf(nth: number, count: number, places: number): number {
  return Math.floor(((2 * nth + 1) * places) / (2 * count));
}

/** The row ends ahead as far as they go on one side of the piece: down its rows, or up. */
function oneSide(hook: Hook): readonly number[] {
  const places = rowEndPlaces(hook);
  const rows = places.map((place) => hook.edge.row.at(place));
  const way = Math.sign((rows[1] ?? 0) - (rows[0] ?? 0));
  const end = rows.findIndex((row, at) => at > 0 && (way === 0 || Math.sign(row - rows[at - 1]!) !== way));
  return end < 0 ? places : places.slice(0, end);
}

/** Single crochet that the row ends ahead are high. */
function heightOfRows(work: RowWork, clause: Evenly): number {
  const { hook } = work;
  let height = 0;
  let tall = false;
  for (const place of oneSide(hook)) {
    const stitch = hook.edge.stitch.at(place);
    const { kind } = stitchOfCode(hook.stitches.code(stitch));
    // A turning chain that counts stands for a stitch of its row, which comes next to it.
    const own = kind === 'ch' && hook.stitches.has(stitch, FLAG.turning) ? heightBeside(work, stitch) : Math.max(1, stitchRow(kind).height);
    tall ||= own > 1;
    height += own;
  }
  const count = Math.round(height);
  if (tall && !work.row.stated) report(work, 'doubtful', 'evenlyUnsaid', clause.range, { found: count });
  return count;
}

/** Height of the stitch after a turning chain; where more chains follow, as in a mesh, that of a double crochet. */
function heightBeside({ hook }: RowWork, chain: number): number {
  const { kind, height } = chain + 1 < hook.stitches.count ? stitchOfCode(hook.stitches.code(chain + 1)) : stitchRow('dc');
  return kind === 'ch' ? stitchRow('dc').height : Math.max(1, height);
}
