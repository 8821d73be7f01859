import { plainCall, type Instruction, type Into } from '../../../engine/notation/instruction.ts';
import type { StitchKind } from '../../../engine/craft/stitches.ts';
import { countBody, countStitches, stitchesOfCall } from '../../../engine/readings/words/countStitches.ts';

type Placed = Extract<Instruction, { kind: 'work' | 'group' }>;

/** A clause cut so that the place of one of its stitches stands alone. */
export interface Isolated {
  readonly before: readonly Instruction[];
  /** The clause of that one place. */
  readonly one: Placed;
  /** Which of the stitches in the place it is, from 0. */
  readonly inside: number;
  readonly after: readonly Instruction[];
  /** Stitches that `after` makes. */
  readonly left: number;
}

/** Why a stitch can't be had by itself, in words. */
export interface Refused {
  readonly reason: string;
}

/**
 * Cuts a clause of one size (numbers, no vectors) at its stitch number `offset` of the `made` ones: runs become what comes before and
 * the rest, repeats the turns before as a count, the one turn written out, and the turns that are left, to the end where the repeat
 * goes there. `kindOf` tells the stitch that stands there, where the words leave it to the row below. Refuses chains and what
 * isn't told place by place.
 */
export function isolateStitch(clause: Instruction, offset: number, made: number, kindOf: () => StitchKind): Isolated | Refused {
  switch (clause.kind) {
    case 'work':
      return inPlaces(clause, Number(clause.each) * stitchesOfCall(clause.stitch), offset, made);
    case 'group': {
      const inside = countBody(clause.body, 0);
      return inside === null || inside === 0 ? NOT_TOLD : inPlaces(clause, inside, offset, made);
    }
    case 'repeat':
      return inRepeat(clause, offset, made, kindOf);
    case 'inPattern': {
      const run = (count: number) => ({ kind: 'inPattern', into: next(count, clause.into.what), even: false, range: NO_RANGE }) as const;
      const one: Placed = { kind: 'work', stitch: plainCall(kindOf()), each: 1, into: next(1, clause.into.what), range: NO_RANGE };
      const left = made - offset - 1;
      return { before: offset > 0 ? [run(offset)] : [], one, inside: 0, after: left === 0 ? [] : [clause.into.at === 'across' ? { ...clause, even: false } : run(left)], left };
    }
    case 'chain':
      return { reason: 'Only stitches can be changed here, not the chains between them.' };
    case 'spread':
    case 'evenly':
      return { reason: 'The words of this row spread its shaping evenly: ask for another count, or write its words out.' };
    case 'asRows':
      return { reason: 'This row is worked as earlier rows: write its words out first.' };
    default:
      return NOT_TOLD;
  }
}

const NO_RANGE = [0, 0] as const;
const NOT_TOLD: Refused = { reason: 'The words of this row don’t tell that stitch by itself: write it in the row’s words.' };

function next(count: number, what: Extract<Into, { at: 'next' }>['what']): Extract<Into, { at: 'next' }> {
  return { at: 'next', count, what };
}

function inPlaces(clause: Placed, each: number, offset: number, made: number): Isolated | Refused {
  const places = made / each;
  const place = Math.floor(offset / each);
  if (each < 1 || !Number.isInteger(places)) return NOT_TOLD;
  const inside = offset - place * each;
  const { into } = clause;
  const left = (places - place - 1) * each;
  if (into.at !== 'next' && into.at !== 'across') return places === 1 ? { before: [], one: clause, inside, after: [], left: 0 } : NOT_TOLD;
  const run = (count: number) => ({ ...clause, into: into.at === 'next' ? { ...into, count } : next(count, into.what) });
  const after = left === 0 ? [] : [into.at === 'across' ? clause : run(places - place - 1)];
  return { before: place > 0 ? [run(place)] : [], one: run(1), inside, after, left };
}

function inRepeat(clause: Extract<Instruction, { kind: 'repeat' }>, offset: number, made: number, kindOf: () => StitchKind): Isolated | Refused {
  const inside = countBody(clause.body, 0);
  if (inside === null || inside === 0 || made % inside !== 0) return NOT_TOLD;
  const turns = made / inside;
  const turn = Math.floor(offset / inside);
  let at = offset - turn * inside;
  const index = clause.body.findIndex((part) => {
    const count = countStitches(part, 0)!;
    if (at < count) return true;
    at -= count;
    return false;
  });
  const part = clause.body[index];
  const cut = part && isolateStitch(part, at, countStitches(part, 0)!, kindOf);
  if (!cut) return NOT_TOLD;
  if ('reason' in cut) return cut;
  const times = (count: number): readonly Instruction[] => (count === 0 ? [] : count === 1 ? clause.body : [{ ...clause, style: 'paren', times: { kind: 'times', times: count } }]);
  const rest = turns - turn - 1;
  const behind = clause.body.slice(index + 1);
  return {
    ...cut,
    before: [...times(turn), ...clause.body.slice(0, index), ...cut.before],
    after: [...cut.after, ...behind, ...(rest > 0 && clause.times.kind === 'toEnd' ? [clause] : times(rest))],
    left: cut.left + countBody(behind, 0)! + rest * inside,
  };
}
