import type { SwatchTechnique } from '../../1-pattern/pieceFacts.ts';
import { plainCall, type Instruction, type StitchCall } from '../../notation/instruction.ts';
import { across, alongChain, chain, inSpace, next, plain, skip, toEnd, withYarn } from './clauses.ts';
import { gaugeNumbers } from './gaugeBook.ts';
import { foundation, note, rounds, rows, type MadeRow } from './madeRow.ts';
import { nearest, type Origin } from './origin.ts';
import type { Reckoning } from './reckoning.ts';
import type { EdgeSettings, PieceRequest } from './settings.ts';

/** An edge in one size: its lines and its finished height. */
export interface MadeEdge {
  readonly rows: readonly MadeRow[];
  readonly heightCm: Origin;
}

/** Where an edge is worked. */
export interface EdgePlace {
  /** Name of the edge's numbers, such as `cuff`. */
  readonly key: string;
  readonly way: 'flat' | 'rounds';
  /** Begins the piece with its foundation, or goes on from what was worked before. */
  readonly begins: boolean;
  readonly stitches: Origin;
}

const FRONT_POST: StitchCall = { ...plainCall('dc'), post: 'front' };
const BACK_POST: StitchCall = { ...plainCall('dc'), post: 'back' };
const BACK_LOOP: StitchCall = { ...plainCall('sc'), loop: 'back' };
const FRONT_LOOP: StitchCall = { ...plainCall('sc'), loop: 'front' };

/**
 * The rows of an edge: plain, ridges in back loops, ribs in front and back posts, doubled inwards at a ridge, or doubled at a
 * row of holes that folds to points. A first row of single crochet stands on the foundation. `none` with a foundation is one
 * row of single crochet. Counts must be even for posts and picots.
 */
export function edgeRows(r: Reckoning, request: PieceRequest, edge: EdgeSettings, place: EdgePlace): MadeEdge {
  const first = place.begins ? beginning(place, edge.yarn) : [];
  const height = r.given(`${place.key}.height`, 'height of the edge', 'cm', edge.heightCm, 'given');
  const sc = gaugeNumbers(r, request.gauge, request.swatches, 'sc', edge.edge === 'backLoops' ? 'backLoops' : 'plain');
  if (edge.edge === 'none') return { rows: first, heightCm: heightOf(r, place, r.given(`${place.key}.rows`, 'rows of the edge', 'rows', place.begins ? 1 : 0, 'one row on the foundation'), sc.rows) };
  if (edge.edge === 'folded' || edge.edge === 'picot') return folded(r, edge, place, first, height, sc.rows);
  if (edge.edge === 'posts') return posts(r, request, place, first, height, sc.rows);
  const count = r.reckon({ key: `${place.key}.rows`, says: 'rows of the edge', unit: 'rows', formula: 'height × rows in 1 cm', inputs: [height, sc.rows], exact: edge.heightCm * sc.rows.value, rounding: nearest(2) });
  const call = edge.edge === 'backLoops' ? BACK_LOOP : plainCall('sc');
  return { rows: [...first, ...many(place, 'rows', count.value - (place.begins ? 1 : 0), call, place.begins ? null : edge.yarn)], heightCm: heightOf(r, place, count, sc.rows) };
}

/** Foundation and first row (round) of single crochet. */
function beginning(place: EdgePlace, yarn: string): MadeRow[] {
  const count = place.stitches.value;
  if (place.way === 'rounds') return [foundation([withYarn(yarn), chain(count), plain('joinRing')]), rounds('first', 1, [across('sc', 'around')], count)];
  return [foundation([withYarn(yarn), chain(count + 1)]), rows('first', 1, alongChain('sc', 2), count, 'sc', 'RS')];
}

/** Rows or rounds of the same stitch, beginning with `yarn` where it is named. */
function many(place: EdgePlace, role: string, count: number, call: StitchCall, yarn: string | null): MadeRow[] {
  return [line(place, role, count, [across(call, place.way === 'flat' ? 'across' : 'around')], place.stitches.value, 'sc', yarn)];
}

/** A line of rows with their turn, or of rounds. */
function line(place: EdgePlace, role: string, count: number, body: readonly Instruction[], made: number, unit: string, yarn: string | null, turning = 1): MadeRow {
  const begun = yarn === null ? [] : [withYarn(yarn)];
  if (place.way === 'rounds') return rounds(role, count, [...begun, ...body], made, unit);
  return rows(role, count, [...begun, chain(turning, turning > 1 ? 'no' : null), plain('turn'), ...body], made, unit);
}

function posts(r: Reckoning, request: PieceRequest, place: EdgePlace, first: readonly MadeRow[], height: Origin, scRows: Origin): MadeEdge {
  const rib = gaugeNumbers(r, request.gauge, request.swatches, 'dc', 'posts' satisfies SwatchTechnique);
  const base = place.begins ? 1 / scRows.value : 0;
  const count = r.reckon({ key: `${place.key}.rows`, says: 'rows of posts', unit: 'rows', formula: place.begins ? '(height − one row of sc) × rows of posts in 1 cm' : 'height × rows of posts in 1 cm', inputs: [height, scRows, rib.rows], exact: (height.value - base) * rib.rows.value, rounding: nearest(1) });
  const body = [toEnd([next(FRONT_POST, 1), next(BACK_POST, 1)], place.way === 'flat' ? 'across' : 'around')];
  const heightCm = r.reckon({ key: `${place.key}.finished`, says: 'finished height of the edge', unit: 'cm', formula: 'rows ÷ rows in 1 cm', inputs: [count, rib.rows, scRows], exact: base + count.value / rib.rows.value });
  return { rows: [...first, line(place, 'posts', count.value, body, place.stitches.value, 'dc', null, 2)], heightCm };
}

/** Worked twice as high as it is to be and doubled inwards. */
function folded(r: Reckoning, edge: EdgeSettings, place: EdgePlace, first: readonly MadeRow[], height: Origin, scRows: Origin): MadeEdge {
  const picot = edge.edge === 'picot';
  // The row of holes is folded itself: half of it stands above the rows on either side.
  const half = r.reckon({
    key: `${place.key}.rows`, says: 'rows on either side of the fold', unit: 'rows', formula: picot ? 'height × rows in 1 cm − half of the row of holes' : 'height × rows in 1 cm', inputs: [height, scRows],
    exact: edge.heightCm * scRows.value - (picot ? 0.5 : 0), rounding: nearest(2),
  });
  const word = place.way === 'flat' ? 'across' : 'around';
  const inside = half.value - (place.begins ? 1 : 0);
  const made = place.stitches.value;
  const sc = plainCall('sc');
  const yarn = place.begins ? null : edge.yarn;
  const [holes, after] = place.way === 'flat'
    ? [[next('sc', 1), toEnd([chain(1), skip(1), next('sc', 1)], 'across', 1), next('sc', 1)], [next('sc', 2), toEnd([inSpace('sc', 1), next('sc', 1)], 'across')]]
    : [[toEnd([next('sc', 1), chain(1), skip(1)], 'around')], [toEnd([next('sc', 1), inSpace('sc', 1)], 'around')]];
  const counted = place.way === 'flat' ? made / 2 + 1 : made / 2;
  const turn = picot
    ? [line(place, 'holes', 1, holes, counted, 'sc', null), line(place, 'after', 1, after, made, 'sc', null)]
    : [line(place, 'ridge', 1, [across(place.begins ? FRONT_LOOP : BACK_LOOP, word)], made, 'sc', null)];
  return {
    rows: [
      ...first, ...many(place, 'inside', inside, sc, yarn), ...turn, ...many(place, 'outside', half.value - 1, sc, null),
      note('fold', picot ? 'Fold the edge inwards along the holes, so that points stand up, and sew it down.' : 'Fold the edge inwards along the ridge and sew it down.'),
    ],
    heightCm: picot
      ? r.reckon({ key: `${place.key}.finished`, says: 'finished height of the edge', unit: 'cm', formula: '(rows and half of the row of holes) ÷ rows in 1 cm', inputs: [half, scRows], exact: (half.value + 0.5) / scRows.value })
      : heightOf(r, place, half, scRows),
  };
}

function heightOf(r: Reckoning, place: EdgePlace, count: Origin, perCm: Origin): Origin {
  return r.reckon({ key: `${place.key}.finished`, says: 'finished height of the edge', unit: 'cm', formula: 'rows ÷ rows in 1 cm', inputs: [count, perCm], exact: count.value / perCm.value });
}
